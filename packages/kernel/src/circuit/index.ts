export { Circuit, type CircuitShape, type CircuitValues, type NodePair, SolvableCircuit } from "./circuit.ts";
export {
  contradictions,
  type PiecewiseElement,
  type PiecewiseSolution,
  solvePiecewise,
} from "./piecewise.ts";
