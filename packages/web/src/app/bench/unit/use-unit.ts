import type { ArrivedFact, Fact } from "@pinwright/contract";
import type { UnitState } from "@pinwright/engine";
import { useMemo } from "react";
import { call } from "../../../api/call.ts";
import { useOwnFacts } from "../../../floor/device.tsx";
import { knownUnits } from "../../../floor/records/heard.ts";
import { useAsked } from "../use-asked.ts";

/** A record of a unit, and whether the server has it. */
export interface UnitFact {
  readonly fact: Fact;
  readonly isHere: boolean;
}

/** Everything that is known of a unit and of what is or was in it. */
export interface KnownUnit {
  /** Undefined: nothing was recorded of it. */
  readonly state: UnitState | undefined;
  readonly states: ReadonlyMap<string, UnitState>;
  /** Records that count, and those that were corrected, in the order of time. */
  readonly facts: readonly UnitFact[];
}

const isAbout = ({ body }: Fact, units: ReadonlySet<string>): boolean =>
  ("unit" in body && units.has(body.unit)) ||
  (body.kind === "fitted" && units.has(body.into)) ||
  (body.kind === "removed" && units.has(body.from));

/** What the server told of a unit, and on top what this browser wrote and the server may not have yet. */
function useKnown(unit: string, heard: readonly ArrivedFact[] | undefined): KnownUnit | undefined {
  const own = useOwnFacts();
  return useMemo(() => {
    if (heard === undefined) return undefined;
    const states = knownUnits([heard], own);
    const facts = new Map<string, UnitFact>(
      heard.map(({ fact }) => [`${fact.stream} ${fact.seq}`, { fact, isHere: false }]),
    );
    const units = new Set([
      unit,
      ...heard.flatMap(({ fact: { body } }) => ("unit" in body ? [body.unit] : [])),
    ]);
    for (const { fact, why, sentAt } of own) {
      const key = `${fact.stream} ${fact.seq}`;
      const { body } = fact;
      const isOfIt =
        isAbout(fact, units) || (body.kind === "correction" && facts.has(`${body.stream} ${body.seq}`));
      if (why === null && isOfIt && !facts.has(key)) facts.set(key, { fact, isHere: sentAt === null });
    }
    const inOrder = [...facts.values()].sort(
      (a, b) =>
        (a.fact.at < b.fact.at ? -1 : a.fact.at > b.fact.at ? 1 : 0) ||
        (a.fact.stream < b.fact.stream ? -1 : a.fact.stream > b.fact.stream ? 1 : 0) ||
        a.fact.seq - b.fact.seq,
    );
    return { state: states.get(unit), states, facts: inOrder };
  }, [unit, heard, own]);
}

/** A unit, kept up to date. */
export function useUnit(unit: string): { readonly known: KnownUnit | undefined; readonly failed: string } {
  const { answer, failed } = useAsked(`unit ${unit}`, (signal) =>
    call("unitFacts", { parts: { unit }, signal }),
  );
  return { known: useKnown(unit, answer), failed };
}
