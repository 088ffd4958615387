import { FAULT_WORDS } from "@pinwright/words/service";
import { describe, expect, it } from "vitest";
import { readLetter } from "./letter.ts";
import type { Group, NamedFunction } from "./names.ts";

const one = (group: Group, number: number, f: number): NamedFunction => ({
  f,
  id: `${group}.${number}`,
  group,
  item: f,
  number,
  name: "",
});
const FUNCTIONS = [1, 2, 3, 7, 12, 14].flatMap((n, f) => [
  one("lamp", n, 2 * f),
  one("switch", n, 2 * f + 1),
]);

const { en, zh } = FAULT_WORDS;

describe("a letter", () => {
  it("is read clause by clause", () => {
    const read = readLetter("12, 14 and 1 dead; 7 always on", en.faults.letterWords, FUNCTIONS, "lamp");
    expect(read).toEqual({
      seen: { "lamp.12": "dead", "lamp.14": "dead", "lamp.1": "dead", "lamp.7": "on" },
      missed: [],
      absent: [],
      unclear: [],
    });
  });

  it("knows kinds and ranges, and keeps a kind until another is named", () => {
    const read = readLetter(
      "Switches 1-3 do not work. 7 works now and then\nlamp 12 is out",
      en.faults.letterWords,
      FUNCTIONS,
      "lamp",
    );
    expect(read.seen).toEqual({
      "switch.1": "dead",
      "switch.2": "dead",
      "switch.3": "dead",
      "switch.7": "sometimes",
      "lamp.12": "dead",
    });
  });

  it("says what it does not understand and what is not there", () => {
    const read = readLetter(
      "Dear service desk; 99 dead; 12 purple",
      en.faults.letterWords,
      FUNCTIONS,
      "lamp",
    );
    expect(read).toEqual({
      seen: {},
      missed: ["Dear service desk", "12 purple"],
      absent: [{ group: "lamp", number: 99 }],
      unclear: [],
    });
  });

  it("takes nothing over of a number that several things have, and says which", () => {
    const two = [
      { ...one("switch", 5, 0), id: "a", name: "5 Lane" },
      { ...one("switch", 5, 1), id: "b", name: "5 Beam" },
    ];
    const { seen, unclear } = readLetter("switch 5 dead", en.faults.letterWords, two, "lamp");
    expect(seen).toEqual({});
    expect(unclear).toEqual([{ group: "switch", number: 5, names: ["5 Lane", "5 Beam"] }]);
    const windings = [
      { ...one("coil", 5, 0), id: "a", item: 7 },
      { ...one("coil", 5, 1), id: "b", item: 7 },
    ];
    const both = readLetter("coil 5 dead", en.faults.letterWords, windings, "lamp");
    expect(both).toEqual({ seen: { a: "dead", b: "dead" }, missed: [], absent: [], unclear: [] });
  });

  it("is read in Chinese", () => {
    const read = readLetter(
      "灯 12、14 不亮；7 常亮；开关 1-2 失灵",
      zh.faults.letterWords,
      FUNCTIONS,
      "lamp",
    );
    expect(read.seen).toEqual({
      "lamp.12": "dead",
      "lamp.14": "dead",
      "lamp.7": "on",
      "switch.1": "dead",
      "switch.2": "dead",
    });
  });

  it("takes its own example over in both languages", () => {
    const numbers = Array.from({ length: 40 }, (_, n) => [one("lamp", n, n), one("switch", n, n)]).flat();
    for (const { faults } of [en, zh]) {
      const read = readLetter(faults.letterExample, faults.letterWords, numbers, "lamp");
      expect(read.missed).toEqual([]);
      expect(Object.keys(read.seen)).toHaveLength(7);
    }
  });
});
