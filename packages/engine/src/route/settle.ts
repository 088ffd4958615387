import { compareText } from "@pinwright/kernel";
import type { HarnessRoute } from "../model/index.ts";
import type { SettledChoice } from "../wire/index.ts";
import { attachSubject } from "./held.ts";

/** The choices that keep a route as it is now: its trunk, its tails and the places of its splices. */
export function settleRoute(route: HarnessRoute): readonly SettledChoice[] {
  const trunk = route.branches
    .filter((b) => b.kind !== "tail")
    .map((b) => b.id)
    .sort(compareText);
  const tails = route.branches.flatMap((b): readonly SettledChoice[] => {
    if (b.kind !== "tail") return [];
    const value = b.a.startsWith("landing:") ? b.b : b.a;
    return [{ kind: "attach", subject: attachSubject(route.harnessId, b.id.slice("tail:".length)), value }];
  });
  const splices = [...route.spliceAt].map(
    ([subject, value]): SettledChoice => ({ kind: "splice-place", subject, value }),
  );
  return [
    { kind: "trunk", subject: route.harnessId, value: trunk.join(" ") },
    ...[...tails, ...splices].sort((a, b) => compareText(a.kind + a.subject, b.kind + b.subject)),
  ];
}
