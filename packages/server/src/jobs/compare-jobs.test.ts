import { BOOK_TABLES, RANK } from "@pinwright/book";
import {
  bookRowsSchema,
  type Job,
  jobSchema,
  printChangesSchema,
  releaseJobSchema,
} from "@pinwright/contract";
import { readMachineFacts } from "@pinwright/engine";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { putExampleDrivers } from "../testing/example-drivers.ts";
import { TestServer, type Visitor } from "../testing/test-server.ts";

const BOOK = "first-light";

describe("a comparison on the server", () => {
  let server: TestServer;
  let owner: Visitor;
  beforeAll(async () => {
    server = await TestServer.start();
    owner = await server.owner();
    await owner.post("/api/books", { id: BOOK, label: "Light", from: "first-light" });
    await putExampleDrivers(owner);
    await release("A");
    await move("sw.top", "236");
  }, 120_000);
  afterAll(() => server.close());

  const pause = (): Promise<unknown> => new Promise((resolve) => setTimeout(resolve, 50));
  const release = async (name: string): Promise<void> => {
    const body = { id: `release-${name}-0001`, name, note: `Note of ${name}` };
    let job = releaseJobSchema.parse(await owner.post(`/api/books/${BOOK}/releases`, body));
    while (job.state === "waiting" || job.state === "running") {
      await pause();
      job = releaseJobSchema.parse(await owner.get(`/api/release-jobs/${job.id}`));
    }
    expect(job.now).toBe("");
  };
  const move = async (id: string, to: string): Promise<void> => {
    const { tables } = bookRowsSchema.parse(await owner.get(`/api/books/${BOOK}/rows`));
    const found = Object.entries(tables.devices ?? {}).find(([, cells]) => cells.id === id);
    if (found === undefined) throw new Error(`no ${id}`);
    const [row, cells] = found;
    const change = { table: "devices", row, column: "x_mm", from: cells.x_mm ?? "", to };
    await owner.post(`/api/books/${BOOK}/changes`, { id: `move-${to}-0001`, note: "", changes: [change] });
  };
  const make = async (id: string, compare: object): Promise<Job> => {
    const plain = { id, harnessIds: [], kinds: [], formats: [], language: "en" };
    let job = jobSchema.parse(await owner.post(`/api/books/${BOOK}/sheets`, { ...plain, compare }));
    while (job.state === "waiting" || job.state === "running") {
      await pause();
      job = jobSchema.parse(await owner.get(`/api/jobs/${job.id}`));
    }
    return job;
  };
  const file = async (job: Job, name: string): Promise<Uint8Array> =>
    new Uint8Array(await (await owner.send(`/api/jobs/${job.id}/files/${name}`)).arrayBuffer());

  it("gives the facts of the draft with its sheets, the change note and the kit", async () => {
    const job = await make("compare-0001", {
      from: "A",
      make: ["facts", "change-note", "retrofit-kit"],
      today: "2026-12-01",
    });
    expect(job).toMatchObject({ state: "done", changeNo: 2 });
    expect(job.files.map(({ name }) => name)).toEqual([
      "facts.json",
      "machine.change-note-A-draft.en.pdf",
      "machine.retrofit-kit-A-draft.en.pdf",
    ]);
    const facts = readMachineFacts(JSON.parse(new TextDecoder().decode(await file(job, "facts.json"))));
    expect(facts.items["sw.top"]?.xMm).toBe(236);
    expect(facts.sheets.length).toBeGreaterThan(50);
    const pdf = await file(job, "machine.retrofit-kit-A-draft.en.pdf");
    expect(new TextDecoder("latin1").decode(pdf.subarray(0, 5))).toBe("%PDF-");
    expect(Object.keys(facts.rows)).toEqual(expect.arrayContaining(Object.keys(BOOK_TABLES)));
    expect(RANK in (facts.rows.devices?.["sw.top"] ?? {})).toBe(false);
  }, 120_000);

  it("refuses a release that there is not", async () => {
    const body = { id: "compare-0002", harnessIds: [], kinds: [], formats: [], language: "en" };
    const compare = { from: "Z", make: ["change-note"], today: "2026-12-01" };
    const refusal = await owner.refusal(`/api/books/${BOOK}/sheets`, {
      method: "POST",
      body: { ...body, compare },
    });
    expect(refusal).toMatchObject({ status: 404 });
  });

  it("tells of a print what changed on it since, and of one that nobody released nothing", async () => {
    await release("B");
    const all = await owner.get(`/api/books/${BOOK}/releases/A/sheets`);
    const sheets = Array.isArray(all) ? all : [];
    const sheet = sheets.find(({ id }) => id === "hs.field.from-to.en");
    const print = String(sheet?.bodyHash).slice(0, 12);
    const path = `/api/books/${BOOK}/print/hs.field.from-to.en`;
    const changes = printChangesSchema.parse(await owner.get(`${path}/${print}/changes?language=en`));
    expect(changes).toMatchObject({ from: "A", to: "B", pages: [1, 2] });
    expect(changes.groups.flatMap(({ sentences }) => sentences).join("; ")).toContain(
      "wire 4-7 is 10 mm longer",
    );
    expect(await owner.refusal(`${path}/${"0".repeat(12)}/changes?language=en`)).toMatchObject({
      status: 404,
    });
  }, 120_000);
});
