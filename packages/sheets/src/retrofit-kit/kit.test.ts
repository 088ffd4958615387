import { fileURLToPath } from "node:url";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { Line, type MachineFacts, machineFacts } from "@pinwright/engine";
import { sheetWords } from "@pinwright/words";
import { beforeAll, describe, expect, it } from "vitest";
import { retrofitKit } from "./kit.ts";

/** Words of the sheets, to see what a line of the instruction says. */
const words = sheetWords("en").change.kit.do;
const NAMES = { from: "A", to: "B" };

describe("a retrofit kit of two revisions of the small example", () => {
  let before: MachineFacts;
  let changed: (more: (tables: Tables) => Partial<Tables>) => MachineFacts;
  type Tables = Awaited<ReturnType<typeof readBook>>["book"]["tables"];
  beforeAll(async () => {
    const { book, shop } = await readBook(
      fileURLToPath(new URL("../../../../examples/first-light", import.meta.url)),
    );
    const facts = (tables: Tables): MachineFacts =>
      machineFacts(new Line().run({ ...book, tables }, shop ?? emptyShop()), []);
    before = facts(book.tables);
    changed = (more) => facts({ ...book.tables, ...more(book.tables) });
  }, 60_000);
  const kitOf = (after: MachineFacts) => retrofitKit(before, after, NAMES, "");
  const said = (after: MachineFacts): readonly string[] =>
    kitOf(after).steps.map(({ says }) => says(words, "en"));

  it("has nothing to do when nothing differs, or only what is said of it", () => {
    expect(kitOf(before)).toMatchObject({ steps: [], sent: [], back: [], newWires: [], oldWires: [] });
    const renamed = changed(({ devices }) => ({
      devices: devices.map((row) => (row.id === "sw.top" ? { ...row, label: "Lane switch" } : row)),
    }));
    expect(kitOf(renamed).steps).toEqual([]);
  });

  it("replaces wires that no longer reach, and measures each of them", () => {
    const after = changed(({ devices }) => ({
      devices: devices.map((row) => (row.id === "sw.top" ? { ...row, x_mm: row.x_mm + 36 } : row)),
    }));
    const kit = kitOf(after);
    expect(kit.newWires.map(({ number }) => number)).toEqual(kit.oldWires.map(({ number }) => number));
    for (const wire of kit.newWires) {
      const fact = Object.values(after.wires).find(({ number }) => number === wire.number);
      expect(wire.lengthMm).toBe(fact?.cutMm);
      expect(wire.colour.en.startsWith(fact?.colour ?? "?")).toBe(true);
    }
    const text = said(after);
    expect(text[0]).toBe(words.off);
    expect(text.some((line) => line.startsWith("Move Top lane switch"))).toBe(true);
    for (const { number } of kit.newWires) {
      expect(text.filter((line) => line.includes(`wire ${number}`))).toHaveLength(3);
    }
    // First all that comes out, then all that goes in, then what is measured.
    const at = (start: string): number => text.findIndex((line) => line.startsWith(start));
    expect(at("Take out wire")).toBeLessThan(at("Lay wire"));
    expect(at("Lay wire")).toBeLessThan(at("Put back"));
    expect(at("Put back")).toBeLessThan(at("Still unplugged"));
  });

  it("leaves wires that are only shorter now", () => {
    const after = changed(({ devices }) => ({
      devices: devices.map((row) => (row.id === "sw.top" ? { ...row, x_mm: row.x_mm + 36 } : row)),
    }));
    const back = retrofitKit(after, before, NAMES, "");
    expect(back.newWires).toEqual([]);
    expect(back.steps.some(({ says }) => says(words, "en").startsWith("Move"))).toBe(true);
  });

  it("gives work at mains and earth to a licensed person alone, with the caution that says so", () => {
    // The whole machine is new against an empty one: every wire is laid.
    const nothing: MachineFacts = { ...before, wires: {} };
    const kit = retrofitKit(nothing, before, NAMES, "");
    const licensed = Object.values(before.wires).filter(
      ({ netClass }) => netClass === "mains" || netClass === "earth",
    );
    const lines = kit.steps.map(({ says, licensed: only }) => ({ text: says(words, "en"), only }));
    for (const { number, netClass } of Object.values(before.wires)) {
      const lay = lines.find(({ text }) => text.startsWith(`Lay wire ${number} `));
      expect(lay?.only, number).toBe(netClass === "mains" || netClass === "earth");
    }
    const earth = lines.filter(({ text }) => text === words.earth);
    expect(earth.length).toBe(licensed.length > 0 ? 1 : 0);
    expect(kit.cautions.some(({ en }) => en.includes("licensed electrician"))).toBe(true);
  });
});
