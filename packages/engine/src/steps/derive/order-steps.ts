import { deepEqual, Query } from "@pinwright/kernel";
import type { Finding, Machine, Precedence } from "../../model/index.ts";
import { breakLoops, type Ordered } from "../order/index.ts";
import type { Draft } from "./draft.ts";
import { endEdges, ruledEdges, stepEdges, stepsOf } from "./edges.ts";
import { layersOf, type StepLayers } from "./layers.ts";
import { withTitles } from "./titles.ts";
import { untangle, withoutThreads } from "./untangle.ts";

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
function orderSteps(machine: Machine, drafts: readonly Draft[], things: readonly Precedence[]): OrderedSteps {
  const heldBy = new Map<string, string[]>();
  for (const draft of drafts)
    for (const id of draft.fastenerIds) {
      const whole = wholeOf(machine, id);
      const known = heldBy.get(whole);
      if (known === undefined) heldBy.set(whole, [id]);
      else known.push(id);
    }
  const kept = withoutThreads(drafts, [...things, ...ruledEdges(machine, drafts)]);
  const parts = untangle(drafts, kept, (id) => heldBy.get(id) ?? []);
  const stepOf = stepsOf(parts);
  const edges = stepEdges(
    parts === drafts ? kept : [...withoutThreads(drafts, things), ...ruledEdges(machine, parts)],
    stepOf,
  );
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

/**
 * The same with names that tell steps apart, and with a memory: the order is found anew when a step holds other things,
 * or another thing comes first; a name also when what it tells of is elsewhere.
 */
export class StepOrder {
  readonly #ordered = new Query<OrderedSteps>(deepEqual);
  readonly #named = new Query<Draft>(deepEqual);
  readonly #result = new Query<OrderedSteps>(Object.is);

  solve(machine: Machine, drafts: readonly Draft[], things: Ordered): OrderedSteps {
    const { steps } = machine.book.tables;
    const ordered = this.#ordered.ask("all", [things.edges, steps, ...drafts], () =>
      orderSteps(machine, drafts, things.edges),
    );
    const named = withTitles(machine, ordered.drafts).map((draft) =>
      this.#named.ask(draft.id, [draft], () => draft),
    );
    return this.#result.ask("all", [ordered, ...named], () => ({ ...ordered, drafts: named }));
  }

  sweep(): void {
    for (const part of [this.#ordered, this.#named, this.#result]) part.sweep();
  }
}
