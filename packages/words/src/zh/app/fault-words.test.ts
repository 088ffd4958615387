import { describe, expect, it } from "vitest";
import { faultWords } from "./fault-words.ts";

describe("faults in Chinese", () => {
  it("keep the numbers and names of the English sentence", () => {
    expect(faultWords("number-range", "a plain decimal number in mm, from 0 to 200")).toBe(
      "数值超出该列的范围（0 至 200）。",
    );
    expect(faultWords("number-range", "a whole number, 1 or more")).toBe("数值超出该列的范围（至少 1）。");
    expect(faultWords("choice-unknown", "one of: top, under")).toBe("该列所列的词之一（top、under）。");
    expect(faultWords("ref-dangling", "an id of `panels`")).toBe(
      "所指的行必须存在（表 “panels” 中的标识）。",
    );
    expect(faultWords("row-rule", "`from` differs from `to`.")).toBe(
      "本行各单元格组合须符合规则（“from” differs from “to”）。",
    );
    expect(faultWords("cell-blank", "a value")).toBe("");
    expect(faultWords("zip-path", "a path inside")).toBe("a path inside。");
  });
});
