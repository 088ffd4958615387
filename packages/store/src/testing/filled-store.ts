import { RANK } from "@pinwright/book";
import type { Store } from "../store.ts";
import { cell, done, edit, tablesOf } from "./cells.ts";
import { TestStream } from "./facts.ts";
import { ANN, BEN } from "./options.ts";

/** Names of the settings that `fill` sets. */
export const FILLED_SETTINGS = ["port", "nothing"];

/** Puts something of every kind into a store. */
export async function fill(store: Store): Promise<void> {
  const { books, files, people, records, settings, audit } = store;
  const start = tablesOf({
    machine: { machine: { [RANK]: "a0", label: '"Heron"', label_zh: '"苍鹭"' } },
    devices: {
      r1: { [RANK]: "a0", id: "sw.left", note: 'a\u2028b "c"\n\td' },
      r2: { [RANK]: "a1", id: "sw.right" },
    },
    outlines: { "lip.svg": { [RANK]: "a0", text: "<svg>𝄞</svg>" } },
  });
  done(await books.add({ id: "heron", kind: "machine", tables: start, note: "begun" }, ANN));
  done(await books.add({ id: "shop", kind: "shop", tables: new Map(), note: "" }, ANN));
  done(await books.add({ id: "old", kind: "machine", tables: start, note: "" }, BEN));
  done(await books.setArchived("old", true));
  const rename = edit("request-1", cell("devices", "r1", "id", "sw.left", "sw.a"));
  done(await books.change("heron", rename, ANN));
  const gone = edit(
    "request-2",
    cell("devices", "r2", "id", "sw.right", ""),
    cell("devices", "r2", RANK, "a1", ""),
  );
  done(await books.change("heron", gone, BEN));
  done(await books.addSnapshot("heron", "as ordered", BEN));
  done(await books.undo("heron", "request-3", ANN));
  done(await books.redo("heron", "request-4", ANN));
  done(await books.undo("heron", "request-5", BEN));
  done(await books.addSnapshot("heron", "后来", ANN));
  const replaced = tablesOf({ devices: { r9: { [RANK]: "a9" } } });
  done(await books.replace("old", replaced, { id: "request-6", kind: "import", note: "old.zip" }, ANN));
  const post = { name: "post-a.step", bytes: Buffer.from("ISO-10303-21;\n") };
  const bracket = { name: "bracket-b.pdf", bytes: Buffer.from([0, 255, 10, 13, 34]) };
  done(await files.put("heron", [post, bracket], ANN));
  done(await files.put("heron", [{ ...post, bytes: Buffer.from("ISO-10303-21;\n\n") }], BEN));
  done(await files.put("old", [bracket], BEN));
  done(await files.remove("old", bracket.name));
  done(
    await store.releases.add(
      {
        ...{ book: "heron", name: "P1", request: "request-7", note: "试制", program: "0.1.0" },
        changeNo: (await books.info("heron"))?.changeNo ?? 0,
        findings: { error: 0, warning: 1, note: 0 },
        accepted: [
          { rule: "lane-overfull", severity: "warning", subjects: ["ln.1"], by: "Ann", reason: "tried" },
        ],
        items: [
          { kind: "tables", id: "book", about: {}, body: Buffer.from('{"devices":{}}') },
          {
            kind: "frame",
            id: "hs.a.from-to.zh",
            about: { bodyHash: "b".repeat(64) },
            body: Buffer.from("标题"),
          },
        ],
      },
      ANN,
    ),
  );
  const usual = { book: "heron", release: "P1", key: "usual" };
  await store.serviceBooks.keep(usual, "{}", Buffer.from("维修手册"));
  const ann = done(
    await people.addFirst({ name: "Ann", role: "owner", passwordHash: "hash of Ann's", codeHash: null }),
  );
  const ben = done(
    await people.add({ name: "Ｂen", role: "builder", passwordHash: null, codeHash: "hash of Ben's" }),
  );
  done(await people.change(ben.id, { active: false }));
  await people.addSession({
    hash: "session",
    personId: ann.id,
    token: "token",
    createdAt: "2026-03-31T09:00:00.000Z",
    expiresAt: "2099-03-31T09:00:00.000Z",
    kind: "office",
    from: "127.0.0.1",
  });
  await settings.set("port", "8443");
  await settings.keepMapping({ table: "devices", header: ["Name", "X"], columns: ["id", "x_mm"] });
  for (const action of ["set-up", "sign-in"]) {
    await audit.add({ personName: "Ann", action, detail: "", from: "127.0.0.1" });
  }
  const unit = { what: "board", type: "bt.driver", book: "heron", revision: "A", options: [] } as const;
  await records.begin([unit], ann.id);
  const tablet = new TestStream("tablet-1");
  await records.take(
    [
      tablet.write({ kind: "lot-used", unit: "b-000001", part: "ic.1", lot: "批 7" }),
      tablet.write({ kind: "reading", unit: "b-000001", test: "t.current", value: 50.25, good: true }),
      tablet.write({ kind: "fitted", unit: "b-000001", into: "m-000001", place: "brd.driver" }),
    ],
    () => null,
  );
}
