import { describe, expect, it } from "vitest";
import { continueDown, continueSeries, fillDown, fillRight } from "./fill.ts";

describe("fill", () => {
  it("repeats the first row or column", () => {
    expect(fillDown([["a", "b"], ["c", "d"], [""]])).toEqual([
      ["a", "b"],
      ["a", "b"],
      ["a", "b"],
    ]);
    expect(fillRight([["a", "b"]])).toEqual([["a", "a"]]);
  });

  it("continues evenly spaced numbers without what binary fractions would add", () => {
    expect(continueSeries(["1", "3"], 3)).toEqual(["5", "7", "9"]);
    expect(continueSeries(["0.1", "0.2"], 2)).toEqual(["0.3", "0.4"]);
    expect(continueSeries(["10", "7.5"], 2)).toEqual(["5", "2.5"]);
    expect(continueSeries(["7"], 2)).toEqual(["7", "7"]);
    expect(continueSeries(["1", "2", "4"], 2)).toEqual(["1", "2"]);
  });

  it("continues names that end in a number, zeros before it included", () => {
    expect(continueSeries(["sw.drop-1"], 2)).toEqual(["sw.drop-2", "sw.drop-3"]);
    expect(continueSeries(["lp-08", "lp-10"], 2)).toEqual(["lp-12", "lp-14"]);
    expect(continueSeries(["j1.5"], 2)).toEqual(["j1.6", "j1.7"]);
    expect(continueSeries(["a-2", "a-1"], 3)).toEqual(["a-2", "a-1", "a-2"]);
    expect(continueSeries(["top", "under"], 3)).toEqual(["top", "under", "top"]);
  });

  it("continues each column by itself", () => {
    expect(
      continueDown(
        [
          ["a1", "5"],
          ["a2", "5"],
        ],
        2,
      ),
    ).toEqual([
      ["a3", "5"],
      ["a4", "5"],
    ]);
  });
});
