import type { BookRow } from "@pinwright/book";
import { assignQuadratic, roundTo } from "@pinwright/kernel";
import type { Optimum, ScrewSymbol } from "../../model/index.ts";
import { handLikeness } from "./hand-likeness.ts";
import { symbolLetters } from "./letters.ts";
import { pairKey } from "./neighbours.ts";
import { likenessAt, SIGNS, signIndex } from "./symbol-likeness.ts";

type FastenerType = BookRow<"fastener_types">;

/** As many pairs as this make two types half as near as they can be. */
const HALF_NEAR = 8;

/** Moves that are looked at; more types have more neighbours to look at in a round. */
const STEPS_PER_TYPE = 2000;

/**
 * How much it matters that two types' symbols differ, 0 to 3: likeness in the hand, nearness on the panel (the share
 * n / (n + 8) of n pairs within 60 mm), and once more where both come together. Common practice, no source.
 */
export function pairWeight(a: FastenerType, b: FastenerType, pairs: number): number {
  const alike = handLikeness(a, b);
  const near = pairs / (pairs + HALF_NEAR);
  return roundTo(alike + near + alike * near, 0.001);
}

export interface ChosenSymbols {
  readonly symbols: ReadonlyMap<string, ScrewSymbol>;
  /** Weight × likeness of symbols, summed over all pairs of types; the bound is of Gilmore and Lawler. */
  readonly likeness: Optimum;
}

/**
 * A symbol for each type: the sum over all pairs of types of weight × likeness of their symbols is to be small, a
 * quadratic assignment. With more types than signs a sign is used again, beside another letter. Symbols that are held
 * stay; letters follow the order of the types.
 */
export function chooseSymbols(
  types: readonly FastenerType[],
  pairs: ReadonlyMap<string, number>,
  held: ReadonlyMap<string, ScrewSymbol>,
): ChosenSymbols {
  const uses = Math.max(1, usesOfOneSign(held), Math.ceil(types.length / SIGNS.length));
  const places = Array.from({ length: uses * SIGNS.length }, (_, i) => i % SIGNS.length);
  const found = assignQuadratic(
    {
      weights: types.map((a) =>
        types.map((b) => (a === b ? 0 : pairWeight(a, b, pairs.get(pairKey(a.id, b.id)) ?? 0))),
      ),
      costs: places.map((a, i) => places.map((b, j) => (i === j ? 0 : likenessAt(a, b)))),
      fixed: fixedPlaces(types, held),
    },
    { steps: STEPS_PER_TYPE * types.length },
  );
  return { symbols: named(types, found.placeOf, held), likeness: optimum(found.value, found.lowerBound) };
}

function usesOfOneSign(held: ReadonlyMap<string, ScrewSymbol>): number {
  const uses = new Map<number, number>();
  for (const symbol of held.values()) uses.set(signIndex(symbol), (uses.get(signIndex(symbol)) ?? 0) + 1);
  return Math.max(0, ...uses.values());
}

/** A sign that is held twice is held at its second place too. */
function fixedPlaces(
  types: readonly FastenerType[],
  held: ReadonlyMap<string, ScrewSymbol>,
): readonly (number | null)[] {
  const used = new Set<number>();
  return types.map((type) => {
    const symbol = held.get(type.id);
    if (symbol === undefined) return null;
    let place = signIndex(symbol);
    while (used.has(place)) place += SIGNS.length;
    used.add(place);
    return place;
  });
}

function named(
  types: readonly FastenerType[],
  placeOf: readonly number[],
  held: ReadonlyMap<string, ScrewSymbol>,
): ReadonlyMap<string, ScrewSymbol> {
  const taken = new Set([...held.values()].map((symbol) => symbol.letter));
  let next = 0;
  const free = (): string => {
    let letter = symbolLetters(next++);
    while (taken.has(letter)) letter = symbolLetters(next++);
    return letter;
  };
  const symbols = new Map<string, ScrewSymbol>();
  types.forEach((type, i) => {
    const own = held.get(type.id);
    const sign = SIGNS[(placeOf[i] ?? 0) % SIGNS.length];
    if (own !== undefined) symbols.set(type.id, own);
    else if (sign !== undefined) symbols.set(type.id, { typeId: type.id, letter: free(), ...sign });
  });
  return symbols;
}

const optimum = (value: number, lowerBound: number): Optimum => {
  const [v, bound] = [roundTo(value, 0.001), Math.min(roundTo(lowerBound, 0.001), roundTo(value, 0.001))];
  return { value: v, lowerBound: bound, gap: v === bound ? 0 : v / bound - 1 };
};
