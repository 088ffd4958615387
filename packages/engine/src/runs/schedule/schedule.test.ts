import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createShop, type SomeShopTables } from "../../testing/book.ts";
import { WorkCalendar, weekdayOf } from "../calendar.ts";
import { dayText } from "../days.ts";
import { day, TODAY } from "../testing/workshop.ts";
import { Ledger } from "./ledger.ts";
import type { StageWork } from "./schedule-run.ts";
import { type RunToSchedule, readyDay, type ScheduledRun, scheduleRuns, startDay } from "./schedule-runs.ts";
import { stagesOf } from "./stage.ts";

const benches: NonNullable<SomeShopTables["benches"]> = [
  { id: "build", kind: "assembly", people: 1, site: "works" },
  { id: "try", kind: "test", people: 2, site: "works" },
];
const sites = [{ id: "works" }];

interface Asked {
  readonly machines: number;
  readonly ship: string;
  readonly minutes: readonly number[];
  readonly learningPct?: number;
  readonly partsDays?: readonly number[];
}

function schedule(tables: SomeShopTables, runs: readonly Asked[]): readonly ScheduledRun[] {
  const shop = createShop({ sites, benches, ...tables });
  const { stages } = stagesOf(shop);
  const asked = runs.map(
    ({ machines, ship, minutes, learningPct = 100, partsDays = [] }, i): RunToSchedule => ({
      id: `r${i}`,
      work: { machines, work: minutes.map((firstMinutes): StageWork => ({ firstMinutes, learningPct })) },
      shipDay: day(ship),
      earliestDay: TODAY,
      partsDays,
    }),
  );
  return scheduleRuns(stages, asked, new Ledger(shop, new WorkCalendar(shop)));
}

const one = { stages: [{ id: "s", kind: "assembly" as const }] };
const days = (run: ScheduledRun | undefined): readonly (string | null)[] =>
  [startDay(run?.schedule ?? null), readyDay(run?.schedule ?? null)].map((d) =>
    d === null ? null : dayText(d),
  );

describe("one stage of one person, eight hours a day", () => {
  it("is as late as the ship day allows: two machines a day, none on a weekend", () => {
    // 2027-01-18 is a Monday: six machines of 240 minutes fill it, and the Thursday and Friday before.
    expect(days(schedule(one, [{ machines: 6, ship: "2027-01-18", minutes: [240] }])[0])).toEqual([
      "2027-01-14",
      "2027-01-18",
    ]);
  });

  it("keeps the site's days off, and the hours worked on one all the same", () => {
    const calendars = [
      { site: "works", day: "2027-01-15", hours: 0 },
      { site: "works", day: "2027-01-16", hours: 4 },
    ];
    const [run] = schedule({ ...one, calendars }, [{ machines: 6, ship: "2027-01-18", minutes: [240] }]);
    // Monday two, Saturday one, Thursday two, Wednesday one.
    expect(days(run)).toEqual(["2027-01-13", "2027-01-18"]);
  });

  it("is shared by two runs, the later to ship having the later days", () => {
    const [a, b] = schedule(one, [
      { machines: 4, ship: "2027-01-21", minutes: [240] },
      { machines: 4, ship: "2027-01-22", minutes: [240] },
    ]);
    expect([days(a), days(b)]).toEqual([
      ["2027-01-19", "2027-01-20"],
      ["2027-01-21", "2027-01-22"],
    ]);
  });

  it("begins at once when it is late, and says so", () => {
    const [run] = schedule(one, [{ machines: 12, ship: "2027-01-06", minutes: [240] }]);
    expect([run?.isLate, ...days(run)]).toEqual([true, "2027-01-04", "2027-01-11"]);
  });

  it("waits for parts, and names the stage that lacks them", () => {
    const [run] = schedule(one, [
      { machines: 2, ship: "2027-01-15", minutes: [240], partsDays: [day("2027-01-20")] },
    ]);
    expect([run?.isLate, run?.heldStage, ...days(run)]).toEqual([true, 0, "2027-01-20", "2027-01-20"]);
  });

  it("takes as much time in all as Wright's curve says", () => {
    // Cumulative average, 80 %: 16 units of 100 first take 655.36 in all (published); here in minutes times ten.
    const [run] = schedule(one, [{ machines: 16, ship: "2027-03-26", minutes: [1000], learningPct: 80 }]);
    const minutes = [...(run?.schedule?.[0]?.minutes.values() ?? [])].reduce((sum, m) => sum + m, 0);
    expect(minutes).toBeCloseTo(6553.6, 6);
  });

  it("goes no faster than its most machines a day", () => {
    const stages = [{ id: "s", kind: "assembly" as const, most_per_day: 0.5 }];
    const [run] = schedule({ stages }, [{ machines: 3, ship: "2027-01-29", minutes: [10] }]);
    expect(days(run)).toEqual(["2027-01-22", "2027-01-29"]);
  });
});

