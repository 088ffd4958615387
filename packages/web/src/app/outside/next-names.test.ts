import { isId } from "@pinwright/book";
import { expect, test } from "vitest";
import { nextRevision, nextSampleId } from "./next-names.ts";

test.each([
  ["", "A"],
  ["A", "B"],
  ["1", "2"],
  ["R9", "R10"],
  ["AB", "AC"],
  ["Z", ""],
  ["rev. z", ""],
])("after %j most likely comes %j", (revision, next) => {
  expect(nextRevision(revision)).toBe(next);
});

test("the next sample has an id of its own, whatever the revision is called", () => {
  expect(nextSampleId("br.plate", "B", new Set())).toBe("sm.br.plate.b-1");
  expect(nextSampleId("br.plate", "B", new Set(["sm.br.plate.b-1"]))).toBe("sm.br.plate.b-2");
  for (const revision of ["Rev. B/2", "\u7248\u672c", "-"])
    expect(isId(nextSampleId("br.plate", revision, new Set()))).toBe(true);
});
