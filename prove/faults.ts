/**
 * Puts random single faults into Tidewatch and simulates in ngspice what each does to every lamp, coil and switch; asks fault
 * finding for the likeliest causes of just that, and writes how often the true one comes first to `results/faults.json`.
 *
 *     npx tsx prove/faults.ts [COUNT [SEED]]
 */
import { fileURLToPath } from "node:url";
import { seededRandom } from "@pinwright/kernel";
import { emptyShop } from "../packages/book/src/index.ts";
import { readBook } from "../packages/book/src/io/index.ts";
import {
  FaultModel,
  FaultTable,
  Line,
  likeliest,
  machineFunctions,
  type Seen,
  type Suspect,
  type Symptom,
  serviceNetwork,
  suspectsOf,
} from "../packages/engine/src/index.ts";
import { FaultBench } from "./faults/bench-of-faults.ts";
import { writeJson } from "./write-json.ts";

const [count = 2000, seed = 8] = process.argv.slice(2).map(Number);
const ANSWERS = 5;

const { book, shop } = await readBook(fileURLToPath(new URL("../examples/tidewatch", import.meta.url)));
const { machine, harnesses } = new Line().run(book, shop ?? emptyShop());
const wires = [...harnesses.values()].flatMap((harness) => harness.wires);
const network = serviceNetwork(machine, wires);
const model = new FaultModel(network, machineFunctions(machine, network));
const suspects = suspectsOf(machine, network, model.functions, null);
const table = new FaultTable(model, suspects);
const bench = new FaultBench(machine, wires, network, model.functions);
const tried = new Set(bench.tried);

const random = seededRandom(seed);
const chosen: Suspect[] = [];
const left = [...suspects];
while (chosen.length < count && left.length > 0) {
  const at = Math.floor(random() * left.length);
  chosen.push(...left.splice(at, 1));
}

/** Only what is tried. */
const ofTried = (symptoms: ReadonlyMap<number, Symptom>): string =>
  [...symptoms]
    .filter(([f]) => tried.has(f))
    .map(([f, symptom]) => `${model.functions[f]?.itemId} ${symptom}`)
    .sort()
    .join(", ");

let visible = 0;
let agree = 0;
let firstClass = 0;
let amongFive = 0;
let tellable = 0;
let tellableFirst = 0;
const unsolved: string[] = [];
const apart: Record<string, string>[] = [];
for (const [i, suspect] of chosen.entries()) {
  const codes = suspect.fault.kind === "swapped" || suspect.fault.kind === "short";
  let simulated: ReadonlyMap<number, Symptom>;
  try {
    simulated = bench.symptoms(suspect, codes);
  } catch {
    // The simulator found no operating point: nothing is known of this one.
    unsolved.push(suspect.id);
    continue;
  }
  const said = ofTried(simulated);
  const own = ofTried(model.symptoms([suspect.fault]));
  if (said === own) agree++;
  else apart.push({ suspect: suspect.id, simulated: said.slice(0, 200), model: own.slice(0, 200) });
  if (simulated.size > 0) {
    visible++;
    const seen = new Map<number, Seen>(bench.tried.map((f) => [f, simulated.get(f) ?? "works"]));
    const answers = likeliest(table, seen, ANSWERS);
    const n = suspects.indexOf(suspect);
    const place = answers.findIndex(({ classes }) =>
      classes.some((c) => table.classes[c]?.suspects.includes(n)),
    );
    if (place === 0) firstClass++;
    if (place >= 0) amongFive++;
    const [alone] = table.classes.filter(({ suspects: all }) => all.includes(n));
    if (alone?.suspects.length === 1) {
      tellable++;
      if (place === 0) tellableFirst++;
    }
    if (place !== 0)
      apart.push({ suspect: suspect.id, place: String(place + 1), simulated: said.slice(0, 200) });
  }
  if ((i + 1) % 20 === 0)
    process.stderr.write(
      `${i + 1}: agree ${agree}, visible ${visible}, class first ${firstClass}, simulations ${bench.simulations}\n`,
    );
}
writeJson("faults.json", {
  seed,
  faults: chosen.length,
  functionsTried: tried.size,
  unsolved,
  simulations: bench.simulations,
  agree,
  visible,
  classFirst: firstClass,
  classAmongFive: amongFive,
  tellable,
  tellableFirst,
  apart: apart.slice(0, 200),
});
