/**
 * The panels of Tidewatch: sizes, fits and checks from scratch and after one moved mechanism; cutting plans of all sheet
 * goods with their order of the fence for 1, 4, 16 and more machines, with sheets, bounds and settings beside the times;
 * the paint plan. `npx tsx bench/panels.ts`
 */
import { join } from "node:path";
import { emptyShop, withRows } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { cuttingPlan, PanelsSolver, Resolver, resolveMachine, shopPaintPlan } from "@pinwright/engine";
import { figures, type JobTime, median, once, writeResults } from "./measure.ts";

const RUNS = 5;
const MACHINES = [1, 4, 16, 25, 100, 1000];

const { book, shop: ownShop } = await readBook(join(import.meta.dirname, "../examples/tidewatch"));
const shop = ownShop ?? emptyShop();
const machine = resolveMachine(book, shop);
const { panels } = new PanelsSolver().solve(machine);

const times = (work: () => unknown): readonly JobTime[] => Array.from({ length: RUNS }, () => once(work));

/** Each mechanism moved in turn, the panels asked for after it. */
function afterMoves(): readonly JobTime[] {
  const resolver = new Resolver();
  const solver = new PanelsSolver();
  solver.solve(resolver.resolve(book, shop));
  return book.tables.mechanisms.map((moved, i) => {
    const rows = book.tables.mechanisms.map((row) =>
      row.id === moved.id ? { ...row, x_mm: row.x_mm + 1 + i } : row,
    );
    const now = resolver.resolve(withRows(book, "mechanisms", rows), shop);
    return once(() => {
      solver.solve(now);
      solver.sweep();
    });
  });
}

const cold = figures("cutting plans for 25 machines, first in the process", [
  once(() => cuttingPlan({ machine, panels }, { machines: 25 })),
]);

const growth = MACHINES.map((machines) => {
  const own = times(() => cuttingPlan({ machine, panels }, { machines }));
  const plans = cuttingPlan({ machine, panels }, { machines });
  const sum = (of: (plan: (typeof plans)[number]) => number): number =>
    plans.reduce((total, plan) => total + of(plan), 0);
  return {
    machines,
    cpuMs: median(own.map(({ cpuMs }) => cpuMs)),
    row: {
      ...figures(`cutting plans for ${machines} machines`, own),
      sheets: sum((plan) => plan.newSheets),
      sheets_bound: sum((plan) => plan.fewestNewSheets),
      settings: sum((plan) => plan.settings.length),
      settings_bound: sum((plan) => plan.fewestSettings),
      setups: sum((plan) => plan.setups.length),
      setups_bound: sum((plan) => plan.fewestSetups),
      mates_set_again: sum((plan) => plan.splitSettings.length),
    },
  };
});
const one = growth[0]?.cpuMs ?? 1;

writeResults("panels", [
  figures(
    "sizes, fits and checks from scratch",
    times(() => new PanelsSolver().solve(machine)),
  ),
  figures("after one moved mechanism, each in turn", afterMoves()),
  cold,
  ...growth.map(({ machines, cpuMs, row }) => ({
    ...row,
    exponent: machines === 1 ? "" : Number((Math.log(cpuMs / one) / Math.log(machines)).toFixed(2)),
  })),
  figures(
    "paint plan for 1000 machines",
    times(() => shopPaintPlan(machine, 1000)),
  ),
]);
