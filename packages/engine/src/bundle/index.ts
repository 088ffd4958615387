export { checkTurn, type Turn } from "./bend.ts";
export { bundleOf, leastHolder } from "./bundle.ts";
export { checkPassage, type Passage } from "./capacity.ts";
export { checkBundles, checkHarnessBundles } from "./check.ts";
export { circlesOf } from "./circles.ts";
export {
  type BundledHarness,
  checkThoroughfare,
  type Thoroughfare,
  thoroughfareInputs,
  thoroughfares,
} from "./passages.ts";
export { turnsOf } from "./turns.ts";
