import { liesOver } from "../../fastening/index.ts";
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

/** What must be done before what, with a memory: wires are only held against what has moved. */
export class PrecedenceSolver {
  readonly #wired = new WiredEdges();

  /** See `itemPrecedence`. */
  solve(machine: Machine, fastening: FasteningResult, harnesses: Harnesses): Preceded {
    const over = liesOver(machine, fastening.solids);
    const edges: Precedence[] = [...coverEdges(over)];
    for (const [id, reach] of fastening.reaches) {
      const item = machine.items.get(id);
      if (item?.kind === "fastener") edges.push(...fastenerEdges(machine, item, reach, over));
    }
    for (const harness of harnesses.values()) edges.push(...standsEdges(machine, harness));
    edges.push(...this.#wired.of(machine, fastening.solids, harnesses));
    const ruled = ruleEdges(machine);
    edges.push(...ruled.edges);
    return { edges: onePerPair(edges), findings: ruled.findings };
  }

  sweep(): void {
    this.#wired.sweep();
  }
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
