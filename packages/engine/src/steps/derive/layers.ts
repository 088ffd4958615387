import { compareText } from "@pinwright/kernel";
import type { Precedence } from "../../model/index.ts";
import { ranksOf } from "./knots.ts";

/** Items within one step of which one comes before another, as `item layer` rows in code-point order. */
export type StepLayers = ReadonlyMap<string, readonly (readonly [itemId: string, layer: number])[]>;

/**
 * How deep each item lies within its own step: 0 for what waits for nothing else there. Steps in which nothing waits are
 * left out.
 */
export function layersOf(edges: readonly Precedence[], stepOf: ReadonlyMap<string, string>): StepLayers {
  const inside = new Map<string, (readonly [string, string])[]>();
  for (const { beforeId, afterId } of edges) {
    const step = stepOf.get(beforeId);
    if (step === undefined || step !== stepOf.get(afterId)) continue;
    const known = inside.get(step);
    if (known === undefined) inside.set(step, [[beforeId, afterId]]);
    else known.push([beforeId, afterId]);
  }
  return new Map(
    [...inside].map(([step, pairs]) => [
      step,
      [...ranksOf(pairs, () => 1)].filter(([, layer]) => layer > 0).sort(([a], [b]) => compareText(a, b)),
    ]),
  );
}
