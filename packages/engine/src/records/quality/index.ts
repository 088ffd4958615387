export {
  type ControlStudy,
  controlStudy,
  type Doubt,
  ENOUGH_READINGS,
  type StudyChart,
  type StudyReading,
} from "./control-study.ts";
export { type Counted, type ParetoBar, type ParetoMeasure, pareto } from "./pareto.ts";
export { defectsPerUnit, rolledYield } from "./yield.ts";
