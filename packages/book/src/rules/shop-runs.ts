import { isDay } from "./day.ts";
import { type ShopRule, shopRule } from "./shop-rule.ts";

const runOrder = shopRule(
  "runs",
  "A run does not ship before it begins.",
  ["ship", "begin"],
  () => (row) =>
    !isDay(row.begin) || !isDay(row.ship) || row.ship >= row.begin
      ? null
      : { column: "ship", value: row.ship, expected: `${row.begin} or later, when it begins`, nearest: null },
);

const mixWithin = shopRule(
  "run_mix",
  "The options of a run are not built more often than the run has machines.",
  ["run", "machines"],
  ({ runs }) => {
    const left = new Map(runs.map(({ id, machines }) => [id, machines]));
    return (row) => {
      const rest = left.get(row.run);
      if (rest === undefined) return null;
      left.set(row.run, rest - row.machines);
      return row.machines <= rest
        ? null
        : {
            column: "machines",
            value: String(row.machines),
            expected: `at most ${Math.max(0, rest)}, what is left of the run`,
            nearest: null,
          };
    };
  },
);

const orderDue = shopRule(
  "orders",
  "An order does not come before it is placed.",
  ["day", "due"],
  () => (row) =>
    !isDay(row.day) || !isDay(row.due) || row.due >= row.day
      ? null
      : { column: "due", value: row.due, expected: `${row.day} or later, when it was placed`, nearest: null },
);

/** Rules of runs and orders. */
export const SHOP_RUNS: readonly ShopRule[] = [runOrder, mixWithin, orderDue];
