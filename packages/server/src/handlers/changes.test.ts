import { bookRowsSchema, changeSetSchema, eventSchema, type ServerEvent } from "@pinwright/contract";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { TestServer, type Visitor } from "../testing/test-server.ts";

let ids = 0;
const cell = (row: string, column: string, from: string, to: string, table = "devices") => ({
  id: `request-${++ids}`,
  changes: [{ table, row, column, from, to }],
});

/** Reads events from a stream as they come. */
class Listening {
  readonly #reader: ReadableStreamDefaultReader<Uint8Array>;
  lastId = "";
  #text = "";

  constructor(response: Response) {
    if (response.body === null) throw new Error("A stream of events was expected.");
    this.#reader = response.body.getReader();
  }

  /** The next event; null: the stream ended. */
  async next(): Promise<ServerEvent | null> {
    for (;;) {
      const end = this.#text.indexOf("\n\n");
      if (end < 0) {
        const { value, done } = await this.#reader.read();
        if (done) return null;
        this.#text += new TextDecoder().decode(value);
        continue;
      }
      const lines = this.#text.slice(0, end).split("\n");
      this.#text = this.#text.slice(end + 2);
      this.lastId = lines.find((line) => line.startsWith("id: "))?.slice(4) ?? this.lastId;
      const data = lines.find((line) => line.startsWith("data: "));
      if (data !== undefined) return eventSchema.parse(JSON.parse(data.slice(6)));
    }
  }

  stop(): Promise<void> {
    return this.#reader.cancel();
  }
}

