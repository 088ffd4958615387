import { expect, it } from "vitest";
import { faultWords } from "./fault-words.ts";

/** Sentences as the reader of books makes them. */
const SENTENCES: readonly (readonly [string, string, string])[] = [
  [
    "number-range",
    "a plain decimal number with `.` as decimal point in mm, from -5000 to 5000",
    "（-5000 至 5000）",
  ],
  ["row-rule", "another waypoint than `from`", "（与 “from” 不同的路点）"],
  [
    "row-rule",
    "a waypoint on the other side of `pf`, because the kind is `hole`; this one is on top of `pf`",
    "“pf” 另一面的路点",
  ],
  ["row-rule", "at most the width, 12; a slot is longest in its own x, turn it by 90°", "至多等于宽度 12"],
  ["row-rule", "one question such as `MEAS:VOLT:DC?`, without a semicolon", "不带分号"],
  ["row-rule", "0 or more, the least value", "即最小值"],
  [
    "row-rule",
    "a test of the kind `sequence`; this one is `measure`",
    "“sequence” 类的测试；这一项是 “measure”",
  ],
  [
    "row-rule",
    "more than 31, so that bond and insulation come before anything that is switched on",
    "大于 31",
  ],
  ["ref-dangling", "an id of `device_types`", "表 “device_types” 中的标识"],
];

it("says faults in Chinese, with their numbers and names, and nothing in English", () => {
  for (const [code, expected, part] of SENTENCES) expect(faultWords(code, expected)).toContain(part);
  const unknown = faultWords("row-rule", "something that no pattern knows");
  expect(unknown).toBe("本行各单元格组合须符合规则。");
  expect(faultWords("zip-path", "no path out of the folder")).toBe("");
});