describe("two stages", () => {
  const stages = [
    { id: "s", kind: "assembly" as const, batch: 2, wait_hours: 48 },
    { id: "t", kind: "test" as const, after: ["s"] },
  ];

  it("lets a batch wait before the next begins", () => {
    const [run] = schedule({ stages }, [{ machines: 2, ship: "2027-01-21", minutes: [240, 60] }]);
    const [first, second] = run?.schedule ?? [];
    // Done on Monday, 48 hours of which a night covers 16: the next two days pass, tested on Thursday.
    expect([first, second].map((s) => dayText(s?.batches[0]?.endDay ?? 0))).toEqual([
      "2027-01-18",
      "2027-01-21",
    ]);
  });

  it("has no order when its stages wait for each other, and says which", () => {
    const circle = [
      { id: "a", kind: "assembly" as const, after: ["b"] },
      { id: "b", kind: "test" as const, after: ["a"] },
      { id: "c", kind: "pack" as const, after: ["b"] },
    ];
    const { stages: planned, findings } = stagesOf(createShop({ benches, stages: circle }));
    expect(findings.map((f) => [f.rule, ...f.subjects])).toEqual([["stage-circle", "a", "b"]]);
    expect(planned.map((stage) => stage.id)).toEqual(["a", "b", "c"]);
  });

  it("fills no bench beyond its day, works on no day off, and lets nothing begin before what it waits for is done", () => {
    const runs = fc.array(
      fc.record({
        machines: fc.integer({ min: 1, max: 15 }),
        ship: fc.integer({ min: 0, max: 60 }).map((d) => dayText(TODAY + d)),
        minutes: fc.tuple(fc.integer({ min: 0, max: 700 }), fc.integer({ min: 1, max: 300 })),
        learningPct: fc.constantFrom(80, 100),
      }),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(runs, (asked) => {
        const found = schedule({ stages }, asked);
        const used = [new Map<number, number>(), new Map<number, number>()];
        for (const [i, { schedule: own, isLate }] of found.entries()) {
          const run = asked[Number(found[i]?.id.slice(1))];
          expect(own).not.toBeNull();
          for (const [s, { batches, minutes }] of (own ?? []).entries()) {
            for (const [d, m] of minutes) used[s]?.set(d, (used[s]?.get(d) ?? 0) + m);
            expect(batches.reduce((sum, batch) => sum + batch.machines, 0)).toBe(run?.machines);
            for (const batch of batches) {
              expect([batch.startDay, batch.endDay].every((d) => d >= TODAY && weekdayOf(d) < 5)).toBe(true);
              if (!isLate) expect(batch.endDay).toBeLessThanOrEqual(day(run?.ship ?? ""));
            }
          }
          const [first, second] = own ?? [];
          for (const after of second?.batches ?? []) {
            const before = first?.batches.find((b) => b.first + b.machines > after.first);
            expect(after.startDay).toBeGreaterThanOrEqual((before?.endDay ?? 0) + 3);
          }
        }
        for (const [s, map] of used.entries())
          for (const minutes of map.values())
            expect(minutes).toBeLessThanOrEqual(([480, 960][s] ?? 0) + 1e-6);
      }),
      { seed: 29, numRuns: 80 },
    );
  });
});
