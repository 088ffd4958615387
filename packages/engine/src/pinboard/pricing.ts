import type { BoxMm } from "@pinwright/kernel";
import { boxesNear, pairPrice, reachMm } from "./crowding.ts";
import type { Item } from "./item.ts";
import type { Bench } from "./task.ts";

/** What stands still while one limb is tried in several ways. */
export interface Still {
  readonly items: readonly Item[];
  /** Boxes of the items, four numbers each, grown by the reach: this is the innermost loop of all. */
  readonly boxes: Float64Array;
  readonly box: BoxMm;
}

const PRICE_OFF_BENCH_MM = 12;
const PRICE_OFF_BENCH = 600;
const PRICE_AREA_M2 = 20;

/** Price of a box of everything: its area, and far more for what hangs over the bench. */
export function benchPrice(bench: Bench, box: BoxMm): number {
  const width = box.maxXMm - box.minXMm;
  const height = box.maxYMm - box.minYMm;
  const area = (width * height * PRICE_AREA_M2) / 1e6;
  const { origin } = bench;
  const off =
    origin === null
      ? Math.max(0, width - bench.widthMm) + Math.max(0, height - bench.heightMm)
      : Math.max(0, origin.xMm - box.minXMm) +
        Math.max(0, origin.yMm - box.minYMm) +
        Math.max(0, box.maxXMm - origin.xMm - bench.widthMm) +
        Math.max(0, box.maxYMm - origin.yMm - bench.heightMm);
  return area + (off > 0 ? PRICE_OFF_BENCH + PRICE_OFF_BENCH_MM * off : 0);
}

/** Prices of items among other items, with the room that a holder wants. */
export class Pricing {
  readonly reachMm: number;
  readonly #handRoomMm: number;

  constructor(handRoomMm: number) {
    this.#handRoomMm = handRoomMm;
    this.reachMm = reachMm(handRoomMm);
  }

  /** Gets items ready to be priced against again and again. */
  still(items: readonly Item[], box: BoxMm): Still {
    const boxes = new Float64Array(items.length * 4);
    items.forEach((item, i) => {
      boxes[i * 4] = item.box.minXMm - this.reachMm;
      boxes[i * 4 + 1] = item.box.minYMm - this.reachMm;
      boxes[i * 4 + 2] = item.box.maxXMm + this.reachMm;
      boxes[i * 4 + 3] = item.box.maxYMm + this.reachMm;
    });
    return { items, boxes, box };
  }

  /** Price of items beside what stands still. Once it is over `limit`, no more is added. */
  beside(still: Still, items: readonly Item[], limit: number): number {
    const { boxes } = still;
    let price = 0;
    for (const p of items) {
      const { minXMm, minYMm, maxXMm, maxYMm } = p.box;
      for (let i = 0, k = 0; k < boxes.length; i++, k += 4) {
        if (maxXMm <= (boxes[k] ?? 0) || maxYMm <= (boxes[k + 1] ?? 0)) continue;
        if (minXMm >= (boxes[k + 2] ?? 0) || minYMm >= (boxes[k + 3] ?? 0)) continue;
        const q = still.items[i];
        if (q === undefined) continue;
        price += pairPrice(p, q, this.#handRoomMm);
        if (price >= limit) return price;
      }
    }
    return price;
  }

  /** Price of the pairs of one item of each list. */
  between(items: readonly Item[], others: readonly Item[]): number {
    let price = 0;
    for (const p of items) {
      for (const q of others) {
        if (boxesNear(p.box, q.box, this.reachMm)) price += pairPrice(p, q, this.#handRoomMm);
      }
    }
    return price;
  }

  /** Price of the pairs within a list. */
  within(items: readonly Item[]): number {
    let price = 0;
    items.forEach((p, i) => {
      for (let j = 0; j < i; j++) {
        const q = items[j];
        if (q !== undefined && boxesNear(p.box, q.box, this.reachMm)) {
          price += pairPrice(p, q, this.#handRoomMm);
        }
      }
    });
    return price;
  }
}
