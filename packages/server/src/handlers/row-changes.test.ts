import type { ChangeSet } from "@pinwright/contract";
import { afterAll, beforeAll, expect, it } from "vitest";
import { TestServer, type Visitor } from "../testing/test-server.ts";

let server: TestServer;
let owner: Visitor;
let rows: Readonly<Record<string, Readonly<Record<string, string>>>>;

beforeAll(async () => {
  server = await TestServer.start();
  owner = await server.owner();
  const book = (await owner.get("/api/books/small/rows")) as {
    tables: Readonly<Record<string, typeof rows>>;
  };
  rows = book.tables.devices ?? {};
}, 60_000);
afterAll(() => server.close());

it("tells what was changed in some rows, the last first, and nothing of others", async () => {
  const [one = "", other = ""] = Object.keys(rows);
  const change = (id: string, row: string, to: string) =>
    owner.post("/api/books/small/changes", {
      ...{ id, note: `to ${to}` },
      changes: [{ table: "devices", row, column: "label", from: rows[row]?.label ?? "", to }],
    });
  await change("request-1", one, "First");
  await change("request-2", other, "Second");
  const found = (await owner.get(`/api/books/small/row-changes?rows=devices:${one}`)) as ChangeSet[];
  expect(found[0]).toMatchObject({
    note: "to First",
    changes: [{ table: "devices", row: one, column: "label", to: "First" }],
  });
  expect(found.flatMap(({ changes }) => changes).every(({ row }) => row === one)).toBe(true);
  // The first set is the one that brought the book.
  expect(found.at(-1)?.no).toBe(1);
  const both = (await owner.get(
    `/api/books/small/row-changes?rows=devices:${one},devices:${other}`,
  )) as ChangeSet[];
  expect(both.slice(0, 2).map(({ note }) => note)).toEqual(["to Second", "to First"]);
  expect(await owner.get("/api/books/small/row-changes?rows=devices:nobody")).toEqual([]);
});
