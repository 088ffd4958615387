import { type MakeOrBuy, makeOrBuy, PriceBook } from "@pinwright/engine";
import { numberOfDecimal } from "@pinwright/kernel";
import { contentsOf } from "../parts/part-contents.ts";
import { costBasis, rolledUp } from "../parts/rolled-up.ts";
import { view } from "./view.ts";

/** What a part costs in each way against the quantity. */
export interface WayCurves extends MakeOrBuy {
  readonly currency: string;
}

/** Steps of a chart from one piece to ten, and from ten to a hundred. */
const STEPS_A_DECADE = 12;
const LEAST_TOP = 10_000;
/** Machines to whose pieces the curves go at least. */
const TOP_MACHINES = 1000;
/** Quantities that people think in, so that tables have them. */
const ROUND = [1, 10, 25, 50, 100, 250, 500, 1000, 2500, 5000, 10_000, 100_000];

/** Whole quantities from one up, spread evenly over a scale of powers of ten, with round ones between. */
function quantitiesTo(top: number, also: readonly number[]): readonly number[] {
  const quantities = new Set<number>(also.filter((n) => n >= 1));
  const decades = Math.log10(top);
  for (let i = 0; i <= Math.ceil(decades * STEPS_A_DECADE); i++)
    quantities.add(Math.min(top, Math.round(10 ** (i / STEPS_A_DECADE))));
  for (const round of ROUND) if (round <= top) quantities.add(round);
  return [...quantities].sort((a, b) => a - b);
}

/** Curves of one part; no entry when the bill has no such part. */
export const wayCurve = view<{ readonly id: string; readonly machines: number }, WayCurves>({
  uses: costBasis,
  entries: (model, { id, machines }) => {
    const { bill } = model.line.parts;
    const node = [...bill.nodes.values()].find((one) => one.partId === id);
    if (node === undefined) return new Map();
    const inMachine = numberOfDecimal(bill.totals.get(node.id) ?? 0n);
    const pieces = Math.max(1, Math.round(inMachine * machines));
    const top = Math.max(LEAST_TOP, 10 ** Math.ceil(Math.log10(Math.max(1, inMachine * TOP_MACHINES))));
    const prices = new PriceBook(model.line.machine);
    const made = makeOrBuy(
      prices,
      id,
      quantitiesTo(top, [pieces]),
      contentsOf(bill, rolledUp(model, machines), node.id),
    );
    return new Map([["", { ...made, currency: prices.own }]]);
  },
  restsInPreview: true,
});
