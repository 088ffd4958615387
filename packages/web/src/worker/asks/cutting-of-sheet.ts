import { cutPanels, type PanelCut, type SheetCutting } from "@pinwright/engine";
import type { Model } from "../model.ts";

/** Plans of one set of sizes by their questions, as long as the shop's stock and times are the same. */
interface Known {
  readonly shop: readonly unknown[];
  readonly plans: Map<string, SheetCutting | null>;
}

const known = new WeakMap<readonly PanelCut[], Known>();

function plansOf({ line, shop }: Model): Known["plans"] {
  const basis = [shop.tables.stock_sheets, shop.numbers];
  const before = known.get(line.panels.cuts);
  if (before?.shop.every((one, i) => one === basis[i])) return before.plans;
  const plans: Known["plans"] = new Map();
  known.set(line.panels.cuts, { shop: basis, plans });
  return plans;
}

/** How the panels of one kind of sheet goods are cut for a number of machines; null when nothing is cut from it. */
export function cuttingOfSheet(
  model: Model,
  { partId, machines }: { readonly partId: string; readonly machines: number },
): SheetCutting | null {
  const plans = plansOf(model);
  const key = `${machines} ${partId}`;
  const before = plans.get(key);
  if (before !== undefined) return before;
  const { machine, panels } = model.line;
  const cuts = panels.cuts.filter(({ sheetPartId }) => sheetPartId === partId);
  const [plan = null] = cutPanels(
    machine,
    cuts.map((cut) => ({ cut, count: machines })),
  );
  plans.set(key, plan);
  return plan;
}
