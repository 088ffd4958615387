import { afterEach, beforeEach, expect, it } from "vitest";
import { openStore } from "../../open.ts";
import type { NewPersonRow, SessionRow, Store } from "../../store.ts";
import { done } from "../cells.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { testOptions } from "../options.ts";

const LEE: NewPersonRow = { name: "Lee Ａda", role: "lead", passwordHash: "hash", codeHash: null };

/** Accounts, sessions, settings, mappings and audit. */
export function peopleSuite(fresh: FreshPlace): void {
  let store: Store;
  let now = "";
  beforeEach(async () => {
    now = "2026-03-31T09:00:00.000Z";
    store = await openStore(await fresh(), { ...testOptions(), now: () => now });
  });
  afterEach(() => store.close());

  const session = (hash: string, personId: string, expiresAt: string): SessionRow => ({
    hash,
    personId,
    token: `token of ${hash}`,
    createdAt: now,
    expiresAt,
    kind: "floor",
    from: "192.168.7.40",
  });

  it("finds a person by a name as people type it", async () => {
    const { people } = store;
    const lee = done(await people.add(LEE));
    expect(lee).toMatchObject({ name: "Lee Ａda", active: true, hasPassword: true, hasCode: false });
    for (const name of ["lee ada", " LEE ADA ", "Ｌｅｅ Ada"]) {
      expect(await people.byName(name)).toEqual({ ...lee, passwordHash: "hash", codeHash: null });
      expect(await people.add({ ...LEE, name })).toEqual({ refused: "taken" });
    }
    expect(await people.byName("leeada")).toBeNull();
    expect((await people.byId(lee.id))?.name).toBe("Lee Ａda");
    expect(await people.byId("nobody")).toBeNull();
  });

  it("changes a person, but not to the name of another", async () => {
    const { people } = store;
    const lee = done(await people.add(LEE));
    const mo = done(await people.add({ ...LEE, name: "Mo", codeHash: "code" }));
    expect(await people.change(lee.id, { name: "MO" })).toEqual({ refused: "taken" });
    expect(await people.change("nobody", { name: "x" })).toEqual({ refused: "not-found" });
    expect(done(await people.change(mo.id, { name: "mo", active: false, codeHash: null }))).toEqual({
      ...mo,
      name: "mo",
      active: false,
      hasCode: false,
    });
    expect(done(await people.change(mo.id, {}))).toMatchObject({ name: "mo", role: "lead" });
    expect((await people.list()).map(({ name }) => name)).toEqual(["Lee Ａda", "mo"]);
  });

  it("gives a name to one of many who ask for it at once", async () => {
    const { people } = store;
    const ids = [];
    for (const name of ["A", "B", "C"]) ids.push(done(await people.add({ ...LEE, name })).id);
    const asked = [
      ...ids.map((id) => people.change(id, { name: "Lee" })),
      people.add({ ...LEE, name: "LEE" }),
    ];
    expect((await Promise.all(asked)).filter((outcome) => "done" in outcome)).toHaveLength(1);
  });

  it("lets one person be the first, of many who try at once", async () => {
    const tries = ["A", "B", "C", "D"].map((name) => store.people.addFirst({ ...LEE, name }));
    const made = (await Promise.all(tries)).filter((outcome) => "done" in outcome);
    expect(made).toHaveLength(1);
    expect(await store.people.list()).toHaveLength(1);
  });

  it("keeps a session until it ends or is ended", async () => {
    const { people } = store;
    const lee = done(await people.add(LEE));
    const kept = session("h1", lee.id, "2026-03-31T10:00:00.000Z");
    await people.addSession(kept);
    await people.addSession(session("h2", lee.id, "2026-03-31T11:00:00.000Z"));
    expect(await people.session("h1")).toEqual(kept);
    now = "2026-03-31T10:00:00.000Z";
    expect(await people.session("h1")).toBeNull();
    await people.addSession(session("h3", lee.id, "2026-03-31T12:00:00.000Z"));
    now = "2026-03-31T09:00:00.000Z";
    expect(await people.session("h1"), "removed for good").toBeNull();
    expect((await people.sessionsOf(lee.id)).map(({ hash }) => hash)).toEqual(["h3", "h2"]);
    expect((await people.sessionsOf(lee.id))[0]).toMatchObject({ from: "192.168.7.40", kind: "floor" });
    await people.endSession("h2");
    expect(await people.session("h2")).toBeNull();
    await people.endSessionsOf(lee.id);
    expect(await people.session("h3")).toBeNull();
  });

  it("keeps settings and mappings, the last for each heading", async () => {
    const { settings } = store;
    expect(await settings.get("port")).toBeNull();
    await settings.set("port", "1");
    await settings.set("port", "2");
    expect(await settings.get("port")).toBe("2");
    const long = Array.from({ length: 256 }, (_, i) => `${i}`.padStart(200, "标"));
    const first = { table: "devices", header: ["Name", "X"], columns: ["id", ""] };
    const second = { table: "devices", header: long, columns: long.map(() => "x_mm") };
    for (const mapping of [first, second, { ...first, columns: ["id", "x_mm"] }]) {
      await settings.keepMapping(mapping);
    }
    const kept = await settings.mappings();
    expect(kept).toHaveLength(2);
    expect(kept).toContainEqual({ ...first, columns: ["id", "x_mm"] });
    expect(kept).toContainEqual(second);
  });

  it("lists the audit backwards, in the order of what was done at once", async () => {
    const entry = (action: string) => ({ personName: "Lee", action, detail: "why", from: "127.0.0.1" });
    await Promise.all(["a", "b", "c", "d"].map((action) => store.audit.add(entry(action))));
    const all = await store.audit.list(Number.MAX_SAFE_INTEGER, 10);
    expect(all.map(({ no }) => no)).toEqual([4, 3, 2, 1]);
    expect(await store.audit.list(3, 1)).toMatchObject([{ no: 2, at: now, ...entry(all[2]?.action ?? "") }]);
  });
}
