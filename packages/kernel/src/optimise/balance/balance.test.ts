import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seededRandom } from "../../random.ts";
import { csvRows } from "../../testing/csv-rows.ts";
import { type Balance, type BalanceProblem, balanceFaults, fewestStations, leastTakt } from "./index.ts";
import { readLine } from "./testing/instance.ts";

const FOLDER = new URL("./testing/", import.meta.url);
const INSTANCES = csvRows(new URL("optima.csv", FOLDER)).map((row) => ({
  file: row.file ?? "",
  problem: row.problem ?? "",
  given: Number(row.given),
  optimum: Number(row.optimum),
}));

/** A plan that exists, keeps every rule, and whose numbers fit together. */
const expectPlan = (
  problem: BalanceProblem,
  found: ReturnType<typeof leastTakt>,
  takt: (plan: Balance) => number,
): Balance => {
  if (!found.found) throw new Error("no plan");
  expect(balanceFaults(problem, takt(found), found.stations)).toEqual([]);
  expect(found.lowerBound).toBeLessThanOrEqual(found.value);
  expect(found.proven).toBe(found.lowerBound === found.value);
  return found;
};

const stationsOf = (problem: BalanceProblem, takt: number): Balance => {
  const plan = expectPlan(problem, fewestStations(problem, takt), () => takt);
  expect(plan.stations).toHaveLength(plan.value);
  return plan;
};

const taktOf = (problem: BalanceProblem, stations: number): Balance => {
  const plan = expectPlan(problem, leastTakt(problem, stations), ({ value }) => value);
  expect(plan.stations).toHaveLength(stations);
  return plan;
};

/** Of all ways to give stations to tasks, the fewest stations for the takt, and the least takt; null: there is none. */
const byHand = (problem: BalanceProblem, takt: number, stations: number, most: number) => {
  const n = problem.times.length;
  const at: number[] = [];
  let fewest = Number.POSITIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  const place = (i: number): void => {
    if (i === n) {
      const used = Math.max(0, ...at.map((s) => s + 1));
      const work = new Map<number, number>();
      at.forEach((s, k) => {
        work.set(s, (work.get(s) ?? 0) + (problem.times[k] ?? 0));
      });
      const longest = Math.max(0, ...work.values());
      if (longest <= takt) fewest = Math.min(fewest, used);
      if (used <= stations) least = Math.min(least, longest);
      return;
    }
    for (let s = 0; s < most; s++) {
      const where = problem.allowed?.[i] ?? null;
      if (where !== null && !where.includes(s)) continue;
      at[i] = s;
      // Precedences of the tests go from a lower to a higher number.
      if (problem.before.every(([a, b]) => b !== i || (at[a] ?? 0) <= s)) place(i + 1);
    }
    at.length = i;
  };
  place(0);
  return { fewest, least };
};

const line = (most: number): fc.Arbitrary<BalanceProblem> =>
  fc.integer({ min: 1, max: most }).chain((n) =>
    fc.record({
      times: fc.array(fc.integer({ min: 0, max: 12 }), { minLength: n, maxLength: n }),
      before: fc
        .array(fc.tuple(fc.nat(n - 1), fc.nat(n - 1)), { maxLength: n })
        .map((pairs) =>
          pairs.flatMap(([i, j]) => (i === j ? [] : [[Math.min(i, j), Math.max(i, j)] as const])),
        ),
    }),
  );

const restricted = (most: number, stations: number): fc.Arbitrary<BalanceProblem> =>
  line(most).chain((problem) =>
    fc
      .array(fc.option(fc.uniqueArray(fc.nat(stations - 1), { minLength: 1 }), { freq: 1 }), {
        minLength: problem.times.length,
        maxLength: problem.times.length,
      })
      .map((allowed) => ({ ...problem, allowed })),
  );

describe("benchmark lines (A. Scholl 1993)", () => {
  it.each(INSTANCES)(
    "$file $problem $given: the published optimum, proven",
    ({ file, problem, given, optimum }) => {
      const instance = readLine(new URL(file, FOLDER));
      const plan = problem === "SALBP-1" ? stationsOf(instance, given) : taktOf(instance, given);
      expect(plan.value).toBe(optimum);
      expect(plan.lowerBound).toBe(optimum);
    },
  );
});

