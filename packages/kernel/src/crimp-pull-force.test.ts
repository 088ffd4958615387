import { expect, it } from "vitest";
import { CRIMP_PULL_FORCES } from "./crimp-pull-force.ts";
import { csvRows } from "./testing/csv-rows.ts";

it("equals the commercial column of the published table", () => {
  const rows = csvRows(new URL("./testing/crimp-pull-force.csv", import.meta.url));
  expect(CRIMP_PULL_FORCES.map((f) => [f.awg, f.newton])).toEqual(
    rows.map((row) => [Number(row.awg), Number(row.commercial_N)]),
  );
});
