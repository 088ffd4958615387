import { RANK } from "@pinwright/book";
import { type Job, jobSchema } from "@pinwright/contract";
import { unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { TestServer, type Visitor } from "../testing/test-server.ts";

describe("sheets", () => {
  let server: TestServer;
  let owner: Visitor;
  beforeAll(async () => {
    server = await TestServer.start();
    owner = await server.owner();
    await owner.post("/api/books", { id: "light", label: "Light", from: "first-light" });
  }, 60_000);
  afterAll(() => server.close());

  const request = (id: string, more: object = {}) => ({
    id,
    harnessIds: [],
    kinds: ["from-to", "cut-list"],
    formats: ["csv", "pdf"],
    language: "en",
    ...more,
  });
  const make = async (visitor: Visitor, body: object): Promise<Job> =>
    jobSchema.parse(await visitor.post("/api/books/light/sheets", body));
  const over = async (id: string): Promise<Job> => {
    for (;;) {
      const job = jobSchema.parse(await owner.get(`/api/jobs/${id}`));
      if (job.state !== "waiting" && job.state !== "running") return job;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  };

  it("are made in the background, once for a request, and fetched one by one or all in one", async () => {
    const { id } = await make(owner, request("sheets-0001"));
    expect((await make(owner, request("sheets-0001"))).id).toBe(id);
    const job = await over(id);
    expect(job).toMatchObject({ book: "light", changeNo: 1, state: "done", now: "" });
    expect(job.done).toBe(job.total);
    expect(job.files.length).toBe(2 * job.total);
    const [first] = job.files;
    const response = await owner.send(`/api/jobs/${id}/files/${encodeURIComponent(first?.name ?? "")}`);
    expect(response.headers.get("content-disposition")).toContain("filename=");
    expect((await response.arrayBuffer()).byteLength).toBe(first?.bytes);
    const all = new Uint8Array(await (await owner.send(`/api/jobs/${id}/files/all.zip`)).arrayBuffer());
    const inside = unzipSync(all);
    expect(Object.keys(inside).sort()).toEqual(job.files.map((file) => file.name).sort());
    for (const { name, bytes } of job.files) expect(inside[name]?.byteLength).toBe(bytes);
    for (const name of ["..%2F..%2Fstore.sqlite", "1", "..", "none.pdf"])
      expect(await owner.refusal(`/api/jobs/${id}/files/${name}`)).toMatchObject({ status: 404 });
  });

  it("of the whole machine come when they are asked for, and with everything, but not with a named harness", async () => {
    const kinds = { kinds: ["loads", "supply-schedule"], formats: ["csv"] };
    const asked = await over((await make(owner, request("machine-0001", kinds))).id);
    expect(asked.files.map((file) => file.name)).toEqual([
      "machine.supply-schedule.en.csv",
      "machine.loads.en.csv",
    ]);
    const one = { kinds: [], formats: ["csv"], harnessIds: ["hs.deck"] };
    const named = await over((await make(owner, request("machine-0002", one))).id);
    expect(named.files.every((file) => file.name.startsWith("hs.deck."))).toBe(true);
    expect(named.files.length).toBeGreaterThan(3);
  });

  it("of runs are made as of a day, for one run or all, without those of the machine", async () => {
    const rows = (await owner.get("/api/books/shop/rows")) as { book: { changeNo: number } };
    expect(rows.book.changeNo).toBeGreaterThan(0);
    const cell = (column: string, to: string) => ({ table: "runs", row: "run-row-1", column, from: "", to });
    const changes = [
      ...[cell("id", "run.trial"), cell("book", "light"), cell("machines", "3"), cell("ship", "2027-06-30")],
      cell(RANK, "a1"),
    ];
    await owner.post("/api/books/shop/changes", { id: "runs-change-1", note: "", changes });
    const runs = { kinds: ["run-cost", "run-schedule"], run: "run.trial", today: "2026-11-30" };
    const made = await over(
      (await make(owner, request("runs-0001", { kinds: [], formats: ["csv"], runs }))).id,
    );
    expect(made.files.map((file) => file.name)).toEqual([
      "runs.run-schedule.en.csv",
      "runs.run-cost-run.trial.en.csv",
    ]);
    const none = { kinds: [], formats: ["csv"], runs: { ...runs, run: "run.none" } };
    expect(await over((await make(owner, request("runs-0002", none))).id)).toMatchObject({
      state: "failed",
      now: expect.stringContaining("run.none"),
    });
    const wrong = { runs: { ...runs, kinds: ["run-what"] } };
    expect(
      await owner.refusal("/api/books/light/sheets", { method: "POST", body: request("runs-0003", wrong) }),
    ).toMatchObject({
      code: "bad-request",
      message: expect.stringContaining("run-what"),
    });
  });

  it("that are stopped stop at once, also those that wait, and the next are made all the same", async () => {
    const jobs = [];
    for (const id of ["stop-0001", "stop-0002"])
      jobs.push(await make(owner, request(id, { kinds: [], formats: [] })));
    for (const job of jobs)
      expect(await owner.get(`/api/jobs/${job.id}`, { method: "DELETE" })).toMatchObject({
        state: "cancelled",
      });
    const next = await make(owner, request("stop-0003", { kinds: ["continuity"], formats: ["csv"] }));
    expect((await over(next.id)).state).toBe("done");
    for (const job of jobs) expect((await over(job.id)).state).toBe("cancelled");
    expect(await owner.refusal(`/api/jobs/${jobs[0]?.id}/files/all.zip`)).toMatchObject({
      code: "not-found",
    });
  });

  it("are stopped by whoever wanted them, or a designer, and nobody else", async () => {
    const wei = await server.person(owner, "Wei", "builder");
    const job = await make(owner, request("mine-0001", { kinds: [], formats: [] }));
    const stop = { method: "DELETE" };
    expect(await wei.refusal(`/api/jobs/${job.id}`, stop)).toMatchObject({ code: "not-allowed" });
    await owner.get(`/api/jobs/${job.id}`, stop);
  });

  it("of a harness or a kind that there is not are refused with what there is", async () => {
    const kinds = { method: "POST", body: request("none-0001", { kinds: ["poem"] }) };
    expect(await owner.refusal("/api/books/light/sheets", kinds)).toMatchObject({
      places: [{ at: "kinds" }],
    });
    const job = await over((await make(owner, request("none-0002", { harnessIds: ["no harness"] }))).id);
    expect(job).toMatchObject({ state: "failed", files: [] });
    expect(job.now).toContain("no harness");
    const shop = { method: "POST", body: request("none-0003") };
    expect(await owner.refusal("/api/books/shop/sheets", shop)).toMatchObject({ code: "bad-request" });
  });
});