describe("a published line of seven tasks (40 to 65 s, takt 120 s, three stations)", () => {
  const times = [40, 45, 55, 55, 65, 40, 25];

  it("needs three stations for its 325 s", () => {
    const plan = stationsOf({ times, before: [] }, 120);
    expect(plan.value).toBe(3);
    expect(plan.proven).toBe(true);
  });
});

describe("against all plans", () => {
  it("is the fewest and the least of all (seed 41)", () => {
    fc.assert(
      fc.property(
        line(6),
        fc.integer({ min: 12, max: 30 }),
        fc.integer({ min: 1, max: 4 }),
        (problem, takt, m) => {
          const { fewest, least } = byHand(problem, takt, m, problem.times.length);
          expect([stationsOf(problem, takt).value, stationsOf(problem, takt).proven]).toEqual([fewest, true]);
          expect([taktOf(problem, m).value, taktOf(problem, m).proven]).toEqual([least, true]);
        },
      ),
      { seed: 41, numRuns: 60 },
    );
  });

  it("is so where only some stations may do some tasks (seed 42)", () => {
    fc.assert(
      fc.property(restricted(5, 4), fc.integer({ min: 8, max: 30 }), (problem, takt) => {
        const { fewest, least } = byHand(problem, takt, 4, 8);
        const one = fewestStations(problem, takt);
        const two = leastTakt(problem, 4);
        if (fewest === Number.POSITIVE_INFINITY) expect(one.found ? one.value : one.proven).toBe(true);
        else
          expect([stationsOf(problem, takt).value, stationsOf(problem, takt).proven]).toEqual([fewest, true]);
        if (least === Number.POSITIVE_INFINITY) expect(two).toMatchObject({ found: false, proven: true });
        else expect([taktOf(problem, 4).value, taktOf(problem, 4).proven]).toEqual([least, true]);
      }),
      { seed: 42, numRuns: 40 },
    );
  });

  it("is so for up to eight tasks at two stations (seed 43)", () => {
    fc.assert(
      fc.property(restricted(8, 2), (problem) => {
        const { least } = byHand(problem, 0, 2, 2);
        const found = leastTakt(problem, 2);
        expect(found.found ? found.value : Number.POSITIVE_INFINITY).toBe(least);
        expect(found.proven).toBe(true);
      }),
      { seed: 43, numRuns: 60 },
    );
  });
});

describe("laws", () => {
  it("more takt never takes more stations, more stations never more takt (seed 44)", () => {
    fc.assert(
      fc.property(
        line(14),
        fc.integer({ min: 12, max: 30 }),
        fc.integer({ min: 1, max: 5 }),
        (problem, takt, m) => {
          expect(stationsOf(problem, takt + 3).value).toBeLessThanOrEqual(stationsOf(problem, takt).value);
          expect(taktOf(problem, m + 1).value).toBeLessThanOrEqual(taktOf(problem, m).value);
        },
      ),
      { seed: 44, numRuns: 40 },
    );
  });

  it("the two problems answer each other: m stations do with their least takt, and with no less (seed 45)", () => {
    fc.assert(
      fc.property(line(12), fc.integer({ min: 1, max: 5 }), (problem, m) => {
        const { value } = taktOf(problem, m);
        if (value < 1) return;
        expect(stationsOf(problem, value).value).toBeLessThanOrEqual(m);
        const less = fewestStations(problem, value - 0.5);
        if (less.found) expect(less.value).toBeGreaterThan(m);
      }),
      { seed: 45, numRuns: 40 },
    );
  });

  it("a line turned round is as good (seed 46)", () => {
    fc.assert(
      fc.property(line(12), fc.integer({ min: 2, max: 5 }), (problem, m) => {
        const round = { times: problem.times, before: problem.before.map(([i, j]) => [j, i] as const) };
        expect(taktOf(round, m).value).toBe(taktOf(problem, m).value);
      }),
      { seed: 46, numRuns: 40 },
    );
  });

  it("times 30 % longer give a takt 30 % longer, one person less never a shorter one (seed 47)", () => {
    fc.assert(
      fc.property(line(10), fc.integer({ min: 2, max: 5 }), (problem, m) => {
        const { value } = taktOf(problem, m);
        const slow = { ...problem, times: problem.times.map((time) => 1.3 * time) };
        expect(taktOf(slow, m).value).toBeCloseTo(1.3 * value, 6);
        expect(taktOf(problem, m - 1).value).toBeGreaterThanOrEqual(value);
      }),
      { seed: 47, numRuns: 30 },
    );
  });
});

