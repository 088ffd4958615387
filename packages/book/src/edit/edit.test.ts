import { describe, expect, test } from "vitest";
import { filesOf, readBookFiles, writeBookFiles } from "../csv/files.ts";
import { RENAMABLE } from "../rules/renames-lead.ts";
import { BOOK_TABLES } from "../schema/tables/index.ts";
import { sampleBook } from "../testing/sample.ts";
import { renameId } from "./rename-id.ts";
import { withRows } from "./with-rows.ts";

const sample = readBookFiles(filesOf(writeBookFiles(sampleBook()))).book;

const idsOf = (table: string): string[] =>
  (Object.entries(sample.tables).find(([name]) => name === table)?.[1] ?? []).flatMap((row) =>
    "id" in row ? [row.id] : [],
  );

test("withRows shares every other table, and the book when nothing changed", () => {
  const rows = sample.tables.devices.slice(1);
  const edited = withRows(sample, "devices", rows);
  expect(edited.tables.devices).toBe(rows);
  for (const [name, table] of Object.entries(sample.tables)) {
    if (name !== "devices") expect(Object.entries(edited.tables).find(([n]) => n === name)?.[1]).toBe(table);
  }
  expect(edited.outlines).toBe(sample.outlines);
  expect(withRows(sample, "devices", sample.tables.devices)).toBe(sample);
});

describe("renaming", () => {
  test.each(RENAMABLE)(
    "every row of %s can be renamed: no fault, and the old id is nowhere but in renames",
    (table) => {
      for (const id of idsOf(table)) {
        const renamed = renameId(sample, table, id, "renamed-x");
        if (!renamed.ok) throw new Error(renamed.reason);
        const read = readBookFiles(filesOf(writeBookFiles(renamed.book)));
        expect(read.faults, `${table} ${id}`).toEqual([]);
        expect(read.book.tables).toEqual(renamed.book.tables);
        expect(renamed.book.tables.renames).toContainEqual({ table, old: id, new: "renamed-x" });
        const back = renameId(renamed.book, table, "renamed-x", id);
        if (!back.ok) throw new Error(back.reason);
        expect({ ...back.book.tables, renames: [] }).toEqual({ ...sample.tables, renames: [] });
      }
    },
  );

  test("every table that a column refers to can be renamed", () => {
    const targets = Object.values(BOOK_TABLES).flatMap((table) =>
      Object.values(table.columns).flatMap((c) => ("table" in c && c.table !== undefined ? [c.table] : [])),
    );
    for (const target of targets) expect(RENAMABLE).toContain(target);
  });

  test("items, points, children, wires in choices and earlier renames follow", () => {
    const renamed = renameId(sample, "mechanisms", "flip.left", "flip.l");
    if (!renamed.ok) throw new Error(renamed.reason);
    const { tables } = renamed.book;
    expect(tables.ends.map((end) => end.point)).toContain("flip.l/coil:a");
    expect(tables.activity[0]?.item).toBe("flip.l/coil");
    expect(tables.groups[0]?.items).toEqual(["flip.l/coil", "lamp.left"]);
    expect(tables.cables[0]?.to).toBe("flip.l/coil");
    expect(tables.choices[0]?.subject).toBe("net.coil|h.pf|brd.driver:j1.1|flip.l/coil:a");
    expect(tables.devices).toBe(sample.tables.devices);
    expect(tables.ends[0]).toBe(sample.tables.ends[0]);

    const device = renameId(sample, "devices", "sw.left", "sw.l");
    if (!device.ok) throw new Error(device.reason);
    expect(device.book.tables.renames).toEqual([
      { table: "devices", old: "sw.old", new: "sw.l" },
      { table: "devices", old: "sw.left", new: "sw.l" },
    ]);
    expect(device.book.tables.cutouts[0]?.serves).toBe("sw.l");
  });

  test("a net and a harness are renamed in the place of a wire's id that is theirs", () => {
    const book = withRows(sample, "choices", [
      {
        kind: "colour",
        subject: "same|same|a:1|b:1",
        value: "RD",
        held: "pinned",
        by: "",
        reason: "",
        basis: "",
      },
      { kind: "trunk", subject: "same", value: "w1 lane.1", held: "pinned", by: "", reason: "", basis: "" },
      {
        kind: "splice-place",
        subject: "splice:same:same:1",
        value: "w1",
        held: "pinned",
        by: "",
        reason: "",
        basis: "",
      },
    ]);
    const [net] = sample.tables.nets;
    const [harness] = sample.tables.harnesses;
    if (net === undefined || harness === undefined) throw new Error("the sample has them");
    const both = withRows(withRows(book, "nets", [{ ...net, id: "same" }]), "harnesses", [
      { ...harness, id: "same" },
    ]);
    const subjects = (table: string) => {
      const renamed = renameId(both, table, "same", "new");
      return renamed.ok ? renamed.book.tables.choices.map((choice) => choice.subject) : [];
    };
    expect(subjects("nets")).toEqual(["new|same|a:1|b:1", "same", "splice:new:same:1"]);
    expect(subjects("harnesses")).toEqual(["same|new|a:1|b:1", "new", "splice:same:new:1"]);
    const waypoint = renameId(both, "waypoints", "w1", "w9");
    expect(waypoint.ok && waypoint.book.tables.choices.map((choice) => choice.value)).toEqual([
      "RD",
      "w9 lane.1",
      "w9",
    ]);
  });

  test.each([
    ["no-table", "a", "b", "table-unknown"],
    ["ends", "a", "b", "table-unknown"],
    ["devices", "nobody", "b", "id-unknown"],
    ["devices", "sw.left", "SW Left", "id-form"],
    ["devices", "sw.left", "sw.left", "id-taken"],
    ["devices", "sw.left", "brd.driver", "id-taken"],
    ["nets", "net.coil", "net.coil", "id-taken"],
  ])("%s %s to %s is refused: %s", (table, from, to, reason) => {
    expect(renameId(sample, table, from, to)).toEqual({ ok: false, reason });
  });
});

test("a reference to an old id leads to the new one without a fault", () => {
  const files = new Map(writeBookFiles(sample));
  files.set("bonds.csv", (files.get("bonds.csv") ?? "").replace("sw.left:com", "sw.old:com"));
  const { book, faults } = readBookFiles(filesOf(files));
  expect(faults).toEqual([]);
  expect(book.tables.bonds[0]?.at).toBe("sw.left:com");
});
