import { ROLES, ROUTES, type Route } from "@pinwright/contract";
import type { Store } from "@pinwright/store";
import { type Postgres, startPostgres } from "@pinwright/store/testing";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { samplesOf } from "../testing/sample.ts";
import { SMALL, TestServer, type Visitor } from "../testing/test-server.ts";

const START_MS = 120_000;
const ACTOR = { personId: "ann", personName: "Ann" };
const SHEET = "hs.a.from-to.en";
const SERVICE_BOOK = { book: "small", release: "A", key: "usual" };
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Releases one of which is walked at; the other one shares contents with it. */
async function fill(store: Store): Promise<void> {
  const body = { kind: "body", id: SHEET, about: {}, body: bytes('{"pages":[]}') } as const;
  for (const [name, text] of [
    ["A", "frame of A"],
    ["B", "frame of B"],
  ] as const) {
    const frame = {
      kind: "frame",
      id: SHEET,
      about: { bodyHash: "a".repeat(64) },
      body: bytes(text),
    } as const;
    const outcome = await store.releases.add(
      {
        ...{ book: "small", name, request: `request-${name}`, changeNo: 1, note: "第一批", program: "1" },
        ...{ findings: { error: 0, warning: 0, note: 0 }, accepted: [] },
        items: [
          { kind: "tables", id: "book", about: {}, body: bytes("{}") },
          { kind: "shop", id: "shop", about: {}, body: bytes("{}") },
          { kind: "results", id: "findings", about: {}, body: bytes("[]") },
          { kind: "file", id: "fault-file.json", about: {}, body: bytes('{"a":1}') },
          body,
          frame,
        ],
      },
      ACTOR,
    );
    expect(outcome).toHaveProperty("done");
  }
  await store.serviceBooks.keep(SERVICE_BOOK, "{}", bytes("service book"));
}

/** Every byte of the releases, and what is told of them. */
async function everything(store: Store): Promise<unknown> {
  const found: unknown[] = [await store.releases.list("small")];
  for (const name of ["A", "B"]) {
    found.push(await store.releases.manifest("small", name));
    const items = await store.releases.items("small", name);
    for (const { kind, id } of "done" in items ? items.done : []) {
      const body = await store.releases.body("small", name, kind, id);
      found.push([name, kind, id, "done" in body ? Buffer.from(body.done).toString("hex") : body]);
    }
  }
  found.push(await store.releases.printed("small", "a".repeat(12)));
  const book = await store.serviceBooks.find(SERVICE_BOOK);
  found.push(book === null ? null : Buffer.from(book).toString("hex"));
  return found;
}

/** What parts of addresses may name. */
const PARTS: Readonly<Record<string, string>> = {
  ...{ book: "small", release: "A", sheet: SHEET, file: "fault-file.json", name: "findings", no: "1" },
};
/** Ends of addresses under that of a release. */
const ADDRESSES = ["", "/items", "/rows", `/sheets/${SHEET}`, "/results/findings", "/files/fault-file.json"];
/** Sent last of all: after them a visitor, or the book, is no longer there for the rest. */
const LAST: readonly string[] = ["changeBook", "changePerson", "signOut"];
const WRITING = Object.entries<Route>(ROUTES)
  .filter(([, route]) => route.method !== "get")
  .sort(([a], [b]) => LAST.indexOf(a) - LAST.indexOf(b));

describe.each(["sqlite", "postgres"] as const)("a release in %s", (kind) => {
  let postgres: Postgres | undefined;
  let server: TestServer;
  const visitors: Visitor[] = [];
  beforeAll(async () => {
    if (kind === "postgres") postgres = await startPostgres({ durable: false });
    const place =
      postgres === undefined ? null : { kind: "postgres" as const, url: await postgres.newPlace() };
    server = await TestServer.start({ small: SMALL }, place);
    await fill(server.store);
    const owner = await server.owner();
    visitors.push(owner);
    for (const role of ROLES.filter((one) => one !== "owner"))
      visitors.push(await server.person(owner, `one ${role}`, role));
  }, START_MS);
  afterAll(async () => {
    await server.close();
    await postgres?.stop();
  }, START_MS);

  it(
    "is changed by nothing that is asked of its own addresses",
    async () => {
      const before = await everything(server.store);
      for (const method of ["PUT", "PATCH", "POST", "DELETE"])
        for (const at of ADDRESSES)
          for (const visitor of visitors) {
            const response = await visitor.send(`/api/books/small/releases/A${at}`, { method, body: {} });
            expect(response.status, `${method} ${at}`).toBeGreaterThanOrEqual(400);
          }
      expect(await everything(server.store)).toEqual(before);
    },
    START_MS,
  );

  it(
    "is changed by no route, whoever asks, with bodies that the route takes and others",
    async () => {
      const before = await everything(server.store);
      const unsampled: string[] = [];
      for (const [name, route] of WRITING) {
        const path = route.path.replace(/:(\w+)/gu, (_, part: string) => PARTS[part] ?? "none");
        const own = route.body === undefined ? [] : samplesOf(route.body).slice(0, 2);
        if (route.body !== undefined && own.length === 0) unsampled.push(name);
        for (const visitor of visitors)
          for (const body of [...own, {}, { id: "walk-request-2", name: "A", changes: [], archived: true }])
            await visitor.send(path, { method: route.method.toUpperCase(), body });
      }
      expect(await everything(server.store)).toEqual(before);
      expect(await server.store.releases.verify()).toEqual([]);
      // Facts that somebody vouches for in person name what only their writer can know.
      expect(unsampled).toEqual(["recordInPerson"]);
    },
    START_MS,
  );
});