describe("a thousand tasks at random (seed 48)", () => {
  const random = seededRandom(48);
  const times = Array.from({ length: 1000 }, () => Math.round(20 + 180 * random()) / 10);
  const before = times.flatMap((_, j) =>
    j === 0 ? [] : [[Math.max(0, j - 1 - Math.floor(40 * random())), j] as const],
  );

  it("are balanced within 2 % of the bound, with few and with many stations", () => {
    for (const takt of [100, 600]) expect(stationsOf({ times, before }, takt).gap).toBeLessThanOrEqual(0.02);
    const short = { steps: 150_000 };
    const plan = expectPlan({ times, before }, leastTakt({ times, before }, 20, short), ({ value }) => value);
    expect(plan.gap).toBeLessThanOrEqual(0.02);
  });
});

describe("edges", () => {
  it("says when no station can do a task", () => {
    expect(fewestStations({ times: [5], before: [] }, 4)).toMatchObject({ found: false, proven: true });
    const twisted: BalanceProblem = { times: [1, 1], before: [[0, 1]], allowed: [[2], [0]] };
    expect(fewestStations(twisted, 4)).toMatchObject({ found: false, proven: true });
    expect(leastTakt(twisted, 3)).toMatchObject({ found: false, proven: true });
  });

  it("leaves a station empty between two that must work", () => {
    const problem: BalanceProblem = { times: [2, 3], before: [[0, 1]], allowed: [[0], [2]] };
    expect(stationsOf(problem, 9).stations).toEqual([[0], [], [1]]);
  });

  it("balances no tasks, tasks that take no time, and decimals", () => {
    expect(fewestStations({ times: [], before: [] }, 1)).toMatchObject({ value: 0, proven: true });
    expect(taktOf({ times: [0, 0], before: [[0, 1]] }, 2)).toMatchObject({ value: 0, proven: true });
    expect(taktOf({ times: [0.1, 0.2, 0.3], before: [] }, 2).value).toBe(0.3);
    expect(stationsOf({ times: [0.1, 0.2, 0.3], before: [] }, 0.3).value).toBe(2);
  });

  it("refuses what is no line", () => {
    expect(() => fewestStations({ times: [-1], before: [] }, 4)).toThrow("time of task 0 is -1");
    expect(() => fewestStations({ times: [1], before: [[0, 1]] }, 4)).toThrow("task 1 in a precedence");
    expect(() => leastTakt({ times: [1], before: [[0, 0]] }, 1)).toThrow("without circles");
    expect(() => leastTakt({ times: [1], before: [] }, 0)).toThrow("0 stations");
    expect(() => fewestStations({ times: [1], before: [] }, 0)).toThrow("takt is 0");
    expect(() => fewestStations({ times: [1], before: [], allowed: [[-1]] }, 4)).toThrow("station -1");
  });
});

describe("balanceFaults", () => {
  it("names each fault of a plan", () => {
    const problem: BalanceProblem = { times: [2, 3, 4], before: [[0, 1]], allowed: [null, null, [1]] };
    expect(balanceFaults(problem, 5, [[1, 9], [0, 0], []])).toEqual([
      { kind: "unknown", task: 9, station: 0 },
      { kind: "twice", task: 0 },
      { kind: "missing", task: 2 },
      { kind: "order", task: 0, later: 1 },
    ]);
    expect(balanceFaults(problem, 5, [[0, 1, 2]])).toEqual([
      { kind: "not-allowed", task: 2, station: 0 },
      { kind: "takt", station: 0, time: 9 },
    ]);
    expect(balanceFaults(problem, 5, [[0, 1], [2]])).toEqual([]);
  });
});
