export { MATRIX_KINDS, type MatrixKind, type MatrixSize, matrixInstance } from "./matrix/instances.ts";
export { type AssignMilpOptions, type AssignProof, assignMilp, MOST_SITES } from "./matrix/milp.ts";
export { INSTANCE_KINDS, type InstanceKind, type InstanceSize, routeInstance } from "./route/instances.ts";
export { type RouteMilpOptions, type RouteProof, routeMilp } from "./route/milp.ts";
