export { type BundleOf, sizeBranches } from "./branches.ts";
export { lengthTolerancePlusMm } from "./tolerance.ts";
export { sizeWires, stripMm } from "./wires.ts";
