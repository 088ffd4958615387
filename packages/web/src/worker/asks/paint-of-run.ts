import { type PaintPlan, shopPaintPlan } from "@pinwright/engine";
import type { Model } from "../model.ts";

/** How the cabinets of a number of machines go through the paint shop; null: the shop has no coats. */
export const paintOfRun = ({ line }: Model, { machines }: { readonly machines: number }): PaintPlan | null =>
  shopPaintPlan(line.machine, machines);
