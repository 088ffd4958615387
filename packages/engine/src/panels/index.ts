export { NO_PANELS, type Panelled, PanelsSolver } from "./panels-solver.ts";
