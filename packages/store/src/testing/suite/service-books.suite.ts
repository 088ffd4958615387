import { afterEach, beforeEach, expect, it } from "vitest";
import { openStore } from "../../open.ts";
import type { Store } from "../../store.ts";
import { fill } from "../filled-store.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { ANN, testOptions } from "../options.ts";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Service books of single machines. */
export function serviceBooksSuite(fresh: FreshPlace): void {
  let store: Store;
  beforeEach(async () => {
    store = await openStore(await fresh(), testOptions());
    await fill(store);
    const info = await store.books.info("heron");
    const release = {
      ...{ book: "heron", name: "A", request: "request-service-book", note: "", program: "1", accepted: [] },
      ...{ changeNo: info?.changeNo ?? 0, findings: { error: 0, warning: 0, note: 0 }, items: [] },
    };
    expect(await store.releases.add(release, ANN)).toMatchObject({ done: { name: "A" } });
  });
  afterEach(() => store.close());

  it("are kept once: who comes second gets the first", async () => {
    const of = { book: "heron", release: "A", key: "k" };
    expect(await store.serviceBooks.find(of)).toBeNull();
    const both = await Promise.all([
      store.serviceBooks.keep(of, "{}", bytes("one")),
      store.serviceBooks.keep(of, "{}", bytes("two")),
    ]);
    const kept = await store.serviceBooks.find(of);
    expect(kept).not.toBeNull();
    for (const got of both) expect([...got]).toEqual([...(kept ?? [])]);
    expect(await store.serviceBooks.find({ ...of, key: "other" })).toBeNull();
    // A book of a release that there is not has no place.
    await expect(store.serviceBooks.keep({ ...of, release: "B" }, "{}", bytes("x"))).rejects.toThrow();
  });
}
