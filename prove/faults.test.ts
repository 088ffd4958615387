import { expect, test } from "vitest";
import { NGSPICE_MISSING } from "../packages/engine/src/electric/testing/ngspice.ts";
import type { SuspectKind } from "../packages/engine/src/index.ts";
import { outcomeSymptoms, outcomeText, readSimulated } from "./faults/simulated.ts";
import { tidewatchFaults } from "./faults/tidewatch.ts";

/** Kinds of which one is simulated; `faults-simulated.ts` does so with many of all. */
const KINDS: readonly SuspectKind[] = [
  "contact-open",
  "fuse-open",
  "switch-closed",
  "load-shorted",
  "driver-open",
  "driver-closed",
];
/** Share of the faults that do in the model just what they did in the simulated circuit. */
const AGREES = 0.99;

test("faults do in the simulated circuit what the model says of them, a few simulated anew and all that were", {
  timeout: 300_000,
}, async () => {
  if (NGSPICE_MISSING !== null) throw new Error(NGSPICE_MISSING);
  const { model, suspects, suspectOf, hash, bench: setUp } = await tidewatchFaults();
  const bench = setUp();
  expect(bench.tried.length).toBeGreaterThan(270);
  const own = (id: string): string => {
    const fault = suspectOf.get(id)?.fault;
    return outcomeText(bench.tried, fault === undefined ? new Map() : model.symptoms([fault]));
  };
  for (const kind of KINDS) {
    const all = suspects.filter((one) => one.kind === kind && model.symptoms([one.fault]).size > 0);
    const one = all[Math.floor(all.length / 2)];
    if (one === undefined) throw new Error(`no ${kind} shows`);
    expect(outcomeText(bench.tried, bench.symptoms([one])), one.id).toBe(own(one.id));
  }
  const kept = readSimulated();
  // Tidewatch was changed since: run `npx tsx prove/faults-simulated.ts` and `npx tsx prove/faults.ts`.
  expect(kept?.hash).toBe(hash);
  if (kept === null) return;
  const solved = kept.single.filter(([, outcome]) => outcome >= 0);
  const same = solved.filter(
    ([id, outcome]) => own(id) === outcomeText(bench.tried, outcomeSymptoms(kept, model, outcome)),
  );
  expect(solved.length).toBeGreaterThan(500);
  expect(same.length / solved.length).toBeGreaterThan(AGREES);
});
