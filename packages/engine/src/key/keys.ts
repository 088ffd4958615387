import { type Finding, type Machine, makeFinding } from "../model/index.ts";
import { netIndex } from "../wire/index.ts";
import type { Joint } from "./plugs.ts";

/** Keys of joints that are decided, and the cavities that the others may be keyed in. */
export interface KeyFreedom {
  /** Cavities blocked by a key, of joints that are not free, by joint id. */
  readonly fixed: ReadonlyMap<string, readonly number[]>;
  /** Cavities that a key may block, of joints that are free. */
  readonly free: ReadonlyMap<string, readonly number[]>;
  readonly findings: readonly Finding[];
}

/**
 * Keys of boards and devices live on their type. In-line connectors are keyed one by one: in any cavity that
 * neither half uses, unless the type has a key already or a `key` choice (subject: the in-line connector; value:
 * cavity numbers separated by one space) says where.
 */
export function keyFreedom(machine: Machine, all: readonly Joint[]): KeyFreedom {
  const index = netIndex(machine);
  const fixed = new Map<string, readonly number[]>();
  const free = new Map<string, readonly number[]>();
  const findings: Finding[] = [];
  for (const joint of all) {
    const { landing, connector } = joint.plug;
    if (landing.half === null || landing.keyPins.length > 0) {
      fixed.set(joint.id, landing.keyPins);
      continue;
    }
    const idle: number[] = [];
    for (let pin = 1; pin <= connector.ways; pin++) {
      const used = ["a", "b"].some((half) => index.endsByPoint.has(`${landing.itemId}:${half}.${pin}`));
      if (!used) idle.push(pin);
    }
    const choice = machine.choices.get("key")?.get(joint.id);
    if (choice === undefined) {
      free.set(joint.id, idle);
      continue;
    }
    const pins = choice.value.split(" ").flatMap((t) => (t === "" ? [] : [Number(t)]));
    if (pins.every((pin) => idle.includes(pin))) fixed.set(joint.id, pins);
    else {
      free.set(joint.id, idle);
      const rule = choice.held === "pinned" ? "choice-not-followed" : "settled-dropped";
      const severity = choice.held === "pinned" ? "error" : "note";
      findings.push(makeFinding(rule, severity, [joint.id], { kind: "key", value: choice.value }));
    }
  }
  return { fixed, free, findings };
}

/**
 * Whether a plug with these cavities blocked goes onto a socket with those pins missing: every blocked cavity must
 * meet a missing pin, or no pin at all.
 */
export function goesOn(
  blocked: readonly number[],
  missing: readonly number[],
  ways: number,
  at: (pin: number) => number,
): boolean {
  return blocked.every((pin) => at(pin) < 1 || at(pin) > ways || missing.includes(at(pin)));
}
