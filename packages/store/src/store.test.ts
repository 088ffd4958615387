import { describe } from "vitest";
import { onBothStores } from "./testing/on-both-stores.ts";
import { changesSuite } from "./testing/suite/changes.suite.ts";
import { undoSuite } from "./testing/suite/undo.suite.ts";

onBothStores((fresh) => {
  describe("changes", () => changesSuite(fresh));
  describe("undo and redo", () => undoSuite(fresh));
});
