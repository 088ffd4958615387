import type { FactNames, MachineChange, Subject } from "@pinwright/engine";
import { expect, it } from "vitest";
import { changeSentence, subjectName } from "./compare-text.ts";

const NAMES: Readonly<Record<string, { readonly en: string; readonly zh: string }>> = {
  "sw.a": { en: "Left outlane", zh: "左外道" },
  "bd.a:j5.3": { en: "J5-3 of Lamp board", zh: "灯板的 J5-3" },
  "si.a": { en: "Left outlane", zh: "左外道" },
  "ft.a": { en: "Stand-off 10 mm", zh: "支柱 10 mm" },
  "ln.a": { en: "lane ln.a", zh: "线道 ln.a" },
};
const names: FactNames = (id) => NAMES[id] ?? { en: id, zh: id };

const subject = (over: Partial<Subject> = {}): Subject => ({
  ...{ table: "devices", id: "sw.a", labels: { en: "Left outlane", zh: "左外道" } },
  ...{ number: "31", deviceClass: "switch", places: [] },
  ...over,
});

const say = (what: MachineChange["what"], values: MachineChange["values"], of = subject()) =>
  (["en", "zh"] as const).map((language) => changeSentence(language, of, { what, values }, names));

it("calls things by what they are, with number and name", () => {
  const both = (of: Subject) => [subjectName("en", of), subjectName("zh", of)];
  expect(both(subject())).toEqual(["Switch 31, Left outlane", "开关 31，左外道"]);
  expect(both(subject({ deviceClass: "other", number: "" }))).toEqual([
    "Device, Left outlane",
    "器件，左外道",
  ]);
  const at = { panel: { en: "Playfield", zh: "台面" }, side: "under", xMm: 122, yMm: 1050 } as const;
  const bare = { deviceClass: "", number: "", labels: { en: "wp.a", zh: "wp.a" } };
  expect(both(subject({ ...bare, table: "waypoints", id: "wp.a", places: [at] }))).toEqual([
    "Waypoint wp.a (underside of Playfield, x 122, y 1050 mm)",
    "路径点 wp.a（台面背面，x 122，y 1050 mm）",
  ]);
});

it("says a name of the other language as that", () => {
  const from = [{ en: "Left outlane", zh: "左外道" }];
  expect(say("named", { from, to: [{ en: "Outer lane", zh: "左外道" }] })).toEqual([
    "is now called “Outer lane” (was “Left outlane”)",
    "英文名称改为“Outer lane”（原为“Left outlane”）",
  ]);
  expect(say("named", { from, to: [{ en: "Left outlane", zh: "外道" }] })).toEqual([
    "is now called “外道” in Chinese (was “左外道”)",
    "现称“外道”（原称“左外道”）",
  ]);
});

it("says values with the unit of their row, rows by what they are, and blank cells as such", () => {
  const test = subject({ table: "tests", deviceClass: "", number: "" });
  const field = { table: "tests", column: "max", from: "70", to: "71", key: "", unit: "mA" };
  expect(say("field", field, test)[0]).toBe("Upper limit: 71 mA (was 70 mA)");
  const pin = { table: "pins", column: "label", from: "", to: "spare", key: "J5-3", unit: "" };
  const type = subject({ table: "board_types", deviceClass: "", number: "" });
  expect(say("field", pin, type)[0]).toBe("pin J5-3, Name: spare (was not set)");
  const own = { table: "devices", column: "options", from: "", to: "x", key: "", unit: "" };
  expect(say("field", own)[0]).toBe("Options: x (was always)");
  expect(say("moved", { mm: 0.5, dxMm: 0.5, dyMm: 0, table: "placements", key: "R1" }, type)[0]).toBe(
    "part R1 is moved by 0.5 mm (x +0.5, y 0)",
  );
});

it("says which net a pin is on, and counts screws of one type", () => {
  expect(say("joined", { pin: "j4.10", from: [], to: ["si.a"] })).toEqual([
    "pin J4-10 is now on net Left outlane (was on no net)",
    "引脚 J4-10 改接网络“左外道”（原接空）",
  ]);
  expect(say("step-content", { in: ["sw.a", "ft.a", "ft.a"], out: [] })).toEqual([
    "now also takes in Left outlane and 2 × Stand-off 10 mm",
    "增加左外道、2 × 支柱 10 mm",
  ]);
});

it("says other figures of a finding in its own sentence, before and after", () => {
  const values = { rule: "contact-volts", severity: "error", subjects: ["sw.a"] };
  const [en = "", zh = ""] = say("finding-numbers", {
    ...values,
    from: [{ volts: 48, limit_v: 30 }],
    to: [{ volts: 70, limit_v: 30 }],
  });
  expect(en).toMatch(/^other figures for .*70.*\(was: .*48/u);
  expect(zh).toMatch(/数值有变：.*70.*（原为：.*48/u);
});

it("says what an acceptance is worth", () => {
  const values = { rule: "lane-overfull", subjects: ["ln.a"], by: "designer", why: "It was tried." };
  expect(say("acceptance-new", { ...values, isThere: "" })[0]).toMatch(
    /^accepts a finding that is not there: .*lane ln\.a.*because It was tried\.$/u,
  );
  expect(say("accepted-bounds", { ...values, from: "", to: "severity<=warning diameter_mm<=20" })[0]).toMatch(
    /severity ≤ warning and diameter ≤ 20 mm \(was whatever its figures are\)$/u,
  );
});
