import type { PartSource, Total } from "@pinwright/engine";
import type { Decimal } from "@pinwright/kernel";
import { namedSupplier } from "../parts/named-part.ts";
import { costBasis, rolledUp } from "../parts/rolled-up.ts";
import type { NamedId } from "../steps/named.ts";
import { view } from "./view.ts";

/** What one thing of the bill costs, and from whom it comes. */
export interface BillCost {
  readonly currency: string;
  /** One of it with its contents. */
  readonly each: Total;
  /** What of it is got for one machine. */
  readonly ofMachine: Total;
  readonly source: {
    readonly kind: PartSource["kind"];
    readonly wayId: string | null;
    readonly supplier: NamedId | null;
    /** Quantity from which the price holds; null: it is not bought at a price. */
    readonly fromQuantity: Decimal | null;
  } | null;
}

/** Costs of everything in the bill when so many machines are made together, by id. */
export const billCosts = view<{ readonly machines: number }, BillCost>({
  uses: costBasis,
  entries: (model, { machines }) => {
    const { currency, nodes } = rolledUp(model, machines);
    return new Map(
      [...nodes].map(([id, { each, ofMachine, source, cost }]): readonly [string, BillCost] => [
        id,
        {
          currency,
          each,
          ofMachine,
          source:
            source === null
              ? null
              : {
                  kind: source.kind,
                  wayId: source.wayId,
                  supplier: namedSupplier(model, source.supplierId),
                  fromQuantity: cost?.purchase?.from ?? null,
                },
        },
      ]),
    );
  },
  restsInPreview: true,
});

/** One machine in money: material, tools, and the work that the ways of making tell. */
export interface BillFigures {
  readonly currency: string;
  readonly each: Total;
  /** Of packs that the machines do not use up, for all of them. */
  readonly leftOver: Decimal;
}

export const billFigures = view<{ readonly machines: number }, BillFigures>({
  uses: costBasis,
  entries: (model, { machines }) => {
    const { currency, each, leftOver } = rolledUp(model, machines);
    return new Map([["", { currency, each, leftOver }]]);
  },
  restsInPreview: true,
});
