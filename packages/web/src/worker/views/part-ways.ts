import { PriceBook, type Way, type WayCost } from "@pinwright/engine";
import type { Decimal } from "@pinwright/kernel";
import type { Model } from "../model.ts";
import { namedPart, namedSupplier } from "../parts/named-part.ts";
import { contentsOf } from "../parts/part-contents.ts";
import { costBasis, rolledUp } from "../parts/rolled-up.ts";
import { type WayFigures, wayFigures } from "../parts/way-figures.ts";
import type { NamedId } from "../steps/named.ts";
import { view } from "./view.ts";

/** One way of getting a part. */
export interface PartWay {
  /** Null: what the book itself says of the part, which is no row of the shop. */
  readonly wayId: string | null;
  readonly kind: Way["kind"];
  readonly label: string;
  readonly labelZh: string;
  readonly supplier: NamedId | null;
  readonly chosen: boolean;
}

/** A part that there is more than one way of getting, or whose way needs a tool. */
export interface PartWays extends NamedId {
  readonly unit: string;
  /** In one machine. */
  readonly inMachine: Decimal;
  readonly ways: readonly PartWay[];
  /** Place in `ways` of the one that the machines are reckoned with; null: nothing is known of its cost. */
  readonly current: number | null;
  readonly isDecided: boolean;
  readonly currency: string;
  readonly figures: WayFigures;
}

const partWayOf = (model: Model, way: Way): PartWay => ({
  wayId: way.wayId,
  kind: way.kind,
  label: way.labels.en,
  labelZh: way.labels.zh,
  supplier: namedSupplier(model, way.supplierId),
  chosen: way.chosen,
});

const isSame = (a: Way, b: WayCost["way"]): boolean => a.wayId === b.wayId && a.kind === b.kind;

/** Parts of the bill for which there is something to decide, by part; parts of the shop's table of ways come too. */
export const partWays = view<{ readonly machines: number }, PartWays>({
  uses: costBasis,
  entries: (model, { machines }) => {
    const { bill } = model.line.parts;
    const prices = new PriceBook(model.line.machine);
    const rolled = rolledUp(model, machines);
    const found = new Map<string, PartWays>();
    for (const node of bill.nodes.values()) {
      if (node.partId === null || found.has(node.partId)) continue;
      const ways = prices.waysOf(node.partId);
      if (ways.length < 2 && !ways.some((way) => way.tool !== null)) continue;
      const cost = rolled.nodes.get(node.id)?.cost ?? null;
      const current = cost === null ? -1 : ways.findIndex((way) => isSame(way, cost.way));
      found.set(node.partId, {
        ...namedPart(model, node.partId),
        unit: node.unit,
        inMachine: bill.totals.get(node.id) ?? 0n,
        ways: ways.map((way) => partWayOf(model, way)),
        current: current < 0 ? null : current,
        isDecided: ways.some((way) => way.chosen),
        currency: prices.own,
        figures: wayFigures(
          prices,
          ways,
          bill.totals.get(node.id) ?? 0n,
          contentsOf(bill, rolled, node.id),
          machines,
        ),
      });
    }
    return found;
  },
  restsInPreview: true,
});
