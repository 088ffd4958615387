import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { emptyShop } from "../packages/book/src/index.ts";
import { readBook } from "../packages/book/src/io/index.ts";
import { NGSPICE_MISSING } from "../packages/engine/src/electric/testing/ngspice.ts";
import {
  FaultModel,
  Line,
  machineFunctions,
  type SuspectKind,
  serviceNetwork,
  suspectsOf,
} from "../packages/engine/src/index.ts";
import { FaultBench } from "./faults/bench-of-faults.ts";

/** Kinds of which one is simulated; `faults.ts` does so with many of all. */
const KINDS: readonly SuspectKind[] = [
  "contact-open",
  "fuse-open",
  "switch-closed",
  "load-shorted",
  "driver-open",
];

test("a few faults do in the simulated circuit what the model says of them", {
  timeout: 300_000,
}, async () => {
  if (NGSPICE_MISSING !== null) throw new Error(NGSPICE_MISSING);
  const { book, shop } = await readBook(fileURLToPath(new URL("../examples/tidewatch", import.meta.url)));
  const { machine, harnesses } = new Line().run(book, shop ?? emptyShop());
  const wires = [...harnesses.values()].flatMap((harness) => harness.wires);
  const network = serviceNetwork(machine, wires);
  const model = new FaultModel(network, machineFunctions(machine, network));
  const suspects = suspectsOf(machine, network, model.functions, null);
  const bench = new FaultBench(machine, wires, network, model.functions);
  expect(bench.tried.length).toBeGreaterThan(270);
  const tried = new Set(bench.tried);
  for (const kind of KINDS) {
    const all = suspects.filter((one) => one.kind === kind && model.symptoms([one.fault]).size > 0);
    const one = all[Math.floor(all.length / 2)];
    if (one === undefined) throw new Error(`no ${kind} shows`);
    const said = [...model.symptoms([one.fault])].filter(([f]) => tried.has(f));
    const simulated = [...bench.symptoms(one, false)].sort(([f], [g]) => f - g);
    expect(simulated, one.id).toEqual(said.sort(([f], [g]) => f - g));
  }
});
