import type { ArrivedFact, Fact } from "@pinwright/contract";
import { foldUnits, type UnitState } from "@pinwright/engine";
import type { KeptFact } from "../outbox/store.ts";

const keyOf = ({ stream, seq }: Fact): string => `${stream} ${seq}`;

/** What the server told, and on top what this device wrote and the server may not have yet. What is kept aside counts nowhere. */
export function knownFacts(
  heard: readonly (readonly ArrivedFact[])[],
  own: readonly KeptFact[],
): readonly Fact[] {
  const facts = new Map<string, Fact>();
  for (const { fact, aside } of heard.flat()) if (aside === null) facts.set(keyOf(fact), fact);
  for (const { fact, why } of own) if (why === null) facts.set(keyOf(fact), fact);
  return [...facts.values()];
}

/** What is known of units, from what is known at all. */
export const knownUnits = (
  heard: readonly (readonly ArrivedFact[])[],
  own: readonly KeptFact[],
): ReadonlyMap<string, UnitState> => foldUnits(knownFacts(heard, own));
