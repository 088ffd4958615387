export {
  Circuit,
  type CircuitShape,
  type CircuitValues,
  contradictions,
  type NodePair,
  type PiecewiseElement,
  type PiecewiseSolution,
  SolvableCircuit,
  solvePiecewise,
} from "./circuit/index.ts";
export {
  COLOUR_CODES,
  type ColourCode,
  colourOf,
  GREEN_AND_YELLOW,
  joinBaseStripe,
  joinInTableOrder,
  splitColours,
} from "./colour-code.ts";
export { CRIMP_PULL_FORCES, type PullForce } from "./crimp-pull-force.ts";
export {
  ceilToDecimal,
  DECIMAL_PLACES,
  type Decimal,
  decimal,
  divideDecimal,
  numberOfDecimal,
  roundDecimal,
  sumDecimals,
  textOfDecimal,
  timesDecimal,
  ZERO,
} from "./decimal/index.ts";
export { cosSinDeg, directionDeg, normaliseDeg, polar, rotatePoint, turnDeg } from "./geometry/angle.ts";
export {
  differenceRings,
  intersectionRings,
  offsetRings,
  thickenLine,
  unionRings,
} from "./geometry/boolean.ts";
export { type BoxMm, boxesOverlap, boxHolds, boxOf, growBox, joinBoxes } from "./geometry/box.ts";
export { convexHull, convexOverlap, convexPieces, isConvex } from "./geometry/convex.ts";
export {
  composeFrames,
  type FrameMm,
  fromFrame,
  intoFrame,
  mirrorDeg,
  mirrorX,
  translate,
} from "./geometry/frame.ts";
export { GridIndex } from "./geometry/grid-index.ts";
export {
  addPoints,
  crossProduct,
  distance,
  dotProduct,
  type PointMm,
  pointAlong,
  pointBetween,
  polylineLength,
  scalePoint,
  subtractPoints,
  vectorLength,
} from "./geometry/point.ts";
export {
  anticlockwise,
  centroid,
  clockwise,
  type Inside,
  pointInRing,
  pointInRings,
  type RingMm,
  ringSides,
  signedArea,
} from "./geometry/polygon.ts";
export {
  circleRectangleDistance,
  pointRectangleDistance,
  type RectangleMm,
  rectangleCorners,
  rectangleDistance,
  rectangleHolds,
  rectangleSides,
  rectanglesOverlap,
  segmentRectangleDistance,
} from "./geometry/rectangle.ts";
export { ringDistance } from "./geometry/ring-distance.ts";
export {
  nearestFraction,
  pointSegmentDistance,
  type SegmentMm,
  segmentDistance,
  segmentIntersection,
  segmentsMeet,
} from "./geometry/segment.ts";
export {
  distance3,
  type Frame3Mm,
  fromFrame3,
  intoFrame3,
  type Point3Mm,
  rotateXyz,
  unrotateXyz,
} from "./geometry/space.ts";
export {
  blocksOf,
  connectedComponents,
  createGraph,
  type EdgeInput,
  type Graph,
  IndexHeap,
  minimumSpanningTree,
  otherEnd,
  pathTo,
  type ShortestPaths,
  type SteinerBound,
  type SteinerEffort,
  type SteinerTree,
  shortestPaths,
  steinerLowerBound,
  steinerTree,
  UnionFind,
} from "./graph/index.ts";
export {
  type AllowedColour,
  type Assignment,
  assign,
  assignQuadratic,
  type Balance,
  type BalanceEffort,
  type BalanceFault,
  type BalanceProblem,
  balanceFaults,
  bestLots,
  type Cap,
  CappedChoice,
  type CappedSet,
  type Colouring,
  type ColouringProblem,
  type CutFault,
  type CutKind,
  type CutPart,
  type CutPiece,
  type CuttingEffort,
  type CuttingPlan,
  type CuttingProblem,
  type CuttingRules,
  colourGraph,
  cutFaults,
  type FenceSetting,
  fenceSettings,
  fewestSheets,
  fewestStations,
  type LotPlan,
  type LotProblem,
  leastTakt,
  MOST_STOCK_LEVELS,
  mostValue,
  type NoBalance,
  type NoCuttingPlan,
  type Order,
  type OrderEffort,
  type PriceBreak,
  type QuadraticAssignment,
  type QuadraticEffort,
  type QuadraticProblem,
  type SheetPlan,
  type SheetTrim,
  type StockSheet,
  shortestPathOrder,
  shortestTourOrder,
  type ValueEffort,
  type ValuePlan,
  type ValueProblem,
} from "./optimise/index.ts";
export { compareText } from "./order.ts";
export {
  createPackingMemory,
  enclosingLowerBoundMm,
  type Packing,
  type PackingEffort,
  type PackingMemory,
  packCircles,
} from "./packing/index.ts";
export { roundTo, roundUpTo, toMicrometres } from "./quantise.ts";
export { seededRandom } from "./random.ts";
export { deepEqual, NestedQuery, Query, SharedMemory, sameMembers } from "./remember/index.ts";
export { awg, COPPER_OHM_MM2_PER_M_20C, type WireGauge } from "./wire-gauge.ts";
export { CURRENCY_CODES, currencyPlaces, isCurrency } from "./money/currencies.ts";
