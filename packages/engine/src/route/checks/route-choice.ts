import type { BookRow } from "@pinwright/book";
import { choicesOf, type Finding, makeFinding } from "../../model/index.ts";
import { attachedLanding, idsIn } from "../held.ts";
import { tailId } from "../tree-of.ts";
import type { RouteFacts, RouteRule } from "./facts.ts";

/**
 * `choice-not-followed`: a pinned trunk names lanes that are not there, or a pinned tail or splice lies elsewhere.
 * `settled-dropped`: a kept one could not be kept.
 */
export const routeChoice: RouteRule = (facts) => [...trunks(facts), ...attached(facts), ...splices(facts)];

function notFollowed(
  choice: BookRow<"choices">,
  subjects: readonly string[],
  numbers: Finding["numbers"],
): Finding {
  return choice.held === "pinned"
    ? makeFinding("choice-not-followed", "error", subjects, numbers)
    : makeFinding("settled-dropped", "note", subjects, numbers);
}

function trunks({ machine, graph, harnesses }: RouteFacts): readonly Finding[] {
  const known = new Set(graph.lanes.map((lane) => lane.id));
  return harnesses.flatMap(({ route }) => {
    const choice = machine.choices.get("trunk")?.get(route.harnessId);
    if (choice === undefined) return [];
    const wanted = idsIn(choice.value);
    const unknown = [...wanted].filter((id) => !known.has(id));
    const off = route.branches.filter((b) => b.kind !== "tail" && !wanted.has(b.id)).map((b) => b.id);
    if (unknown.length === 0 && off.length === 0) return [];
    return [
      notFollowed(choice, [route.harnessId, ...unknown, ...off], {
        kind: "trunk",
        unknown: unknown.length,
        off_trunk: off.length,
      }),
    ];
  });
}

function attached({ machine, harnesses }: RouteFacts): readonly Finding[] {
  return harnesses.flatMap(({ route }) => {
    const { own, general } = choicesOf(machine.choices.get("attach"), route.harnessId);
    const tails = new Map(route.branches.flatMap((b) => (b.kind === "tail" ? [[b.id, b] as const] : [])));
    return [...general, ...own].flatMap(([subject, choice]) => {
      const landingId = attachedLanding(subject, route.harnessId);
      if (landingId === null) return [];
      const tail = tails.get(tailId(landingId));
      if (tail === undefined || tail.a === choice.value || tail.b === choice.value) return [];
      const node = tail.a.startsWith("landing:") ? tail.b : tail.a;
      return [
        notFollowed(choice, [landingId, node, route.harnessId], { kind: "attach", value: choice.value }),
      ];
    });
  });
}

function splices({ machine, harnesses }: RouteFacts): readonly Finding[] {
  const choices = machine.choices.get("splice-place");
  if (choices === undefined) return [];
  return harnesses.flatMap(({ route }) =>
    [...choices].flatMap(([spliceId, choice]) => {
      const nodeId = route.spliceAt.get(spliceId);
      if (nodeId === undefined || nodeId === choice.value) return [];
      return [
        notFollowed(choice, [spliceId, nodeId, route.harnessId], {
          kind: "splice-place",
          value: choice.value,
        }),
      ];
    }),
  );
}
