/**
 * Puts random faults into Tidewatch, one or two at a time, and simulates in ngspice what each does to every lamp, coil, motor
 * and switch. What comes out is kept in `results/faults-simulated.json`, for `faults.ts` to hold fault finding against; what
 * is there already of the same machine is not simulated again.
 *
 *     npx tsx prove/faults-simulated.ts [SINGLE [PAIRS [SEED]]]
 */
import { writeFileSync } from "node:fs";
import { seededRandom } from "@pinwright/kernel";
import type { Suspect } from "../packages/engine/src/index.ts";
import { outcomeText, readSimulated, SIMULATED, type Simulated } from "./faults/simulated.ts";
import { tidewatchFaults } from "./faults/tidewatch.ts";

const [wantSingle = 2000, wantPairs = 300, seed = 8] = process.argv.slice(2).map(Number);
/** Faults between two times that the file is written. */
const KEEP_EVERY = 20;

const { model, suspects, suspectOf, hash, bench: setUp } = await tidewatchFaults();
const bench = setUp();
const before = readSimulated();
const known = before?.hash === hash && before.seed === seed ? before : null;

const outcomes: string[] = [...(known?.outcomes ?? [])];
const outcomeAt = new Map(outcomes.map((text, n) => [text, n]));
const single = new Map(known?.single ?? []);
const pairs = new Map((known?.pairs ?? []).map(([p, q, outcome]) => [`${p} | ${q}`, outcome]));

/** Place of what some causes do; −1 where the simulator finds no operating point: nothing is known of these. */
function simulated(causes: readonly Suspect[]): number {
  let text: string;
  try {
    text = outcomeText(bench.tried, bench.symptoms(causes));
  } catch {
    return -1;
  }
  const place = outcomeAt.get(text) ?? outcomes.push(text) - 1;
  outcomeAt.set(text, place);
  return place;
}

/** Random ones of a list, each once, the same for the same seed. */
function chosen<T>(all: readonly T[], count: number, by: number): readonly T[] {
  const random = seededRandom(by);
  const left = [...all];
  const found: T[] = [];
  while (found.length < count && left.length > 0)
    found.push(...left.splice(Math.floor(random() * left.length), 1));
  return found;
}

const ones = chosen(suspects, wantSingle, seed).map(({ id }) => id);
const isShowing = (id: string): boolean => {
  const fault = suspectOf.get(id)?.fault;
  return fault !== undefined && model.symptoms([fault]).size > 0;
};
const order = chosen(suspects, suspects.length, seed + 1).map(({ id }) => id);
const asPairs = Array.from({ length: order.length >> 1 }, (_, n): readonly [string, string] => [
  order[2 * n] ?? "",
  order[2 * n + 1] ?? "",
])
  .filter(([p, q]) => isShowing(p) && isShowing(q))
  .slice(0, wantPairs);

function keep(): void {
  const all: Simulated = {
    hash,
    seed,
    tried: bench.tried.map((f) => model.functions[f]?.id ?? ""),
    outcomes,
    single: ones.flatMap((id) => (single.has(id) ? [[id, single.get(id) ?? -1] as const] : [])),
    pairs: asPairs.flatMap(([p, q]) => {
      const outcome = pairs.get(`${p} | ${q}`);
      return outcome === undefined ? [] : [[p, q, outcome] as const];
    }),
  };
  writeFileSync(SIMULATED, `${JSON.stringify(all)}\n`);
}

const causes = (...ids: readonly string[]): readonly Suspect[] =>
  ids.flatMap((id) => suspectOf.get(id) ?? []);
const todo = [
  ...ones.filter((id) => !single.has(id)).map((id) => () => void single.set(id, simulated(causes(id)))),
  ...asPairs
    .filter(([p, q]) => !pairs.has(`${p} | ${q}`))
    .map(
      ([p, q]) =>
        () =>
          void pairs.set(`${p} | ${q}`, simulated(causes(p, q))),
    ),
];
for (const [n, simulate] of todo.entries()) {
  simulate();
  if ((n + 1) % KEEP_EVERY !== 0) continue;
  keep();
  process.stderr.write(`${n + 1} of ${todo.length}, ${bench.simulations} simulations\n`);
}
keep();
