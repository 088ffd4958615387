export { enclosingLowerBoundMm } from "./lower-bound.ts";
export {
  createPackingMemory,
  type Packing,
  type PackingEffort,
  type PackingMemory,
  packCircles,
} from "./packing.ts";
