import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { RANK } from "@pinwright/book";
import {
  printStateSchema,
  type Release,
  type ReleaseJob,
  releasedSheetSchema,
  releaseItemSchema,
  releaseJobSchema,
  releaseSchema,
} from "@pinwright/contract";
import { unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { putExampleDrivers } from "../testing/example-drivers.ts";
import { TestServer, type Visitor } from "../testing/test-server.ts";

describe("releases", { timeout: 120_000 }, () => {
  let server: TestServer;
  let owner: Visitor;
  beforeAll(async () => {
    server = await TestServer.start();
    owner = await server.owner();
    await owner.post("/api/books", { id: "light", label: "Light", from: "first-light" });
    await putExampleDrivers(owner);
  }, 120_000);
  afterAll(() => server.close());

  const BOOK = "/api/books/light";
  const over = async (job: ReleaseJob): Promise<ReleaseJob> => {
    for (;;) {
      const now = releaseJobSchema.parse(await owner.get(`/api/release-jobs/${job.id}`));
      if (now.state !== "waiting" && now.state !== "running") return now;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  };
  let asked = 0;
  const release = async (name: string, note = ""): Promise<ReleaseJob> => {
    const body = { id: `release-${++asked}`.padEnd(12, "0"), name, note };
    return over(releaseJobSchema.parse(await owner.post(`${BOOK}/releases`, body)));
  };
  const rowsSchema = z.object({
    tables: z.record(z.string(), z.record(z.string(), z.record(z.string(), z.string()))),
  });
  const change = (book: string, changes: readonly object[]) =>
    owner.post(`/api/books/${book}/changes`, { id: `put-${++asked}`.padEnd(12, "0"), note: "", changes });
  const put = async (
    table: string,
    id: string,
    column: string,
    to: string,
    book = "light",
  ): Promise<void> => {
    const { tables } = rowsSchema.parse(await owner.get(`/api/books/${book}/rows`));
    const [row, cells] = Object.entries(tables[table] ?? {}).find(([, own]) => own.id === id) ?? [];
    await change(book, [{ table, row, column, from: cells?.[column] ?? "", to }]);
  };
  const add = (book: string, table: string, cells: Readonly<Record<string, string>>) =>
    change(
      book,
      Object.entries({ [RANK]: "z", ...cells }).map(([column, to]) => ({
        ...{ table, row: `row-${asked}`, column, from: "", to },
      })),
    );
  const sheets = async (name: string) =>
    z.array(releasedSheetSchema).parse(await owner.get(`${BOOK}/releases/${name}/sheets`));
  const print = async (sheet: string, hash: string) =>
    printStateSchema.parse(await owner.get(`${BOOK}/print/${sheet}/${hash.slice(0, 12)}`));

  it("hold the book, its findings and every sheet, and say who released it and what was accepted", async () => {
    const job = await release("A", "For the first five");
    expect(job).toMatchObject({ state: "done", now: "", name: "A" });
    const made = releaseSchema.parse(await owner.get(`${BOOK}/releases/A`));
    expect(made).toMatchObject({ book: "light", no: 1, changeNo: 1, note: "For the first five" });
    expect(made.findings.error).toBe(0);
    const all = await sheets("A");
    expect(new Set(all.map(({ language }) => language))).toEqual(new Set(["en", "zh"]));
    expect(all.filter(({ language }) => language === "en").length).toBeGreaterThan(30);
    const rows = await owner.get(`${BOOK}/releases/A/rows`);
    expect(rows).toEqual(z.object({ tables: z.unknown() }).parse(await owner.get(`${BOOK}/rows`)).tables);
    expect(await owner.get(`${BOOK}/releases/A/results/findings`)).toBeInstanceOf(Array);
    const pdf = await owner.send(`${BOOK}/releases/A/sheets/${all[0]?.id ?? ""}`);
    expect(new TextDecoder().decode((await pdf.arrayBuffer()).slice(0, 5))).toBe("%PDF-");
  });

  it("are refused when nothing was changed, and under a name that stands for another", async () => {
    const body = (name: string) => ({ method: "POST", body: { id: `refused-${name}00`, name, note: "" } });
    expect(await owner.refusal(`${BOOK}/releases`, body("B"))).toMatchObject({ code: "conflict" });
    expect(await owner.refusal(`${BOOK}/releases`, body("A"))).toMatchObject({ code: "taken" });
    expect(await owner.refusal(`${BOOK}/releases`, body("a b"))).toMatchObject({ code: "bad-request" });
    expect(await owner.refusal("/api/books/shop/releases", body("A"))).toMatchObject({ code: "bad-request" });
  });

  it("are refused when all is as it was again, and when only money was changed", async () => {
    const body = { id: "undone-000000", name: "B", note: "" };
    await put("devices", "sw.top", "x_mm", "212");
    await put("devices", "sw.top", "x_mm", "200");
    await add("light", "choices", { kind: "symbol", subject: "nobody", value: "1" });
    const { tables } = rowsSchema.parse(await owner.get(`${BOOK}/rows`));
    const [row, cells = {}] =
      Object.entries(tables.choices ?? {}).find(([, own]) => own.subject === "nobody") ?? [];
    await change(
      "light",
      Object.entries(cells).map(([column, from]) => ({ table: "choices", row, column, from, to: "" })),
    );
    await add("shop", "suppliers", { id: "sp.new", label: "New", label_zh: "新" });
    await add("shop", "shop_settings", { id: "labour_rate", value: "31" });
    expect(await owner.refusal(`${BOOK}/releases`, { method: "POST", body })).toMatchObject({
      ...{ code: "conflict", message: "Nothing was changed since release A: it is the book as it is now." },
    });
  });

  it("tell of a print whether it holds: sheets that say the same hold on", async () => {
    const before = await sheets("A");
    await put("devices", "sw.top", "x_mm", "212");
    const [some] = before;
    expect(await print(some?.id ?? "", some?.bodyHash ?? "")).toMatchObject({
      is: "current",
      changesSince: 5,
    });
    const job = await release("B");
    expect(job.state).toBe("done");
    const after = new Map((await sheets("B")).map((sheet) => [sheet.id, sheet]));
    const same = before.filter(({ id, bodyHash }) => after.get(id)?.bodyHash === bodyHash);
    const other = before.filter(({ id, bodyHash }) => after.get(id)?.bodyHash !== bodyHash);
    expect(same.length).toBeGreaterThan(10);
    expect(other.length).toBeGreaterThan(3);
    const [kept, gone] = [same[0], other[0]];
    expect(await print(kept?.id ?? "", kept?.bodyHash ?? "")).toMatchObject({
      is: "current",
      releases: ["B", "A"],
    });
    expect(await print(gone?.id ?? "", gone?.bodyHash ?? "")).toMatchObject({
      is: "superseded",
      releases: ["A"],
      newest: { name: "B" },
      now: { id: gone?.id },
    });
    expect(await print(gone?.id ?? "", "0".repeat(64))).toMatchObject({ is: "draft", releases: [] });
    for (const sheet of ["hs.field.from-to.both", "hs.field.pinboard-a4.en", "machine.screw-map-mount.zh"])
      expect(await print(sheet, "0".repeat(64)), sheet).toMatchObject({ is: "draft" });
    // No kind, no language, no harness, and papers that no release holds.
    for (const sheet of [
      "poem",
      "machine.poem.en",
      "hs.field.from-to",
      "hs.gone.from-to.en",
      "run.r1.kits.en",
    ])
      expect(await print(sheet, "0".repeat(64)), sheet).toMatchObject({ is: "unknown", releases: [] });
  });

  it("keep once what two of them hold, and never a price", async () => {
    const items = async (name: string) =>
      z.array(releaseItemSchema).parse(await owner.get(`${BOOK}/releases/${name}/items`));
    const [a, b] = [await items("A"), await items("B")];
    const bodies = (list: typeof a) =>
      new Set(list.flatMap((item) => (item.kind === "body" ? [item.hash] : [])));
    const shared = [...bodies(b)].filter((hash) => bodies(a).has(hash));
    expect(shared.length).toBeGreaterThan(bodies(b).size / 3);
    const zip = unzipSync(
      new Uint8Array(await (await owner.send(`${BOOK}/releases/A/export`)).arrayBuffer()),
    );
    const shop = new TextDecoder().decode(zip["shop/shop.json"]);
    expect(shop).toContain("Long bit PZ1");
    expect(shop).not.toMatch(/price|supplier|order/iu);
  });

  it("are units' revision, unless the lead names another", async () => {
    const make = async (more: object) =>
      z.array(z.object({ revision: z.string() })).parse(
        await owner.post("/api/units", {
          book: "light",
          what: "machine",
          type: "light",
          count: 1,
          ...more,
        }),
      );
    expect(await make({})).toMatchObject([{ revision: "B" }]);
    expect(await make({ revision: "A" })).toMatchObject([{ revision: "A" }]);
    const wrong = { book: "light", what: "machine", type: "light", count: 1, revision: "Z" };
    expect(await owner.refusal("/api/units", { method: "POST", body: wrong })).toMatchObject({
      code: "not-found",
    });
  });

  it("are made anew when tools of the shop are others, and then count what was built in the odds of faults", async () => {
    const odds = async (path: string) =>
      z.object({ odds: z.array(z.number()) }).parse(await owner.get(path)).odds;
    await put("drivers", "drv.pz1", "label", "Longer bit PZ1", "shop");
    expect(await release("C")).toMatchObject({ state: "done" });
    const shop = async (name: string) =>
      (await owner.send(`${BOOK}/releases/${name}/export`)).arrayBuffer().then((zip) => {
        const files = unzipSync(new Uint8Array(zip));
        return new TextDecoder().decode(files["shop/shop.json"]);
      });
    expect([(await shop("B")).includes("Longer bit"), (await shop("C")).includes("Longer bit")]).toEqual([
      false,
      true,
    ]);
    const now = await odds(`${BOOK}/fault-file`);
    expect(await odds(`${BOOK}/releases/C/files/fault-file.json`)).toEqual(now);
    expect(await odds(`${BOOK}/releases/B/files/fault-file.json`)).not.toEqual(now);
  });

  it("stand back while an error is open that nobody accepted, name it, and say who accepted it and why", async () => {
    await put("devices", "sw.top", "x_mm", "-50");
    const refused = await release("D");
    expect(refused).toMatchObject({ state: "failed", release: null });
    expect(refused.now).toMatch(/^1 error stands in the way: off-panel \(sw\.top, pf\)\. /u);
    await add("light", "choices", {
      ...{ kind: "accept", subject: "off-panel|sw.top|pf", basis: "severity<=error" },
      ...{ by: "Olga", reason: "It hangs over the edge on purpose." },
    });
    expect(await release("D")).toMatchObject({ state: "done" });
    const made = releaseSchema.parse(await owner.get(`${BOOK}/releases/D`));
    expect(made.findings.error).toBe(0);
    expect(made.accepted).toContainEqual({
      ...{ rule: "off-panel", severity: "error", subjects: ["sw.top", "pf"] },
      ...{ by: "Olga", reason: "It hangs over the edge on purpose." },
    });
  });

  it("can be checked with nothing but sha256sum", async () => {
    const folder = mkdtempSync(join(tmpdir(), "pinwright-release-"));
    try {
      const { hash } = releaseSchema.parse(await owner.get(`${BOOK}/releases/A`));
      writeFileSync(
        join(folder, "a.zip"),
        new Uint8Array(await (await owner.send(`${BOOK}/releases/A/export`)).arrayBuffer()),
      );
      execFileSync("python3", ["-m", "zipfile", "-e", "a.zip", "."], { cwd: folder });
      const out = execFileSync("sha256sum", ["-c", "--quiet", "SHA256SUMS"], {
        cwd: folder,
        encoding: "utf8",
      });
      expect(out).toBe("");
      const sum = execFileSync("sha256sum", ["manifest.json"], { cwd: folder, encoding: "utf8" });
      expect(sum.split(" ")[0]).toBe(hash);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it("name what stands in the way, and stop when they are told to", async () => {
    await put("devices", "sw.top", "x_mm", "far");
    const faulty = await release("E");
    expect(faulty).toMatchObject({ state: "failed", release: null });
    expect(faulty.now).toMatch(/fault.*devices.*x_mm/su);
    await put("devices", "sw.top", "x_mm", "212");
    const begun = releaseJobSchema.parse(
      await owner.post(`${BOOK}/releases`, { id: "release-stop", name: "E", note: "" }),
    );
    await owner.get(`/api/release-jobs/${begun.id}`, { method: "DELETE" });
    expect((await over(begun)).state).toBe("cancelled");
    const names = z
      .array(releaseSchema)
      .parse(await owner.get(`${BOOK}/releases`))
      .map((one: Release) => one.name);
    expect(names).toEqual(["D", "C", "B", "A"]);
  });

  it("answer with their own bytes only", async () => {
    expect(await owner.get("/api/releases-check")).toEqual([]);
    const [first] = await sheets("A");
    const items = z.array(releaseItemSchema).parse(await owner.get(`${BOOK}/releases/A/items`));
    const tables = items.find(({ kind }) => kind === "tables");
    const text = await (await owner.send(`${BOOK}/releases/A/rows`)).text();
    expect(createHash("sha256").update(text).digest("hex")).toBe(tables?.hash);
    const viewer = await server.person(owner, "Vera", "viewer");
    const made = { method: "POST", body: { id: "by-a-viewer", name: "V", note: "" } };
    expect(await viewer.refusal(`${BOOK}/releases`, made)).toMatchObject({ code: "not-allowed" });
    expect((await viewer.send(`${BOOK}/releases/A/sheets/${first?.id ?? ""}?format=json`)).ok).toBe(true);
  });
});
