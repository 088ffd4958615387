export { checkTurn, type Turn } from "./bend.ts";
export { bundleOf, leastHolder } from "./bundle.ts";
export { checkPassage, type Passage } from "./capacity.ts";
export { type BundledHarness, checkBundles } from "./check.ts";
export { circlesOf } from "./circles.ts";
export { turnsOf } from "./turns.ts";
