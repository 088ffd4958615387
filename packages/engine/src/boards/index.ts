export { BoardsSolver, NO_BOARDS, type Registered } from "./boards-solver.ts";
