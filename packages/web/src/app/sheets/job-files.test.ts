import type { Job } from "@pinwright/contract";
import { describe, expect, it } from "vitest";
import { byHarness, withJob } from "./job-files.ts";

const file = (name: string) => ({ name, title: name, bytes: 1, body: "" });
const job = (id: string, done: number): Job => ({
  id,
  book: "b",
  changeNo: 1,
  state: "running",
  done,
  total: 2,
  now: "",
  files: [],
});

describe("byHarness", () => {
  it("gives each harness its own files, in the order of the harnesses", () => {
    const files = ["hs.lamp-2.cut-list.en.pdf", "index.html", "hs.lamp.cut-list.en.pdf"].map(file);
    expect(
      byHarness(files, ["hs.lamp", "hs.lamp-2", "hs.none"]).map((one) => [
        one.harnessId,
        one.files.map((f) => f.name),
      ]),
    ).toEqual([
      ["hs.lamp", ["hs.lamp.cut-list.en.pdf"]],
      ["hs.lamp-2", ["hs.lamp-2.cut-list.en.pdf"]],
      [null, ["index.html"]],
    ]);
  });
});

describe("withJob", () => {
  it("changes a job in its place and puts a new one first", () => {
    expect(withJob([job("a", 0), job("b", 0)], job("b", 1)).map((one) => [one.id, one.done])).toEqual([
      ["a", 0],
      ["b", 1],
    ]);
    expect(withJob([job("a", 0)], job("c", 0)).map((one) => one.id)).toEqual(["c", "a"]);
  });
});
