import { compareText } from "@pinwright/kernel";
import type { Place, Side } from "../../model/index.ts";

/** The panel side on which most of these places lie; of equally many the first in code-point order. */
export function sideOf(places: readonly Place[]): { readonly panelId: string | null; readonly side: Side } {
  const counts = new Map<string, { place: Place; count: number }>();
  for (const place of places) {
    const key = `${place.panelId}:${place.side}`;
    const known = counts.get(key);
    if (known === undefined) counts.set(key, { place, count: 1 });
    else known.count += 1;
  }
  const [most] = [...counts].sort(([a, x], [b, y]) => y.count - x.count || compareText(a, b));
  if (most === undefined) return { panelId: null, side: "top" };
  const { panelId, side } = most[1].place;
  return { panelId, side };
}
