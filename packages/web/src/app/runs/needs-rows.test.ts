import { decimal } from "@pinwright/kernel";
import { expect, it } from "vitest";
import { needRows } from "./needs-rows.ts";

const need = (partId: string, colour: string, gross: number, neededDay: number, stageId: string | null) => ({
  runId: "spring",
  partId,
  colour,
  gross: decimal(gross),
  build: decimal(gross - 1),
  scrap: decimal(1),
  spares: 0n,
  fromStock: 0n,
  fromOrders: 0n,
  net: decimal(gross),
  neededDay,
  stageId,
});

it("adds up the stages of a part, colour by colour, as early as the first of them", () => {
  const rows = needRows([
    need("wire", "RD", 30, 12, "harness"),
    need("wire", "BU", 5, 14, "harness"),
    need("wire", "RD", 2, 9, null),
  ]);
  expect(
    rows.map(({ key, gross, scrap, neededDay, stages }) => [key, gross, scrap, neededDay, stages.length]),
  ).toEqual([
    ["wire RD", decimal(32), decimal(2), 9, 2],
    ["wire BU", decimal(5), decimal(1), 14, 1],
  ]);
});
