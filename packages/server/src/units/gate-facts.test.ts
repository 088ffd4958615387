import { type CellTables, RANK } from "@pinwright/book";
import { SHOP_ID } from "@pinwright/contract";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Shelf } from "../books/shelf.ts";
import { cellsText } from "../releases/cells-text.ts";
import { keptShop } from "../releases/kept-shop.ts";
import { Tablet } from "../testing/tablet.ts";
import { SMALL, TestServer } from "../testing/test-server.ts";
import { cellsOfJson } from "../threads/cells-json.ts";
import { GateFacts } from "./gate-facts.ts";

const ACTOR = { personId: "ann", personName: "Ann" };
const rows = (...all: readonly Readonly<Record<string, string>>[]) =>
  new Map(all.map((cells, i) => [`r${i}`, new Map(Object.entries({ [RANK]: `a${i}`, ...cells }))] as const));
const TEST = { scope: "machine", kind: "visual", purpose: "other", order: "10" };
const BOOK: CellTables = new Map([...SMALL, ["tests", rows({ ...TEST, id: "t.first" })]]);
const encoder = new TextEncoder();

describe("what a unit is judged by", () => {
  let server: TestServer;
  let shelf: Shelf;
  let asked = 0;
  beforeAll(async () => {
    server = await TestServer.start({ small: BOOK });
    shelf = new Shelf(server.store);
  }, 60_000);
  afterAll(() => server.close());

  const change = async (
    book: string,
    table: string,
    row: string,
    column: string,
    from: string,
    to: string,
  ) => {
    const changes = [{ table, row, column, from, to }];
    const set = { id: `change-${++asked}`, kind: "edit", note: "", changes } as const;
    expect(await server.store.books.change(book, set, ACTOR)).toHaveProperty("done");
  };
  const release = async (name: string) => {
    const [book, shop] = [await shelf.now("small"), await shelf.now(SHOP_ID)];
    const outcome = await server.store.releases.add(
      {
        ...{ book: "small", name, request: `release-${name}`, changeNo: book.info.changeNo, note: "" },
        ...{ program: "1", findings: { error: 0, warning: 0, note: 0 }, accepted: [] },
        items: [
          { kind: "tables", id: "book", about: {}, body: encoder.encode(cellsText(book.tables)) },
          { kind: "shop", id: "shop", about: {}, body: encoder.encode(cellsText(keptShop(shop.tables))) },
        ],
      },
      ACTOR,
    );
    expect(outcome).toHaveProperty("done");
  };
  const begin = async (revision: string): Promise<string> => {
    const unit = { what: "machine", type: "small", book: "small", revision, options: [] } as const;
    const [made] = await server.store.records.begin([unit], "ann");
    const { body } = made?.fact ?? {};
    return body?.kind === "begun" ? body.unit : "";
  };

  it("is its release, with the shop that this keeps, whatever the shop became since", async () => {
    await change(SHOP_ID, "shop_settings", "r0", RANK, "", "a0");
    await change(SHOP_ID, "shop_settings", "r0", "id", "", "tie_min");
    await change(SHOP_ID, "shop_settings", "r0", "value", "", "0.25");
    await release("A");
    const built = await begin("A");
    const draft = await begin(`@${(await shelf.now("small")).info.changeNo}`);
    const facts = new GateFacts(server.store, shelf);
    const before = [await facts.of(built), await facts.of(draft)].map(({ given }) => given.lines[0]?.key);
    await change(SHOP_ID, "shop_settings", "r0", "value", "0.25", "0.5");
    await change("small", "devices", "1", "x_mm", "0", "5");
    const { given } = await facts.of(built);
    expect(given.lines[0]?.key).toBe(before[0]);
    expect((await facts.of(draft)).given.lines[0]?.key).not.toBe(before[1]);
    const [line] = (await facts.withTables(given, [before[0] ?? ""])).lines;
    expect(
      cellsOfJson(line?.shop ?? [])
        .get("shop_settings")
        ?.get("r0")
        ?.get("value"),
    ).toBe("0.25");
    expect(
      cellsOfJson(line?.tables ?? [])
        .get("devices")
        ?.get("1")
        ?.get("x_mm"),
    ).toBe("0");
  });

  it("has the tests of each revision, also of two that are of one change", async () => {
    await change(SHOP_ID, "shop_settings", "r0", "value", "0.5", "0.75");
    await release("B");
    await change(SHOP_ID, "shop_settings", "r0", "value", "0.75", "1");
    await release("C");
    await change("small", "tests", "r0", "id", "t.first", "t.other");
    await release("D");
    const facts = new GateFacts(server.store, shelf);
    const machine = await begin("D");
    const boards = [await begin("B"), await begin("C")];
    const tablet = new Tablet("tablet-1", "ann");
    const fitted = boards.map((unit) => tablet.write({ kind: "fitted", unit, into: machine, place: "top" }));
    await server.store.records.take(fitted, () => null);
    const { given } = await facts.of(machine);
    const names = given.past.map(({ revision, tables }) => [
      revision,
      cellsOfJson(tables).get("tests")?.get("r0")?.get("id"),
    ]);
    expect(names).toEqual([
      ["B", "t.first"],
      ["C", "t.first"],
    ]);
  });
});
