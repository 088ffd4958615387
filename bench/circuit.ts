/**
 * The circuit solver on harness-like networks up to 80,000 nodes, with ngspice's time for the same network beside it
 * in the same run; and all electrical results of Tidewatch, cold and after one changed wire. `cpu_ms` is the time of
 * the processor over all threads, which other programs on the machine disturb less. `npx tsx bench/circuit.ts`
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import {
  ElectricRater,
  ElectricSolver,
  type HarnessResult,
  Line,
  lengthsOf,
  resolveMachine,
  wireHarness,
} from "@pinwright/engine";
import { Circuit } from "@pinwright/kernel";
import { harnessLike } from "../packages/kernel/src/circuit/testing/harness-like.ts";
import { figures, type JobTime, once, tenth, writeResults } from "./measure.ts";

const rows: Record<string, string | number>[] = [];

/** Time of ngspice for the operating point of the same network, 1 V at one end and a milliampere at every node. */
function ngspiceMs(pairs: readonly (readonly [number, number])[], nodes: number): number {
  const folder = mkdtempSync(join(tmpdir(), "pinwright-bench-"));
  const cards = pairs.flatMap(([a, b], r) => (a === b ? [] : [`R${r} ${a} ${b} 1`]));
  const loads = Array.from({ length: nodes - 1 }, (_, n) => `I${n} 0 ${n + 1} 0.001`);
  writeFileSync(
    join(folder, "c.cir"),
    ["network", ...cards, ...loads, ".control", "op", ".endc", ".end", ""].join("\n"),
  );
  const { ms } = once(() => spawnSync("ngspice", ["-b", "c.cir"], { cwd: folder }));
  rmSync(folder, { recursive: true });
  return ms;
}

// Before anything else, so that the solver is as cold as it is in a program that has just started.
const { book, shop } = await readBook(join(import.meta.dirname, "../examples/tidewatch"));
const machine = resolveMachine(book, shop ?? emptyShop());
const joined = [...machine.harnesses.keys()].map((id) => wireHarness(machine, id));
const lengths = new Map(
  joined.flatMap(({ wires }) => wires.map(({ id }, n) => [id, 300 + ((n * 37) % 1500)])),
);
const cold = once(() => new ElectricSolver().solve(machine, joined, lengths));

let base: JobTime | null = null;
for (const nodes of [1250, 5000, 20000, 80000]) {
  const resistors = harnessLike(nodes, 7);
  const amps = new Float64Array(nodes).fill(0.001);
  const values = { siemens: new Float64Array(resistors.length).fill(1), joinVolts: new Float64Array(0) };
  const whole = Array.from({ length: 3 }, () =>
    once(() => new Circuit({ nodes, reference: 0, joins: [], resistors }).with(values).solve(amps)),
  );
  const circuit = new Circuit({ nodes, reference: 0, joins: [], resistors });
  const again = Array.from({ length: 5 }, () => once(() => circuit.with(values).solve(amps)));
  const first: JobTime = whole.reduce((a, b) => (b.cpuMs < a.cpuMs ? b : a));
  base ??= first;
  rows.push({
    ...figures(`a network of ${nodes} nodes, ordered, factored and solved`, whole),
    ngspice_ms: tenth(ngspiceMs(resistors, nodes)),
    multiplications: circuit.work.operations,
    ratio: tenth(first.cpuMs / base.cpuMs),
  });
  rows.push(figures(`the same with changed values: factored and solved`, again));
}

rows.push(figures("what flows in Tidewatch, first in the process", [cold]));
rows.push(
  figures(
    "the same from scratch, warm",
    Array.from({ length: 5 }, () => once(() => new ElectricSolver().solve(machine, joined, lengths))),
  ),
);
const solver = new ElectricSolver();
const { solution } = solver.solve(machine, joined, lengths);
const ids = [...solution.wires].filter(([, { peakA }]) => peakA.most > 0).map(([id]) => id);
const changed: JobTime[] = [];
for (let n = 0; n < 60; n++) {
  const id = ids[(n * 37) % ids.length] ?? "";
  const other = new Map(lengths).set(id, (lengths.get(id) ?? 0) + 5);
  const time = once(() => solver.solve(machine, joined, other));
  solver.sweep();
  // Back again, so that each change is one wire's.
  solver.solve(machine, joined, lengths);
  solver.sweep();
  if (n >= 20) changed.push(time);
}
rows.push(figures("after one changed wire that carries current", changed));

/** What flows, everything held against what it is made for, and the findings of both. */
class Electric {
  readonly #solver = new ElectricSolver();
  readonly #rater = new ElectricRater();

  work(harnesses: ReadonlyMap<string, HarnessResult>): void {
    const solved = this.#solver.solve(machine, joined, lengthsOf([...harnesses.values()]));
    this.#rater.rate({ machine, harnesses, ...solved });
    this.#solver.sweep();
    this.#rater.sweep();
  }
}

const { harnesses } = new Line().run(book, shop ?? emptyShop());
rows.push(
  figures(
    "all electrical results of Tidewatch with ratings and findings, from scratch, warm",
    Array.from({ length: 9 }, () => once(() => new Electric().work(harnesses))),
  ),
);

/** The same harnesses with one wire that is longer. */
function withLonger(wireId: string): ReadonlyMap<string, HarnessResult> {
  const entries = [...harnesses].map(([id, harness]) => {
    if (!harness.wires.some((wire) => wire.id === wireId)) return [id, harness] as const;
    const wires = harness.wires.map((wire) =>
      wire.id === wireId ? { ...wire, finishedMm: wire.finishedMm + 5 } : wire,
    );
    return [id, { ...harness, wires }] as const;
  });
  return new Map(entries);
}

const electric = new Electric();
electric.work(harnesses);
const all = [...solution.wires.keys()];
for (const [what, own] of [
  ["the same after one changed wire that carries current", ids],
  ["the same after one changed wire of any kind", all],
] as const) {
  const times = Array.from({ length: 60 }, (_, n) => {
    const longer = withLonger(own[(n * 37) % own.length] ?? "");
    const time = once(() => electric.work(longer));
    // Back again, so that each change is one wire's.
    electric.work(harnesses);
    return time;
  });
  rows.push(figures(what, times.slice(20)));
}
writeResults("circuit", rows);
