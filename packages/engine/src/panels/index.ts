export type { PanelDemand } from "./cutting/demand.ts";
export { type CuttingQuestion, cutPanels, cuttingPlan, cuttingProblems } from "./cutting/plan.ts";
export { stackOf } from "./fits.ts";
export { type PaintQuestion, paintPlan, shopPaintPlan } from "./paint.ts";
export { NO_PANELS, type Panelled, PanelsSolver } from "./panels-solver.ts";
