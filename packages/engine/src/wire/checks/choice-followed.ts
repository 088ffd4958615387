import { compareText } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../../model/index.ts";
import { areLinked } from "../net-index.ts";
import { readChainValue } from "../settled.ts";
import type { WireFacts } from "./facts.ts";

/**
 * `choice-not-followed`: what a person pinned cannot be done. `settled-dropped`: a kept result no longer can be
 * kept. Both say which of a chain's wires are missing, which names are no ends, or which value was given.
 */
export function choiceFollowed(facts: WireFacts): readonly Finding[] {
  return [...chains(facts), ...types(facts), ...numbers(facts)];
}

type Held = "pinned" | "settled";

function notFollowed(held: Held, subjects: readonly string[], numbers: Finding["numbers"]): Finding {
  return held === "pinned"
    ? makeFinding("choice-not-followed", "error", subjects, numbers)
    : makeFinding("settled-dropped", "note", subjects, numbers);
}

function chains({ machine, index, wires }: WireFacts): readonly Finding[] {
  const joined = new Set(wires.map((w) => w.id));
  return [...(machine.choices.get("chain") ?? [])].flatMap(([subject, choice]) => {
    const [netId = "", harnessId = ""] = subject.split("|");
    const own = new Set(
      (index.endsByNet.get(netId) ?? []).filter((end) => end.harness === harnessId).map((end) => end.point),
    );
    const unknown: string[] = [];
    const missing: string[] = [];
    for (const trail of readChainValue(choice.value)) {
      let before: string | null = null;
      for (const { name, loop } of trail) {
        if (name.startsWith("splice:")) {
          before = null;
          continue;
        }
        if (!own.has(name)) {
          unknown.push(name);
          continue;
        }
        if (before !== null && (loop || !areLinked(index, before, name))) {
          const [a = "", b = ""] = [before, name].sort(compareText);
          const id = `${netId}|${harnessId}|${a}|${b}`;
          if (!joined.has(id)) missing.push(id);
        }
        before = name;
      }
    }
    // An end that went away is no loss of a kept result; of a pinned one it is worth telling.
    if (missing.length === 0 && (unknown.length === 0 || choice.held === "settled")) return [];
    return [
      notFollowed(choice.held, [netId, harnessId, ...unknown, ...missing], {
        kind: "chain",
        unknown: unknown.length,
        missing: missing.length,
      }),
    ];
  });
}

function types({ machine, wires }: WireFacts): readonly Finding[] {
  const ids = new Set(wires.flatMap((w) => [w.id, w.netId]));
  return [...(machine.choices.get("wire-type") ?? [])].flatMap(([subject, choice]) => {
    if (machine.wireTypes.has(choice.value) && (ids.has(subject) || choice.held === "settled")) return [];
    return [notFollowed(choice.held, [subject], { kind: "wire-type", value: choice.value })];
  });
}

function numbers({ machine, wires }: WireFacts): readonly Finding[] {
  const number = new Map(wires.map((w) => [w.id, w.number]));
  return [...(machine.choices.get("wire-number") ?? [])].flatMap(([subject, choice]) => {
    const got = number.get(subject);
    if (got === undefined && choice.held === "settled") return [];
    if (String(got) === choice.value) return [];
    return [
      notFollowed(choice.held, [subject], { kind: "wire-number", value: choice.value, number: got ?? 0 }),
    ];
  });
}
