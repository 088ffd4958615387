import { deepEqual, Query } from "@pinwright/kernel";
import { type LiesOver, liesOver } from "../../fastening/index.ts";
import type { FasteningResult, Finding, HarnessResult, Machine, Precedence } from "../../model/index.ts";
import { coverEdges, fastenerEdges } from "./fastened-edges.ts";
import { onePerPair } from "./loops.ts";
import { ruleEdges } from "./rule-edges.ts";
import { standsEdges } from "./stands-edges.ts";
import { WiredEdges } from "./wired-edges.ts";

type Harnesses = ReadonlyMap<string, HarnessResult>;

/** Precedence with what is found on the way. */
export interface Preceded {
  readonly edges: readonly Precedence[];
  /** Rules that say nothing. */
  readonly findings: readonly Finding[];
}

/** What must be done before what, with a memory: only what has moved is held against everything again. */
export class PrecedenceSolver {
  readonly #wired = new WiredEdges();
  readonly #parts = new Query<readonly Precedence[]>(deepEqual);
  readonly #ruled = new Query<Preceded>(deepEqual);
  readonly #all = new Query<Preceded>(Object.is);

  /** See `itemPrecedence`; the same object as long as nothing in it is another. */
  solve(machine: Machine, fastening: FasteningResult, harnesses: Harnesses): Preceded {
    const over = liesOver(machine, fastening.solids);
    const part = (name: string, inputs: readonly unknown[], make: () => readonly Precedence[]) =>
      this.#parts.ask(name, inputs, make);
    const parts = [
      part("covers", [over], () => coverEdges(over)),
      part("fasteners", [over, fastening.reaches, machine.items], () =>
        reachEdges(machine, fastening.reaches, over),
      ),
      part("stands", [machine.items, machine.landings, ...harnesses.values()], () =>
        [...harnesses.values()].flatMap((harness) => standsEdges(machine, harness)),
      ),
      part("wired", [{}], () => this.#wired.of(machine, fastening.solids, harnesses)),
    ];
    const ruled = this.#ruled.ask("all", [machine], () => ruleEdges(machine));
    return this.#all.ask("all", [...parts, ruled], () => ({
      edges: onePerPair([...parts.flat(), ...ruled.edges]),
      findings: ruled.findings,
    }));
  }

  sweep(): void {
    for (const part of [this.#wired, this.#parts, this.#ruled, this.#all]) part.sweep();
  }
}

function reachEdges(
  machine: Machine,
  reaches: FasteningResult["reaches"],
  over: LiesOver,
): readonly Precedence[] {
  return [...reaches].flatMap(([id, reach]) => {
    const item = machine.items.get(id);
    return item?.kind === "fastener" ? fastenerEdges(machine, item, reach, over) : [];
  });
}

/**
 * What must be done before what, between items that are put in as a whole, fasteners that hold none, harnesses, and
 * the designer's steps where a rule names them: from what hides, covers and wires what, and from the rules. One row for
 * each pair, with its weightiest reason; sorted by ids. It may contain loops.
 *
 * A fastener goes with the item that it holds, a child with its mechanism. A post or stand-off that carries an item is
 * named by itself, and comes before what it carries. An in-line connector is done when both its harnesses are.
 */
export const itemPrecedence = (
  machine: Machine,
  fastening: FasteningResult,
  harnesses: Harnesses,
): readonly Precedence[] => new PrecedenceSolver().solve(machine, fastening, harnesses).edges;
