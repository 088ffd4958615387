export { INSTANCE_KINDS, type InstanceKind, type InstanceSize, routeInstance } from "./route/instances.ts";
export { type RouteMilpOptions, type RouteProof, routeMilp } from "./route/milp.ts";
