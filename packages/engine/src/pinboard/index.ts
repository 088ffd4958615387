export { checkPinboard } from "./check.ts";
export { type HolderSize, holderSize } from "./holder-size.ts";
export { type PinboardInput, pinboardInput } from "./input.ts";
export { layPinboard } from "./lay.ts";
export { settlePegs } from "./pegs.ts";
export { tieSpacingMm } from "./ties.ts";
