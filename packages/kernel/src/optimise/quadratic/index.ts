export type { QuadraticProblem } from "./problem.ts";
export { assignQuadratic, type QuadraticAssignment, type QuadraticEffort } from "./quadratic.ts";
