import type { Book, BookRow } from "@pinwright/book";
import { Line, type LineResult, type SizedWire } from "@pinwright/engine";
import { describe, expect, it } from "vitest";
import { assemble } from "./make/assemble.ts";
import { settled } from "./make/settled.ts";

const made = assemble();
const { shop } = made;
const kept = settled(made.book, shop);
const before = new Line().run(kept, shop);

const wiresOf = (result: LineResult): ReadonlyMap<string, SizedWire> =>
  new Map([...result.harnesses.values()].flatMap(({ wires }) => wires.map((wire) => [wire.id, wire])));

/** A row like another one, with some cells of its own. */
function like<R>(rows: readonly R[], isIt: (row: R) => boolean, cells: Partial<R>): R {
  const found = rows.find(isIt);
  if (found === undefined) throw new Error("The row to copy is not there.");
  return { ...found, ...cells };
}

const ends = (harness: string, net: string, ...points: string[]): BookRow<"ends">[] =>
  points.map((point) => ({ point, net, harness, options: [] }));

/** One more target on a spare input of the front right switch board. */
function withOneMoreSwitch(book: Book): Book {
  const t = book.tables;
  const input = "bd.switch-2:j4.6";
  return {
    ...book,
    tables: {
      ...t,
      devices: [
        ...t.devices,
        like(t.devices, (d) => d.id === "sw.star-4", { id: "sw.star-5", x_mm: 340, y_mm: 470 }),
      ],
      nets: [...t.nets, like(t.nets, (n) => n.id === "si.star-4", { id: "si.star-5", source: input })],
      ends: [
        ...t.ends,
        ...ends("hs.switch-front", "sc.switch-2.j4", "sw.star-5:com"),
        ...ends("hs.switch-front", "si.star-5", input, "sw.star-5:no"),
      ],
      choices: t.choices.filter((c) => !(c.kind === "spare" && c.subject === input)),
    },
  };
}

describe("Tidewatch settled", () => {
  it("has the same wires as without what is settled", () => {
    expect(wiresOf(before)).toEqual(wiresOf(new Line().run(made.book, shop)));
  });

  it("settles the same when it is settled again", () => {
    expect(settled(kept, shop).tables.choices).toEqual(kept.tables.choices);
  });

  it("takes one more switch without touching what is built", () => {
    const after = new Line().run(withOneMoreSwitch(kept), shop);
    const [old, fresh] = [wiresOf(before), wiresOf(after)];
    const gone = [...old.keys()].filter((id) => !fresh.has(id));
    expect(gone.length).toBeLessThanOrEqual(1);
    expect(fresh.size).toBe(old.size + 2);
    for (const [id, wire] of old) {
      const now = fresh.get(id);
      if (now !== undefined) expect([id, now.colour, now.number]).toEqual([id, wire.colour, wire.number]);
    }
    for (const [id, { pinboard }] of before.harnesses)
      if (id !== "hs.switch-front") expect(after.harnesses.get(id)?.pinboard).toEqual(pinboard);
  });
});
