import { describe } from "vitest";
import { onBothStores } from "./testing/on-both-stores.ts";
import { backUpSuite } from "./testing/suite/back-up.suite.ts";
import { changesSuite } from "./testing/suite/changes.suite.ts";
import { concurrencySuite } from "./testing/suite/concurrency.suite.ts";
import { filesSuite } from "./testing/suite/files.suite.ts";
import { modelSuite } from "./testing/suite/model.suite.ts";
import { openingSuite } from "./testing/suite/opening.suite.ts";
import { peopleSuite } from "./testing/suite/people.suite.ts";
import { qualitySuite } from "./testing/suite/quality.suite.ts";
import { recordsSuite } from "./testing/suite/records.suite.ts";
import { snapshotsSuite } from "./testing/suite/snapshots.suite.ts";
import { undoSuite } from "./testing/suite/undo.suite.ts";

onBothStores((fresh) => {
  describe("changes", () => changesSuite(fresh));
  describe("undo and redo", () => undoSuite(fresh));
  describe("random work of three people", () => modelSuite(fresh));
  describe("many at once", () => concurrencySuite(fresh));
  describe("snapshots", () => snapshotsSuite(fresh));
  describe("files", () => filesSuite(fresh));
  describe("people and their surroundings", () => peopleSuite(fresh));
  describe("records", () => recordsSuite(fresh));
  describe("quality", () => qualitySuite(fresh));
  describe("back-ups", () => backUpSuite(fresh));
  describe("opening", () => openingSuite(fresh));
});
