export { breakoutGroups, colourHarness, type HarnessColours } from "./colour.ts";
export { isGreenAndYellow, mayWear, stockedColours } from "./palette.ts";
