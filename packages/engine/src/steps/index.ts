export { NO_STEPS, StepsSolver } from "./steps-solver.ts";
