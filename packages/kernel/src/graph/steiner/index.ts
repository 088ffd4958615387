export { type SteinerBound, steinerLowerBound } from "./dual-ascent.ts";
export { type SteinerEffort, type SteinerTree, steinerTree } from "./search.ts";
