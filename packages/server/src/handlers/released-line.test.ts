import { ROUTES, releaseJobSchema } from "@pinwright/contract";
import { afterAll, beforeAll, expect, it } from "vitest";
import { putExampleDrivers } from "../testing/example-drivers.ts";
import { TestServer, type Visitor } from "../testing/test-server.ts";

let server: TestServer;
let owner: Visitor;
const BOOK = "/api/books/light";

beforeAll(async () => {
  server = await TestServer.start();
  owner = await server.owner();
  await owner.post("/api/books", { id: "light", label: "Light", from: "first-light" });
  await putExampleDrivers(owner);
}, 300_000);
afterAll(() => server.close());

const lineOf = async (release: string) =>
  ROUTES.releasedLine.answer.parse(await owner.get(`${BOOK}/releases/${release}/line`));

it("tells what units of a release are built by, whatever is changed afterwards", {
  timeout: 300_000,
}, async () => {
  const body = { id: "release-line-1", name: "A", note: "" };
  let job = releaseJobSchema.parse(await owner.post(`${BOOK}/releases`, body));
  while (job.state === "waiting" || job.state === "running") {
    await new Promise((resolve) => setTimeout(resolve, 50));
    job = releaseJobSchema.parse(await owner.get(`/api/release-jobs/${job.id}`));
  }
  expect(job.state).toBe("done");
  const before = await lineOf("A");
  const [row, cells] = Object.entries(before.tables.steps ?? {})[0] ?? [];
  expect(cells?.label).toBeTruthy();
  await owner.post(`${BOOK}/changes`, {
    ...{ id: "change-line-1", note: "" },
    changes: [{ table: "steps", row, column: "label", from: cells?.label ?? "", to: "Another way" }],
  });
  expect(await lineOf("A")).toEqual(before);
  expect(Object.keys(before.shop)).toContain("shop_settings");
  expect(await owner.refusal(`${BOOK}/releases/B/line`)).toMatchObject({ code: "not-found" });
});
