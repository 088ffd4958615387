export { blockersBeneath } from "./access/findings.ts";
export { type LiesOver, liesOver } from "./access/lies-over.ts";
export { carries, heldBy, unitOf } from "./access/units.ts";
export { FasteningSolver, NO_FASTENING } from "./fastening-solver.ts";
export { type DrillRow, drillTable } from "./fit/drill-table.ts";
export { symbolOutline } from "./symbols/drawing.ts";
export { SHADE_COLOURS, SHADE_COLOURS_ON_DARK } from "./symbols/shade-colours.ts";
export { type Sign, symbolLikeness } from "./symbols/symbol-likeness.ts";