describe("changes", () => {
  let server: TestServer;
  let owner: Visitor;
  beforeEach(async () => {
    server = await TestServer.start();
    owner = await server.owner();
  });
  afterEach(() => server.close());

  const rows = async (visitor: Visitor) => bookRowsSchema.parse(await visitor.get("/api/books/small/rows"));
  const send = (visitor: Visitor, body: unknown) => visitor.post("/api/books/small/changes", body);

  it("are made once however often they are sent, and are in the rows at once", async () => {
    const change = cell("1", "x_mm", "0", "12.5");
    expect(await send(owner, change)).toEqual({ no: 2, repeated: false });
    expect(await send(owner, change)).toEqual({ no: 2, repeated: true });
    const { book, tables } = await rows(owner);
    expect([book.changeNo, tables.devices?.["1"]?.x_mm]).toEqual([2, "12.5"]);
    const response = await owner.send("/api/books/small/rows");
    const tag = response.headers.get("etag") ?? "";
    await response.text();
    expect((await owner.send("/api/books/small/rows", { headers: { "if-none-match": tag } })).status).toBe(
      304,
    );
    await send(owner, cell("1", "x_mm", "12.5", "13"));
    expect((await owner.send("/api/books/small/rows", { headers: { "if-none-match": tag } })).status).toBe(
      200,
    );
  });

  it("take drawings only under names that files can have, for others would be missing in an export", async () => {
    const drawing = (row: string) => cell(row, "text", "", "<svg/>", "outlines");
    for (const name of ["a/b.svg", "no-ending", ".hidden.svg", "deck.pdf", "../deck.dxf"]) {
      const problem = await owner.refusal("/api/books/small/changes", {
        method: "POST",
        body: drawing(name),
      });
      expect(problem).toMatchObject({ status: 400, code: "bad-request" });
      expect(problem.message).toContain(`“${name}”`);
      expect(problem.message).toContain(".dxf or .svg");
    }
    const own = { table: "outlines", row: "Deck 2.svg", from: "" };
    const changes = [
      { ...own, column: "#", to: "a0" },
      { ...own, column: "text", to: "<svg/>" },
    ];
    expect(await send(owner, { id: "drawn-outline", changes })).toEqual({ no: 2, repeated: false });
  });

  it("of the shop's tables are refused in a machine's book, and of a machine's in the shop", async () => {
    for (const [book, table] of [
      ["small", "runs"],
      ["shop", "devices"],
      ["shop", "outlines"],
    ] as const) {
      const body = cell("1", "#", "", "a0", table);
      const problem = await owner.refusal(`/api/books/${book}/changes`, { method: "POST", body });
      expect(problem).toMatchObject({ status: 400, code: "bad-request" });
      expect(problem.message).toContain(`“${table}” is not in “${book}”`);
    }
  });

  it("of one cell by two people give one a conflict that says who was first, and change nothing of theirs", async () => {
    const dan = await server.person(owner, "Dan", "designer");
    await send(owner, cell("1", "x_mm", "0", "1"));
    const late = {
      id: "late-late",
      changes: [
        { table: "devices", row: "2", column: "x_mm", from: "10", to: "11" },
        { table: "devices", row: "1", column: "x_mm", from: "0", to: "2" },
      ],
    };
    const problem = await dan.refusal("/api/books/small/changes", { method: "POST", body: late });
    expect(problem).toMatchObject({
      status: 409,
      code: "conflict",
      conflicts: [{ row: "1", from: "0", to: "2", found: "1", by: { personName: "Olga", no: 2 } }],
    });
    expect((await rows(dan)).tables.devices?.["2"]?.x_mm).toBe("10");
  });

  it("are undone and redone by whoever made them", async () => {
    const dan = await server.person(owner, "Dan", "designer");
    await send(owner, cell("1", "x_mm", "0", "1"));
    await send(dan, cell("2", "x_mm", "10", "11"));
    const undone = changeSetSchema.parse(await owner.post("/api/books/small/undo", { id: "undo-0001" }));
    expect(undone).toMatchObject({ no: 4, kind: "undo", reverses: 2, personName: "Olga" });
    const { tables } = await rows(owner);
    expect([tables.devices?.["1"]?.x_mm, tables.devices?.["2"]?.x_mm]).toEqual(["0", "11"]);
    const nothing = { method: "POST", body: { id: "undo-0002" } };
    expect(await owner.refusal("/api/books/small/undo", nothing)).toMatchObject({ code: "nothing-to-undo" });
    await owner.post("/api/books/small/redo", { id: "redo-0001" });
    expect((await rows(owner)).tables.devices?.["1"]?.x_mm).toBe("1");
    expect(await owner.get("/api/books/small/history?limit=2")).toMatchObject([{ no: 5 }, { no: 4 }]);
    expect(await owner.get("/api/books/small/changes?since=3")).toMatchObject([{ no: 4 }, { no: 5 }]);
    expect(await owner.get("/api/books/small/history/2")).toMatchObject({ no: 2, undoneBy: 4 });
  });

  it("of a lead are of choices only, undo included", async () => {
    const ann = await server.person(owner, "Ann", "designer");
    await send(ann, cell("1", "x_mm", "0", "1"));
    const id = (await server.store.people.byName("Ann"))?.id ?? "";
    await owner.post(`/api/people/${id}`, { role: "lead" }, "PATCH");
    await ann.signIn("Ann", "correct horse battery");
    const wrong = { method: "POST", body: cell("2", "x_mm", "10", "1") };
    expect(await ann.refusal("/api/books/small/changes", wrong)).toMatchObject({ code: "not-allowed" });
    const undo = { method: "POST", body: { id: "undo-0003" } };
    expect(await ann.refusal("/api/books/small/undo", undo)).toMatchObject({ code: "not-allowed" });
    await send(ann, cell("1", "#", "", "a0", "choices"));
    await ann.post("/api/books/small/undo", { id: "undo-0004" });
    await ann.post("/api/books/small/redo", { id: "redo-0004" });
    expect((await rows(ann)).tables.choices?.["1"]).toEqual({ "#": "a0" });
  });

  it("are pushed to every open browser; who comes back gets what was missed", async () => {
    const vera = await server.person(owner, "Vera", "viewer");
    const first = new Listening(await vera.send("/api/events"));
    await send(owner, cell("1", "x_mm", "0", "1"));
    expect(await first.next()).toMatchObject({
      type: "change",
      book: "small",
      no: 2,
      set: { personName: "Olga" },
    });
    const { lastId } = first;
    await first.stop();
    await send(owner, cell("1", "x_mm", "1", "2"));
    await send(owner, cell("1", "x_mm", "2", "3"));
    const again = new Listening(await vera.send("/api/events", { headers: { "last-event-id": lastId } }));
    expect(await again.next()).toMatchObject({ no: 3 });
    expect(await again.next()).toMatchObject({ no: 4 });
    const id = (await server.store.people.byName("Vera"))?.id ?? "";
    await owner.post(`/api/people/${id}`, { active: false }, "PATCH");
    expect(await again.next()).toEqual({ type: "session" });
    expect(await again.next()).toBeNull();
  });

  it("of many cells are pushed without them", async () => {
    const stream = new Listening(await owner.send("/api/events"));
    const changes = Array.from({ length: 2_001 }, (_, i) => ({
      table: "devices",
      row: "1",
      column: `c${i}`,
      from: "",
      to: "1",
    }));
    await send(owner, { id: "many-cells", changes });
    expect(await stream.next()).toEqual({ type: "change", book: "small", no: 2, set: null });
    await stream.stop();
  });

  it("that wait too long for a slow reader end its stream, and cost nobody memory", async () => {
    const response = await owner.send("/api/events");
    const text = "x".repeat(9_000);
    for (let i = 0; i < 600; i++) {
      const [from, to] = [`${text}${i - 1}`, `${text}${i}`];
      await send(owner, cell("1", "label", i === 0 ? "" : from, to));
    }
    const body = await response.text();
    expect(body.length).toBeGreaterThan(3 * 1024 * 1024);
    expect(body.length).toBeLessThan(5 * 1024 * 1024);
  });

  it("with script in them are kept and given back as text, never as a page", async () => {
    const script = "</script><script>alert(1)</script>";
    await send(owner, cell("1", "label", "", script));
    const response = await owner.send("/api/books/small/rows");
    expect(response.headers.get("content-type")).toBe("application/json; charset=utf-8");
    expect(response.headers.get("x-content-type-options")).toBe("nosniff");
    expect(bookRowsSchema.parse(await response.json()).tables.devices?.["1"]?.label).toBe(script);
  });
});
