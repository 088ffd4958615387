import type { Model } from "../model.ts";
import { benchNames, benchTests } from "./bench-names.ts";
import { billCosts, billFigures } from "./bill-costs.ts";
import { billNodes } from "./bill-nodes.ts";
import { boardPlacements } from "./board-placements.ts";
import { boardRegister } from "./board-register.ts";
import { boardTests } from "./board-tests.ts";
import { carriers } from "./carriers.ts";
import { continuity } from "./continuity.ts";
import { cuttingBasis } from "./cutting-basis.ts";
import { electricBasis } from "./electric-basis.ts";
import { electricConductors } from "./electric-conductors.ts";
import { electricFuse, electricFuses } from "./electric-fuses.ts";
import { electricLadder } from "./electric-ladder.ts";
import { electricCoils, electricLoads, electricUnfed } from "./electric-loads.ts";
import { electricMoment } from "./electric-moment.ts";
import { electricSupplies, electricSupply } from "./electric-supplies.ts";
import { electricWorkedCurrent, electricWorkedLoad } from "./electric-worked.ts";
import { faults } from "./faults.ts";
import { findings, spareAcceptances } from "./findings.ts";
import { floorBench } from "./floor-bench.ts";
import { floorParts } from "./floor-parts.ts";
import { floorStage } from "./floor-stage.ts";
import { floorTestSteps, floorTestWalk } from "./floor-tests.ts";
import { floorSites, floorStages, floorTypes } from "./floor-types.ts";
import { floorWork } from "./floor-work.ts";
import { harness } from "./harness.ts";
import { harnessWires } from "./harness-wires.ts";
import { harnesses } from "./harnesses.ts";
import { housings } from "./housings.ts";
import { layoutAbout } from "./layout-about.ts";
import { layoutCutouts } from "./layout-cutouts.ts";
import { layoutEffects } from "./layout-effects.ts";
import { layoutFindings } from "./layout-findings.ts";
import { layoutItems } from "./layout-items.ts";
import { layoutPanels } from "./layout-panels.ts";
import { layoutTails } from "./layout-tails.ts";
import { layoutTrace } from "./layout-trace.ts";
import { layoutCrossings, layoutLanes, layoutWaypoints } from "./layout-ways.ts";
import { learning } from "./learning.ts";
import { net, nets } from "./nets.ts";
import { outsideDetail, outsideLines, outsideSuppliers } from "./outside.ts";
import { paintBasis } from "./paint-basis.ts";
import { panelFits, panelSizes } from "./panel-sizes.ts";
import { partAbout } from "./part-about.ts";
import { partFlags } from "./part-flags.ts";
import { partWays } from "./part-ways.ts";
import { pinboard } from "./pinboard.ts";
import { placedOrders } from "./placed-orders.ts";
import { planMoment } from "./plan-moment.ts";
import { problemScope } from "./problem-scope.ts";
import { boardFindings, panelFindings, stepFindings } from "./rule-findings.ts";
import { runSizes } from "./run-sizes.ts";
import { planGround, runs } from "./runs.ts";
import { screwAbout } from "./screw-about.ts";
import { screwMarks } from "./screw-marks.ts";
import { screwTypes } from "./screw-types.ts";
import { siteStages } from "./site-stages.ts";
import { solderBasis } from "./solder-basis.ts";
import { stations } from "./stations.ts";
import { stepFigures } from "./step-figures.ts";
import { stepLines } from "./step-lines.ts";
import { stepParts } from "./step-parts.ts";
import { stock, stockHistory, stockNames } from "./stock.ts";
import { summary } from "./summary.ts";
import { table } from "./table.ts";
import { tableFaults } from "./table-faults.ts";
import { tableList } from "./table-list.ts";
import { thing } from "./thing.ts";
import type { View } from "./view.ts";
import { wayCurve } from "./way-curve.ts";
import { wire } from "./wire.ts";
import { wiringPlace } from "./wiring-place.ts";

/** Every view by its name. */
export const VIEWS = {
  benchNames,
  benchTests,
  floorBench,
  floorTestSteps,
  floorTestWalk,
  floorStage,
  floorParts,
  floorSites,
  floorStages,
  floorTypes,
  floorWork,
  summary,
  table,
  tableFaults,
  tableList,
  faults,
  findings,
  spareAcceptances,
  layoutPanels,
  layoutItems,
  layoutCutouts,
  layoutWaypoints,
  layoutLanes,
  layoutCrossings,
  layoutTails,
  layoutTrace,
  layoutFindings,
  layoutEffects,
  layoutAbout,
  harnesses,
  harness,
  harnessWires,
  continuity,
  housings,
  pinboard,
  nets,
  net,
  carriers,
  wire,
  wiringPlace,
  thing,
  problemScope,
  electricSupplies,
  electricSupply,
  electricConductors,
  electricLoads,
  electricUnfed,
  electricCoils,
  electricFuses,
  electricFuse,
  electricMoment,
  electricBasis,
  electricLadder,
  electricWorkedCurrent,
  electricWorkedLoad,
  screwTypes,
  screwMarks,
  screwAbout,
  stepLines,
  stepParts,
  stepFigures,
  stepFindings,
  siteStages,
  stations,
  learning,
  panelSizes,
  panelFits,
  cuttingBasis,
  runSizes,
  paintBasis,
  panelFindings,
  boardRegister,
  boardPlacements,
  boardTests,
  boardFindings,
  solderBasis,
  billNodes,
  billCosts,
  billFigures,
  partAbout,
  partFlags,
  partWays,
  wayCurve,
  stock,
  stockHistory,
  stockNames,
  runs,
  planGround,
  planMoment,
  placedOrders,
  outsideLines,
  outsideDetail,
  outsideSuppliers,
};

export type ViewName = keyof typeof VIEWS;
export type ViewParam<N extends ViewName> = (typeof VIEWS)[N] extends View<infer P, infer _> ? P : never;
export type ViewEntry<N extends ViewName> = (typeof VIEWS)[N] extends View<infer _, infer E> ? E : never;

/** A view whose types are not known where it is used: the worker's own round over what is watched. */
export interface AnyView {
  uses(model: Model, param: unknown): readonly unknown[];
  entries(model: Model, param: unknown): ReadonlyMap<string, unknown>;
  readonly restsInPreview?: boolean;
  readonly early?: boolean;
}
