import { expect, it } from "vitest";
import { dayOf } from "./days.ts";
import { type Block, holidayDays, isOff, spanOf, stageRows, stretches, usedShare } from "./schedule-rows.ts";

const block = (runId: string, stageId: string, startDay: number, endDay: number): Block => ({
  runId,
  stageId,
  labels: { en: stageId, zh: "" },
  startDay,
  endDay,
  days: [],
  people: 2,
  minutesPerMachine: 60,
  isKnown: true,
  minutesDay: 960,
});
const BLOCKS = [
  block("a", "paint", 110, 112),
  block("a", "panels", 100, 105),
  block("b", "panels", 90, 99),
  block("b", "test", 120, 121),
];

it("has the stages of a run in the order of its work, with what others do there", () => {
  const rows = stageRows(BLOCKS, "a");
  expect(rows.map(({ stageId, blocks }) => [stageId, blocks.length])).toEqual([
    ["panels", 2],
    ["paint", 1],
  ]);
});

it("spans the run and what is near it", () => {
  expect(spanOf(BLOCKS, "a", [114, null, 10])).toEqual({ from: 98, to: 116 });
  expect(spanOf(BLOCKS, "none", [])).toBeNull();
});

it("knows weekends and holidays", () => {
  const monday = dayOf("2026-11-30") ?? 0;
  const holidays = holidayDays(["2026-12-01", "no day"]);
  const off = [0, 1, 2, 3, 4, 5, 6].filter((n) => isOff(monday + n, 5, holidays));
  expect(off).toEqual([1, 5, 6]);
  expect(stretches([1, 5, 6])).toEqual([
    [1, 1],
    [5, 6],
  ]);
});

it("tells how much of the people's time a run takes on the days on which it works there", () => {
  const days = [
    { day: 100, machines: 4, minutes: 720 },
    { day: 101, machines: 2, minutes: 240 },
  ];
  expect(usedShare({ ...block("a", "panels", 100, 101), days })).toBeCloseTo(0.5);
  expect(usedShare({ ...block("a", "ride", 100, 101), days, minutesDay: 0 })).toBeNull();
  expect(usedShare(block("a", "none", 100, 101))).toBeNull();
});
