import { join } from "node:path";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { beforeAll, describe, expect, it } from "vitest";
import type { LineResult } from "../../model/index.ts";
import { Line } from "../line.ts";
import type { Share, Thing } from "./thing.ts";
import { Things } from "./things.ts";

let line: LineResult;
let things: Things;

beforeAll(async () => {
  const { book, shop } = await readBook(join(import.meta.dirname, "../../../../../examples/first-light"));
  line = new Line().run(book, shop ?? emptyShop());
  things = new Things(line);
});

const thing = (id: string): Thing => {
  const found = things.of(id);
  if (found === null) throw new Error(`nothing called ${id}`);
  return found;
};
const shared = ({ shares }: Thing, kind: Share["kind"], of: string): readonly string[] =>
  shares.find((share) => share.kind === kind && share.of.id === of)?.things.map(({ id }) => id) ?? [];

describe("one thing", () => {
  it("that is a switch has its place, pins, wires with their far ends, and what fails with it", () => {
    const found = thing("sw.left");
    expect(found).toMatchObject({
      ...{ kind: "item", itemKind: "device", number: "1", type: { id: "micro-switch" } },
      place: { panelId: "pf", side: "under", xMm: 95, yMm: 225 },
      controls: [{ board: { id: "bd.io" }, kind: "input" }],
    });
    expect(found.pins.map(({ id, net }) => [id, net?.id])).toEqual([
      ["sw.left:com", "switch.common"],
      ["sw.left:no", "switch.1"],
    ]);
    const [toBoard] = found.pins[1]?.wires ?? [];
    expect(toBoard?.a.id).toBe("sw.left:no");
    expect(toBoard?.b.item?.id).toBe("il.field");
    // Read off the book's table of ends by hand: the other switches hang on the same common.
    expect(shared(found, "net", "switch.common")).toEqual(expect.arrayContaining(["sw.far-left", "sw.top"]));
    expect(shared(found, "harness", "hs.field")).toContain("sw.top");
  });

  it("that is a fuse or supply has the loads behind it", () => {
    const loads = (ids: readonly string[]) => ids.map((id) => line.machine.items.get(id)?.kind);
    const fuse = thing("fuse.coils");
    expect(fuse).toMatchObject({
      kind: "fuse",
      of: { id: "bd.power" },
      figures: { ratedA: 3.15, speed: "t" },
    });
    expect(fuse.parts.map(({ id }) => id)).toEqual(["p.fuse-3a15-t"]);
    const behind = shared(fuse, "fuse", "fuse.coils");
    expect(loads(behind)).toEqual(["device", "device"]);
    expect(shared(thing("s24"), "supply", "s24")).toEqual(behind);
    for (const id of behind)
      expect(shared(thing(id), "fuse", "fuse.coils")).toEqual(behind.filter((b) => b !== id));
  });

  it("that is a wire is found by its id and by its printed number", () => {
    const wire = thing("1-2");
    expect(wire).toMatchObject({ kind: "wire", number: "1-2", harnessIds: ["hs.power"] });
    expect(thing(wire.id)).toEqual(wire);
    expect(wire.pins).toHaveLength(2);
  });

  it("is told of for every id that the book has, by that id", () => {
    const { machine } = line;
    const { tables } = machine.book;
    const ids = [
      ...[machine.items, machine.landings, machine.points, machine.nets, machine.panels].flatMap((map) => [
        ...map.keys(),
      ]),
      ...line.harnesses.keys(),
      ...[...line.harnesses.values()].flatMap(({ wires }) => wires.map(({ id }) => id)),
      ...line.steps.steps.map(({ id }) => id),
      ...[tables.fuses, tables.supplies, tables.tests, tables.parts, tables.device_types, tables.board_types]
        .flat()
        .map(({ id }) => id),
    ];
    for (const id of ids) expect(things.of(id)?.id).toBe(id);
    expect(things.of("nobody")).toBeNull();
  });

  it("says of every pair of things that share something the same from both sides", () => {
    // A mechanism shares what is in it shares, and is itself named nowhere: its children are.
    const items = [...line.machine.items.values()].filter(({ kind }) => kind !== "mechanism");
    for (const item of items)
      for (const { kind, of, things: others } of thing(item.id).shares)
        for (const other of others)
          if (kind === "fuse" || kind === "supply" || kind === "net" || kind === "return" || kind === "feed")
            expect(shared(thing(other.id), kind, of.id)).toContain(item.id);
  });
});
