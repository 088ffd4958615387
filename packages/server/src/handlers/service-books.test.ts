import { tmpdir } from "node:os";
import {
  type ServiceBookJob,
  serviceBookGuideSchema,
  serviceBookJobSchema,
  serviceBookTextsSchema,
} from "@pinwright/contract";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { Shelf } from "../books/shelf.ts";
import { ServiceBooks } from "../service-book/service-books.ts";
import { putExampleDrivers } from "../testing/example-drivers.ts";
import { Tablet } from "../testing/tablet.ts";
import { TestServer, type Visitor } from "../testing/test-server.ts";
import { TaskRefused } from "../threads/lane.ts";
import type { Task } from "../threads/messages.ts";

const BOOK = "/api/books/light";

describe("service books", { timeout: 180_000 }, () => {
  let server: TestServer;
  let owner: Visitor;
  let lead: Visitor;
  let unit = "";

  const over = async (path: string): Promise<{ readonly state: string; readonly now: string }> => {
    for (;;) {
      const job = z.object({ state: z.string(), now: z.string() }).parse(await owner.get(path));
      if (job.state !== "waiting" && job.state !== "running") return job;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  };
  const make = async (of: {
    release?: string;
    unit?: string;
    language?: string;
  }): Promise<ServiceBookJob> => {
    const asked = await owner.post(`${BOOK}/service-books`, { language: "en", ...of });
    const { id } = serviceBookJobSchema.parse(asked);
    await over(`/api/service-books/${id}`);
    return serviceBookJobSchema.parse(await owner.get(`/api/service-books/${id}`));
  };
  const textOf = async ({ id }: ServiceBookJob): Promise<string> =>
    serviceBookTextsSchema
      .parse(await owner.get(`/api/service-books/${id}/texts`))
      .flat()
      .map(({ text }) => text)
      .join(" ");
  const pdfOf = async ({ id }: ServiceBookJob): Promise<Buffer> =>
    Buffer.from(await (await owner.send(`/api/service-books/${id}/pdf`)).arrayBuffer());

  beforeAll(async () => {
    server = await TestServer.start();
    owner = await server.owner();
    await owner.post("/api/books", { id: "light", label: "Light", from: "first-light" });
    await putExampleDrivers(owner);
    const job = z
      .object({ id: z.string() })
      .parse(await owner.post(`${BOOK}/releases`, { id: "service-book-A", name: "A", note: "" }));
    expect(await over(`/api/release-jobs/${job.id}`)).toMatchObject({ state: "done" });
    lead = await server.person(owner, "Lea", "lead");
    const [made] = z
      .array(z.object({ unit: z.string() }))
      .parse(
        await owner.post("/api/units", { book: "light", what: "machine", type: "first-light", count: 1 }),
      );
    unit = made?.unit ?? "";
    const tablet = new Tablet("bench-tablet", (await lead.look()).person?.id ?? "");
    const concession = {
      ...({ kind: "alternate", unit, part: "p.fuse-3a15", instead: "p.fuse-3a15-other" } as const),
      ...({ allowed: "concession", why: "late" } as const),
    };
    const sent = await lead.post("/api/facts", { facts: [tablet.write(concession)] });
    expect(sent).toMatchObject({ aside: [] });
  }, 180_000);
  afterAll(() => server.close());

  it("of a release are those that it holds, with pages, contents, links and texts", async () => {
    const job = await make({ release: "A" });
    expect(job).toMatchObject({ state: "done", revision: "A", isReleased: true, unit: null, now: "" });
    expect(job.pages).toBeGreaterThan(10);
    const guide = serviceBookGuideSchema.parse(await owner.get(`/api/service-books/${job.id}/guide`));
    expect(guide.pages.length).toBe(job.pages);
    expect(guide.outline.length).toBeGreaterThan(10);
    expect(guide.pages.flatMap(({ links }) => links).length).toBeGreaterThan(20);
    for (const { page } of guide.outline) expect(page).toBeLessThan(job.pages);
    const page = await owner.send(`/api/service-books/${job.id}/pages/1`);
    expect(await page.text()).toContain("<svg");
    expect((await pdfOf(job)).subarray(0, 5).toString()).toBe("%PDF-");
    const released = await owner.send(`${BOOK}/releases/A/sheets/machine.service-book.en`);
    expect(Buffer.from(await released.arrayBuffer())).toEqual(await pdfOf(job));
    // The same is not made twice.
    expect(await make({ release: "A" })).toEqual(job);
  });

  it("of a machine is of its revision, with what is different in it, and stays as it was first made", async () => {
    const job = await make({ unit });
    expect(job).toMatchObject({ state: "done", revision: "A", isReleased: true, unit });
    const text = await textOf(job);
    expect(text).toContain(unit);
    expect(text).toContain("late");
    // Another server on the same store takes what was kept, on another day, and composes nothing.
    const seen: Extract<Task, { kind: "service-book" }>[] = [];
    const books = new ServiceBooks({
      store: server.store,
      run: (task) => {
        seen.push(task);
        return Promise.reject(new TaskRefused("seen"));
      },
      folder: `${tmpdir()}/pinwright-none`,
      tell: () => undefined,
      log: () => undefined,
    });
    const asker = { store: server.store, shelf: new Shelf(server.store), address: "", creator: "" };
    const again = await books.make({ ...asker, today: "2031-01-01" }, "light", { language: "en", unit });
    while (books.get(again.id).state === "waiting") await new Promise((resolve) => setTimeout(resolve, 20));
    expect(seen).toMatchObject([{ given: null }]);
    expect(seen[0]?.kept?.body).toContain("late");
    expect(seen[0]?.kept?.frame).toContain("2026-03-31");
  });

  it("of the book as it is now are drafts, and others after a change; a machine's stays", async () => {
    const before = await make({});
    expect(before).toMatchObject({ state: "done", isReleased: false, revision: "@1" });
    const unitPdf = await pdfOf(await make({ unit }));
    const { tables } = z
      .object({ tables: z.record(z.string(), z.record(z.string(), z.record(z.string(), z.string()))) })
      .parse(await owner.get(`${BOOK}/rows`));
    const [row, cells] = Object.entries(tables.devices ?? {}).find(([, own]) => own.id === "sw.top") ?? [];
    const change = { table: "devices", row, column: "label", from: cells?.label ?? "", to: "Gull switch" };
    await owner.post(`${BOOK}/changes`, { id: "service-book-change", note: "", changes: [change] });
    const after = await make({});
    expect(after.revision).toBe("@2");
    expect(await textOf(after)).toContain("Gull switch");
    expect(await textOf(before)).not.toContain("Gull switch");
    expect(await pdfOf(await make({ unit }))).toEqual(unitPdf);
    expect(await textOf(await make({ release: "A", language: "zh" }))).not.toContain("Gull switch");
  });

  it("are refused where there is nothing that they could be of", async () => {
    const refusal = (body: object, book = BOOK) =>
      owner.refusal(`${book}/service-books`, { method: "POST", body: { language: "en", ...body } });
    expect(await refusal({ release: "Z" })).toMatchObject({ code: "not-found" });
    expect(await refusal({ unit: "nobody" })).toMatchObject({ code: "not-found" });
    expect(await refusal({}, "/api/books/shop")).toMatchObject({ code: "bad-request" });
    expect(await owner.refusal("/api/service-books/none")).toMatchObject({ code: "not-found" });
    const { id, pages } = await make({ release: "A" });
    for (const page of ["0", String(pages + 1), "..%2fbook", "1.svg"])
      expect(await owner.refusal(`/api/service-books/${id}/pages/${page}`)).toMatchObject({
        code: "not-found",
      });
  });
});
