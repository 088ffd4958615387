import { describe, expect, it } from "vitest";
import { changeOf, releaseOf } from "./revision.ts";

describe("the revision of a unit", () => {
  it("is a release, or the change that it was begun at", () => {
    expect([changeOf("@12"), releaseOf("@12")]).toEqual(["12", null]);
    expect([changeOf("B"), releaseOf("B")]).toEqual([null, "B"]);
    expect([changeOf(""), releaseOf("")]).toEqual([null, null]);
  });
});
