import { deepEqual, Query } from "@pinwright/kernel";
import type { Finding, Machine, Precedence } from "../../model/index.ts";
import { breakLoops, type Ordered } from "../order/index.ts";
import type { Draft } from "./draft.ts";
import { endEdges, ruledEdges, stepEdges, stepsOf } from "./edges.ts";
import { layersOf, type StepLayers } from "./layers.ts";
import { untangle } from "./untangle.ts";

/** Steps with what comes before what, among them and within them. */
export interface OrderedSteps {
  readonly drafts: readonly Draft[];
  /** Free of loops, and without rows that follow from others. */
  readonly edges: readonly Precedence[];
  readonly layers: StepLayers;
  readonly findings: readonly Finding[];
}

/**
 * Precedence of items as precedence of steps. Groups that would wait for themselves are divided; loops that are left
 * come from the designer's own steps and rules, and the cheapest of these is given up.
 * @param things precedence of items, harnesses and steps, free of loops
 */
export function orderSteps(
  machine: Machine,
  drafts: readonly Draft[],
  things: readonly Precedence[],
): OrderedSteps {
  const heldBy = new Map<string, string[]>();
  for (const draft of drafts)
    for (const id of draft.fastenerIds) {
      const whole = wholeOf(machine, id);
      const known = heldBy.get(whole);
      if (known === undefined) heldBy.set(whole, [id]);
      else known.push(id);
    }
  const ruled = [...things, ...ruledEdges(machine, drafts)];
  const parts = untangle(drafts, ruled, (id) => heldBy.get(id) ?? []);
  const stepOf = stepsOf(parts);
  const edges = stepEdges(parts === drafts ? ruled : [...things, ...ruledEdges(machine, parts)], stepOf);
  const { edges: free, findings } = breakLoops(edges);
  // What the end adds makes no loop where there is none; only rows that now follow from others go.
  const { edges: ordered } = breakLoops([...free, ...endEdges(parts, free)]);
  return { drafts: parts, edges: ordered, layers: layersOf(things, stepOf), findings };
}

/** The item that a fastener holds, as it is put in; itself when it holds nothing. */
function wholeOf({ items }: Machine, fastenerId: string): string {
  const seen = new Set<string>();
  let id = fastenerId;
  for (let item = items.get(id); item !== undefined && !seen.has(id); item = items.get(id)) {
    seen.add(id);
    if (item.kind === "fastener" && item.holds !== null) id = item.holds;
    else return item.kind === "fastener" ? id : (item.parentId ?? id);
  }
  return id;
}

/** The same with a memory: it is found anew when a step holds other things, or another thing comes first. */
export class StepOrder {
  readonly #ordered = new Query<OrderedSteps>(deepEqual);

  solve(machine: Machine, drafts: readonly Draft[], things: Ordered): OrderedSteps {
    const { steps } = machine.book.tables;
    return this.#ordered.ask("all", [things.edges, steps, ...drafts], () =>
      orderSteps(machine, drafts, things.edges),
    );
  }

  sweep(): void {
    this.#ordered.sweep();
  }
}
