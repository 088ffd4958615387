export { type KeyPlan, keyConnectors } from "./key.ts";
export type { KeyedHarness } from "./plugs.ts";
