export { type KeyPlan, keyConnectors, keyPlugs } from "./key.ts";
export { harnessPlugs, type KeyedHarness, type Plug } from "./plugs.ts";
