/**
 * Solves 200 random machines, each at all nine corners in turn and in a random moment, and the same with Debian's
 * ngspice from netlists made of elements and wires alone; writes how far the voltages of all nodes are apart to
 * `results/circuit.csv`.
 *
 *     npx tsx prove/circuit.ts
 */
import { seededRandom } from "@pinwright/kernel";
import { CORNERS } from "../packages/engine/src/electric/solve/corners.ts";
import { againstNgspice } from "../packages/engine/src/electric/testing/against-ngspice.ts";
import { NGSPICE_MISSING } from "../packages/engine/src/electric/testing/ngspice.ts";
import { randomMachine } from "../packages/engine/src/electric/testing/random-machine.ts";
import { writeResults } from "./write-results.ts";

if (NGSPICE_MISSING !== null) throw new Error(NGSPICE_MISSING);
const rows: string[] = [];
for (let seed = 1; seed <= 200; seed++) {
  const { machine, wires } = randomMachine(seed);
  const random = seededRandom(seed + 1000);
  const corner = CORNERS[seed % CORNERS.length];
  if (corner === undefined) continue;
  const found = againstNgspice(machine, wires, corner, () => random() < 0.5);
  rows.push(
    [
      seed,
      corner.contacts,
      corner.supply,
      corner.temperature,
      wires.length,
      found.nodes,
      found.turned,
      found.worstShare.toExponential(2),
      found.worstV.toExponential(2),
    ].join(","),
  );
}
writeResults(
  "circuit.csv",
  "seed,contacts,supply,temperature,wires,nodes,diodes_turned,worst_share,worst_v",
  rows,
);
process.stdout.write(`${rows.join("\n")}\n`);
