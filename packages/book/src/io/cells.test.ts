import { writeFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CellTables, MACHINE_TABLE, RANK, rowOrder } from "../changes/cell-tables.ts";
import { applyChanges } from "../changes/change.ts";
import { cellTablesOf, cellTablesOfRaw } from "../changes/import.ts";
import { rawBookOf } from "../changes/raw-book.ts";
import { writeBookFiles } from "../csv/files.ts";
import { readRawBook } from "../read/book.ts";
import { BOOK_TABLES } from "../schema/tables/index.ts";
import { contentOf, sampleCells, sampleShopCells } from "../testing/cells.ts";
import { testFolder } from "../testing/folder.ts";
import { sampleBook, sampleShop } from "../testing/sample.ts";
import { readBook, readRawFiles } from "./read-book.ts";
import { writeCells } from "./write-cells.ts";
import { packXlsx } from "./write-xlsx.ts";
import { packZip } from "./write-zip.ts";

const files = testFolder();

function changed(
  tables: CellTables,
  table: string,
  row: string,
  cells: Readonly<Record<string, string>>,
): CellTables {
  const changes = Object.entries(cells).map(([column, to]) => ({
    table,
    row,
    column,
    from: tables.get(table)?.get(row)?.get(column) ?? "",
    to,
  }));
  const applied = applyChanges(tables, changes).tables;
  if (applied === null) throw new Error("the test changes what is not there");
  return applied;
}

/** The cells that come back when a written book is read. */
async function through(tables: CellTables, shop: CellTables, format: "zip" | "xlsx") {
  const path = files.at(`book.${format}`);
  writeFileSync(path, await writeCells(tables, shop, format));
  const { found, faults } = await readRawFiles(path);
  if (found === null) throw new Error("nothing was found");
  return { tables: cellTablesOf(found.raw), shop: cellTablesOfRaw(found.shop ?? new Map()), faults };
}

describe("writeCells", () => {
  it("writes the bytes of the typed book when nothing is wrong", async () => {
    const [book, shop] = [sampleBook(), sampleShop()];
    const [zip, xlsx] = [
      await writeCells(sampleCells(), sampleShopCells(), "zip"),
      await writeCells(sampleCells(), sampleShopCells(), "xlsx"),
    ];
    expect(Buffer.compare(zip, packZip(writeBookFiles(book, shop)))).toBe(0);
    expect(Buffer.compare(xlsx, await packXlsx(book, shop))).toBe(0);
  });

  it.each(["zip", "xlsx"] as const)("loses nothing of a faulty book as %s", async (format) => {
    let tables = sampleCells();
    const [first = "", second = ""] = rowOrder(tables.get("devices") ?? new Map());
    tables = changed(tables, "devices", first, {
      x_mm: "12,5",
      y_mm: "=1+1",
      "my notes": "=HYPERLINK(1)",
      "=cmd()": "x",
    });
    tables = changed(tables, "devices", second, { id: "sw.left", type: "no.such" });
    tables = changed(tables, "devices", "new", { [RANK]: "zz", label: "no id", remark: "a\nb" });
    tables = changed(tables, MACHINE_TABLE, "machine", { slope_deg: '"steep"', extra: '"more"' });
    const shop = changed(sampleShopCells(), "shop_settings", "1", { value: "much" });
    const back = await through(tables, shop, format);
    expect(contentOf(back.tables)).toEqual(contentOf(tables));
    expect(contentOf(back.shop)).toEqual(contentOf(shop));
    const codes = readRawBook(rawBookOf(tables).raw).faults.map(({ code, value }) => `${code} ${value}`);
    expect(codes.length).toBeGreaterThan(5);
    expect(
      back.faults.map(({ code, value }) => `${code} ${value}`).filter((c) => !c.endsWith(" much")),
    ).toEqual(codes);
  });

  it("gives any cells back", async () => {
    const tableNames = Object.keys(BOOK_TABLES);
    const text = fc.oneof(
      fc.constantFrom("'=1", "=1", "-5", "1e5", "007", " x ", "a,b", 'a"b', "x\ny", "\u0007", "面", ";"),
      fc.string({ maxLength: 5 }).map((s) => s.replace(/[\r\0]/g, "")),
    );
    const edit = fc.record({ table: fc.nat(1000), row: fc.nat(1000), column: fc.nat(1000), text });
    await fc.assert(
      fc.asyncProperty(fc.array(edit, { maxLength: 25 }), async (edits) => {
        let tables = sampleCells();
        for (const { table, row, column, text } of edits) {
          const name = tableNames[table % tableNames.length] ?? "";
          const ids = rowOrder(tables.get(name) ?? new Map());
          const columns = [...Object.keys(Reflect.get(BOOK_TABLES, name).columns), "stray"];
          tables = changed(tables, name, ids[row % ids.length] ?? "", {
            [columns[column % columns.length] ?? ""]: text,
          });
        }
        const canonical = readRawBook(rawBookOf(tables).raw);
        const back = await through(tables, sampleShopCells(), "zip");
        expect(readRawBook(rawBookOf(back.tables).raw)).toEqual(canonical);
        const faulty = new Set(canonical.faults.map(({ file }) => file));
        for (const name of tableNames.filter((table) => faulty.has(`${table}.csv`))) {
          expect(contentOf(back.tables)[name]).toEqual(contentOf(tables)[name]);
        }
      }),
      { seed: 12, numRuns: 40 },
    );
  });
});

describe("readRawFiles", () => {
  it("says the same faults as readBook, and keeps what the typed book cannot hold", async () => {
    const place = files.put([
      ["machine.json", '{"format": 1, "id": "m", "label": "M", "revision": "1", "date": "2026-01-01"}'],
      ["nets.csv", "id,id,,#,stray\nnet.a,net.b,lost?,rank,1,beyond\n,,,,\nnet.a,,,,\n"],
    ]);
    const { found, faults } = await readRawFiles(place);
    expect(faults).toEqual((await readBook(place)).faults);
    expect(contentOf(cellTablesOf(found?.raw ?? rawBookOf(new Map()).raw)).nets).toEqual([
      [
        ["# (2)", "rank"],
        ["column 3", "lost?"],
        ["column 6", "beyond"],
        ["id", "net.a"],
        ["id (2)", "net.b"],
        ["stray", "1"],
      ],
      [["id", "net.a"]],
    ]);
  });

  it("finds nothing where nothing is", async () => {
    const { found, faults } = await readRawFiles(files.at("nowhere.zip"));
    expect(found).toBeNull();
    expect(faults.map(({ code }) => code)).toEqual(["file-missing"]);
  });
});
