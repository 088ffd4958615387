import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { printStateSchema, releasedSheetSchema, releaseSchema, SHOP_ID } from "@pinwright/contract";
import type * as Sheets from "@pinwright/sheets";
import type { SheetDocument } from "@pinwright/sheets";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { z } from "zod";
import { Shelf } from "../books/shelf.ts";
import { putExampleDrivers } from "../testing/example-drivers.ts";
import { TestServer, type Visitor } from "../testing/test-server.ts";
import { makeRelease } from "../threads/make-release.ts";

/** Whether a later program composes, which draws and says something else on every sheet. */
const program = vi.hoisted(() => ({ isLater: false }));
const SAID_LATER = "said by a later program";

vi.mock("@pinwright/sheets", async (original) => {
  const sheets = await original<typeof Sheets>();
  const later = (document: SheetDocument): SheetDocument =>
    !program.isLater
      ? document
      : {
          ...document,
          bodyHash: [...document.bodyHash].reverse().join(""),
          pages: document.pages.map((page) => ({
            ...page,
            marks: [...page.marks, ...page.marks.slice(0, 1)],
          })),
          title: SAID_LATER,
        };
  return {
    ...sheets,
    // One kind is enough here, and quick.
    *composeSheets(...[line, options]: Parameters<typeof sheets.composeSheets>) {
      for (const made of sheets.composeSheets(line, options, { kinds: ["from-to"], harnessIds: [] }))
        yield { ...made, document: later(made.document) };
    },
    composeServiceBook: (...given: Parameters<typeof sheets.composeServiceBook>) =>
      later(sheets.composeServiceBook(...given)),
  };
});

describe("a release, when a later program composes otherwise", { timeout: 120_000 }, () => {
  let server: TestServer;
  let owner: Visitor;
  const folder = mkdtempSync(join(tmpdir(), "pinwright-later-"));
  beforeAll(async () => {
    server = await TestServer.start();
    owner = await server.owner();
    await owner.post("/api/books", { id: "light", label: "Light", from: "first-light" });
    await putExampleDrivers(owner);
  }, 120_000);
  afterAll(async () => {
    await server.close();
    rmSync(folder, { recursive: true });
  });

  /** Releases the book with whatever program composes now. */
  const release = async (name: string): Promise<void> => {
    const shelf = new Shelf(server.store);
    const [held, shop] = [await shelf.now("light"), await shelf.now(SHOP_ID)];
    const own = mkdtempSync(join(folder, name));
    const { items, findings, accepted } = await makeRelease(
      {
        kind: "release",
        ...{ folder: own, name, date: "2026-03-31", creator: "Ann", address: "" },
        tables: [...shelf.jsonOf(held.tables)],
        shop: [...shelf.jsonOf(shop.tables)],
        built: { units: [], defects: [] },
      },
      () => undefined,
    );
    const outcome = await server.store.releases.add(
      {
        ...{ book: "light", name, request: `release-${name}`, changeNo: held.info.changeNo, note: "" },
        ...{ program: program.isLater ? "2" : "1", findings, accepted },
        items: items.map(({ path, ...item }) => ({ ...item, body: readFileSync(join(own, path)) })),
      },
      { personId: "ann", personName: "Ann" },
    );
    expect(outcome).toHaveProperty("done");
  };
  const sheets = async (name: string) =>
    z.array(releasedSheetSchema).parse(await owner.get(`/api/books/light/releases/${name}/sheets`));
  /** Every sheet as it is sent: to be drawn, and as the picture of its first page. */
  const sent = async (name: string) => {
    const all = new Map<string, string>();
    for (const { id } of await sheets(name))
      for (const format of ["json", "svg"]) {
        const response = await owner.send(`/api/books/light/releases/${name}/sheets/${id}?format=${format}`);
        expect(response.ok).toBe(true);
        all.set(`${id} ${format}`, await response.text());
      }
    return all;
  };

  it("says byte for byte what it said, while a new one says what is composed now", async () => {
    await release("A");
    const before = await sent("A");
    expect(before.size).toBeGreaterThan(10);
    const [one] = await sheets("A");
    program.isLater = true;
    expect(await sent("A")).toEqual(before);

    await release("B");
    expect(await sent("A")).toEqual(before);
    const after = await sent("B");
    expect([...after.keys()]).toEqual([...before.keys()]);
    for (const [id, text] of after) {
      expect(text, id).not.toBe(before.get(id));
      if (id.endsWith("json")) expect(text, id).toContain(SAID_LATER);
    }
    expect([...before.values()].join("")).not.toContain(SAID_LATER);
    for (const [name, program] of [
      ["A", "1"],
      ["B", "2"],
    ])
      expect(releaseSchema.parse(await owner.get(`/api/books/light/releases/${name}`)).program).toBe(program);
    const print = `/api/books/light/print/${one?.id}/${one?.bodyHash.slice(0, 12)}`;
    expect(printStateSchema.parse(await owner.get(print))).toMatchObject({
      is: "superseded",
      releases: ["A"],
    });
    expect(await server.store.releases.verify()).toEqual([]);
  });
});
