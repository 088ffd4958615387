import type { BookRow } from "@pinwright/book";
import { compareText, deepEqual, Query, roundTo, sameMembers } from "@pinwright/kernel";
import {
  choicesOfKinds,
  type FastenerFit,
  type FastenerItem,
  type Finding,
  type Machine,
  makeFinding,
  type Optimum,
  type ScrewSymbol,
} from "../../model/index.ts";
import { type ChosenSymbols, chooseSymbols, pairWeight } from "./choose-symbols.ts";
import { type HeldSymbols, heldSymbols } from "./held-symbols.ts";
import { lookalikes } from "./lookalikes.ts";
import { type Neighbours, neighboursOf, pairKey } from "./neighbours.ts";
import { symbolLikeness } from "./symbol-likeness.ts";

type FastenerType = BookRow<"fastener_types">;
type PairCounts = ReadonlyMap<string, number>;

export interface Symbols {
  readonly symbols: ReadonlyMap<string, ScrewSymbol>;
  readonly likeness: Optimum;
  readonly findings: readonly Finding[];
}

/** Symbols that have this much in common, or more, are taken for each other at a glance. */
const TOO_ALIKE = 0.75;

/** From this weight on it matters: alike in the hand, or often side by side. */
const MATTERS = 0.5;

/**
 * The symbols of the screws, with a memory: they are chosen anew only when other types are used, another number of
 * pairs stands side by side, or a choice changes.
 */
export class SymbolSolver {
  readonly #sides = new Query<readonly FastenerItem[]>(sameMembers);
  readonly #neighbours = new Query<Neighbours>(Object.is);
  readonly #types = new Query<readonly FastenerType[]>(sameMembers);
  readonly #counts = new Query<PairCounts>(deepEqual);
  readonly #held = new Query<HeldSymbols>(deepEqual);
  readonly #chosen = new Query<ChosenSymbols>(deepEqual);
  readonly #lookalikes = new Query<readonly Finding[]>(deepEqual);
  readonly #alike = new Query<readonly Finding[]>(deepEqual);
  readonly #findings = new Query<readonly Finding[]>(sameMembers);
  readonly #result = new Query<Symbols>(Object.is);

  solve(machine: Machine, fits: ReadonlyMap<string, FastenerFit>): Symbols {
    const sides = this.#fastenersBySide(machine);
    const types = this.#types.ask("all", [...sides.values()], () => typesOf([...sides.values()].flat()));
    const neighbours = [...sides].map(([key, fasteners]): [string, Neighbours] => [
      key,
      this.#neighbours.ask(key, [fasteners], () => neighboursOf(fasteners)),
    ]);
    const near = neighbours.map(([, n]) => n.near);
    const counts = this.#counts.ask("all", near, () => sumCounts(near));
    const choices = choicesOfKinds(machine, ["symbol"]);
    const held = this.#held.ask("all", [types, ...choices], () =>
      heldSymbols(
        types.map((type) => type.id),
        choices[0],
      ),
    );
    const chosen = this.#chosen.ask("all", [types, counts, held.symbols], () =>
      chooseSymbols(types, counts, held.symbols),
    );
    const alike = this.#alike.ask("all", [types, counts, held.symbols, chosen.symbols], () =>
      symbolsAlike(types, counts, held.symbols, chosen.symbols),
    );
    const swaps = neighbours.map(([key, { beside }]) =>
      this.#lookalikes.ask(
        key,
        [beside, ...beside.flatMap((p) => [fits.get(p.a.id), fits.get(p.b.id)])],
        () => lookalikes(beside, fits),
      ),
    );
    const parts = [held.findings, alike, ...swaps];
    const findings = this.#findings.ask("all", parts, () => parts.flat());
    return this.#result.ask("all", [chosen, findings], () => ({ ...chosen, findings }));
  }

  #fastenersBySide(machine: Machine): ReadonlyMap<string, readonly FastenerItem[]> {
    const sides = new Map<string, FastenerItem[]>();
    for (const item of machine.items.values()) {
      if (item.kind !== "fastener") continue;
      const key = `${item.place.panelId}|${item.place.side}`;
      const side = sides.get(key);
      if (side === undefined) sides.set(key, [item]);
      else side.push(item);
    }
    const keys = [...sides.keys()].sort(compareText);
    return new Map(
      keys.map((key) => [key, this.#sides.ask(key, sides.get(key) ?? [], () => sides.get(key) ?? [])]),
    );
  }

  sweep(): void {
    for (const query of [
      this.#sides,
      this.#neighbours,
      this.#types,
      this.#counts,
      this.#held,
      this.#chosen,
      this.#lookalikes,
      this.#alike,
      this.#findings,
      this.#result,
    ])
      query.sweep();
  }
}

/** Types of fasteners, and of the washers and nuts on them, in the order of their ids. */
function typesOf(fasteners: readonly FastenerItem[]): readonly FastenerType[] {
  const types = new Map<string, FastenerType>();
  for (const { type, washer, nut } of fasteners)
    for (const used of [type, washer, nut]) if (used !== null) types.set(used.id, used);
  return [...types.values()].sort((a, b) => compareText(a.id, b.id));
}

function sumCounts(sides: readonly PairCounts[]): PairCounts {
  const sums = new Map<string, number>();
  for (const counts of sides) for (const [key, n] of counts) sums.set(key, (sums.get(key) ?? 0) + n);
  return new Map([...sums].sort(([a], [b]) => compareText(a, b)));
}

/** Pairs of types with symbols that a person or an earlier result has made too alike. */
function symbolsAlike(
  types: readonly FastenerType[],
  counts: PairCounts,
  held: ReadonlyMap<string, ScrewSymbol>,
  symbols: ReadonlyMap<string, ScrewSymbol>,
): readonly Finding[] {
  const findings: Finding[] = [];
  types.forEach((a, i) => {
    for (const b of types.slice(i + 1)) {
      const [one, two] = [symbols.get(a.id), symbols.get(b.id)];
      if (one === undefined || two === undefined || !(held.has(a.id) && held.has(b.id))) continue;
      const pairs = counts.get(pairKey(a.id, b.id)) ?? 0;
      const likeness = symbolLikeness(one, two);
      const weight = pairWeight(a, b, pairs);
      if (likeness < TOO_ALIKE || (weight < MATTERS && likeness < 1)) continue;
      findings.push(
        makeFinding("symbol-alike", "warning", [a.id, b.id], {
          letter: one.letter,
          other_letter: two.letter,
          alike_pct: roundTo(100 * likeness, 1),
          limit_pct: 100 * TOO_ALIKE,
          pairs,
        }),
      );
    }
  });
  return findings;
}
