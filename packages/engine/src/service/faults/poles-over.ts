import type { ServiceNetwork } from "./network.ts";
import type { JointEnds } from "./passes.ts";

/**
 * By set of joined nodes, 1: the current of a plus pole gets there over diodes (`up`), or from there to a minus pole
 * (`down`). A pole's own set is both.
 */
export function polesOver(
  { sources }: ServiceNetwork,
  ends: JointEnds,
  sets: Int32Array,
  diodes: readonly number[],
): { readonly up: Uint8Array; readonly down: Uint8Array } {
  const [up, down] = [new Uint8Array(sets.length), new Uint8Array(sets.length)];
  for (const { plus, minus } of sources) {
    up[sets[plus] ?? 0] = 1;
    down[sets[minus] ?? 0] = 1;
  }
  for (let grows = true; grows; ) {
    grows = false;
    for (const joint of diodes) {
      const a = sets[ends.a[joint] ?? -1] ?? 0;
      const b = sets[ends.b[joint] ?? -1] ?? 0;
      const isNew = (up[a] === 1 && up[b] === 0) || (down[b] === 1 && down[a] === 0);
      if (!isNew) continue;
      if (up[a] === 1) up[b] = 1;
      if (down[b] === 1) down[a] = 1;
      grows = true;
    }
  }
  return { up, down };
}
