import { join } from "node:path";
import { readBook } from "@pinwright/book/io";
import { beforeAll, describe, expect, test } from "vitest";
import { type HarnessWires, type LineResult, resolveMachine } from "../../model/index.ts";
import { createShop } from "../../testing/book.ts";
import { Line } from "../../testing/line.ts";
import { wireHarness } from "../../wire/index.ts";
import { rateElectric } from "../rating/rate-electric.ts";
import { ElectricSolver } from "../solve/solve-electric.ts";
import { fuseChart, type LadderNode, type LoadLadder, loadLadders } from "./index.ts";

const EXAMPLES = join(import.meta.dirname, "../../../../../examples");

/** What ladders are made from. */
type Solved = Pick<LineResult, "machine" | "electric"> & {
  readonly harnesses: ReadonlyMap<string, HarnessWires>;
};

/** A machine whose wires are all of one length, so that nothing has to be routed. */
async function example(name: string): Promise<Solved> {
  const { book, shop } = await readBook(join(EXAMPLES, name));
  const machine = resolveMachine(book, shop ?? createShop());
  const harnesses = new Map(
    [...machine.harnesses.keys()].map((id) => [id, wireHarness(machine, id)] as const),
  );
  const all = [...harnesses.values()];
  const lengthsMm = new Map(all.flatMap(({ wires }) => wires.map((wire) => [wire.id, 800] as const)));
  return { machine, harnesses, electric: new ElectricSolver().solve(machine, all, lengthsMm).solution };
}

const loadsOf = (nodes: readonly LadderNode[]): readonly string[] =>
  nodes.flatMap((node) => node.loadIds).sort();
const nodeOf = (nodes: readonly LadderNode[], loadId: string): LadderNode | undefined =>
  nodes.find((node) => node.loadIds.includes(loadId));

describe.each(["first-light", "tidewatch"])("ladders of %s", (name) => {
  let line: Solved;
  let all: readonly LoadLadder[];
  beforeAll(async () => {
    line = await example(name);
    const supplies = new Set([...line.electric.loads.values()].map((load) => load.supplyId));
    all = [...supplies].flatMap((supplyId) =>
      loadLadders(line.machine, line.harnesses, line.electric, { supplyId }),
    );
  });

  test("lead to every load that is fed, out and back, once", () => {
    const fed = [...line.electric.loads.keys()].sort();
    expect(fed.length).toBeGreaterThan(5);
    expect(all.flatMap(({ out }) => loadsOf(out)).sort()).toEqual(fed);
    expect(all.flatMap(({ back }) => loadsOf(back)).sort()).toEqual(fed);
  });

  test("have parents before their children, and count what hangs below", () => {
    for (const { out, back } of all)
      for (const nodes of [out, back]) {
        expect(nodes.every((node, i) => (node.parent ?? -1) < i)).toBe(true);
        expect(nodes.filter((node) => node.parent === null)).toHaveLength(1);
        expect(nodes[0]?.below).toBe(loadsOf(nodes).length);
        for (const node of nodes.slice(1)) expect(node.parts.length).toBeGreaterThan(0);
      }
  });

  test("have between both ends of a load that is always on what the solved circuit has across it", () => {
    const always = line.electric.moments.get("always")?.loadIds ?? [];
    let compared = 0;
    for (const { out, back } of all)
      for (const loadId of always) {
        const [plus, minus] = [nodeOf(out, loadId), nodeOf(back, loadId)];
        const across = line.electric.loads.get(loadId)?.aloneV.nominal ?? Number.NaN;
        // What is given against another supply's return cannot be subtracted.
        if (plus?.volts == null || minus?.volts == null || plus.against !== minus.against) continue;
        expect(plus.volts.nominal - minus.volts.nominal).toBeCloseTo(across, 6);
        compared++;
      }
    expect(compared).toBeGreaterThan(always.length / 2);
  });

  test("of a net are the part of its supply's whose ways pass it", () => {
    const [netId] = [...line.machine.nets.values()].flatMap(({ id, supply, volts }) =>
      supply !== null && (volts ?? 0) > 0 && line.electric.supplies.has(supply) ? [id] : [],
    );
    const ladders = loadLadders(line.machine, line.harnesses, line.electric, { netId: netId ?? "" });
    for (const { supplyId, out } of ladders) {
      const whole = all.find((one) => one.supplyId === supplyId);
      expect(loadsOf(whole?.out ?? [])).toEqual(expect.arrayContaining([...loadsOf(out)]));
    }
    expect(loadLadders(line.machine, line.harnesses, line.electric, { netId: "no.such.net" })).toEqual([]);
  });
});

describe("the curve of a fuse", () => {
  test("has the loads behind it that the ladder has, and opens the sooner the higher the current", async () => {
    const { book, shop } = await readBook(join(EXAMPLES, "first-light"));
    const { machine, harnesses, electric } = new Line().run(book, shop ?? createShop());
    const { fuses } = rateElectric(machine, harnesses, electric);
    expect(fuses.size).toBeGreaterThan(0);
    for (const rating of fuses.values()) {
      const chart = fuseChart(machine, harnesses, electric, rating);
      const [ladder] = loadLadders(machine, harnesses, electric, { supplyId: rating.supplyId });
      expect(behind(ladder?.out ?? [], rating.elementId)).toEqual(chart.loadIds);
      for (const curve of [chart.earliest, chart.latest, chart.harm]) {
        expect(curve.length).toBeGreaterThan(3);
        const [amps, seconds] = [curve.map(([a]) => a), curve.map(([, s]) => s)];
        expect(amps).toEqual(amps.toSorted((a, b) => a - b));
        expect(seconds).toEqual(seconds.toSorted((a, b) => b - a));
      }
      // IEC 60127-2: a time-lag fuse-link of low breaking capacity holds 1.5 times its rating for an hour.
      expect(chart.earliest[0]).toEqual([1.5 * rating.ratedA, 3600]);
      // The bumper is pulsed for 30 ms at a duty of 10 %: 200 times a minute.
      expect(chart.pulses.find(({ loadId }) => loadId.startsWith("mech.bumper"))).toMatchObject({
        seconds: 0.03,
        aMinute: 200,
      });
    }
  });
});

function behind(nodes: readonly LadderNode[], partId: string): readonly string[] {
  const within = new Set<number>();
  const found: string[] = [];
  nodes.forEach((node, i) => {
    if (!node.parts.some(({ id }) => id === partId) && !within.has(node.parent ?? -1)) return;
    within.add(i);
    found.push(...node.loadIds);
  });
  return found.sort();
}
