/**
 * Holds fault finding against what the simulated circuit did with random faults (`faults-simulated.ts`): how often the true
 * cause comes first, how many looks it takes, whether two faults at once are found. Writes `results/faults.json`.
 *
 *     npx tsx prove/faults.ts [METERED]
 *
 * METERED: faults whose every measurement is made in ngspice too.
 */
import {
  FaultFinder,
  faultFileOf,
  likeliest,
  openFaultFile,
  Says,
  type Seen,
  type SessionLook,
  type Symptom,
} from "../packages/engine/src/index.ts";
import type { FaultBench } from "./faults/bench-of-faults.ts";
import { type Found, sessionOfTruth } from "./faults/session-of-truth.ts";
import { outcomeSymptoms, readSimulated } from "./faults/simulated.ts";
import { tidewatchFaults } from "./faults/tidewatch.ts";
import { whatLooksSay } from "./faults/told-apart.ts";
import { writeJson } from "./write-json.ts";

const [metered = 200] = process.argv.slice(2).map(Number);
const ANSWERS = 5;
/** A meter beeps below this, and volts count as there from this share on: what the words beside a reading say. */
const BEEPS_BELOW_OHM = 1;
const ENOUGH_VOLTS = 0.6;

const { line, model, suspects, hash, bench: setUp } = await tidewatchFaults();
const simulated = readSimulated();
if (simulated === null || simulated.hash !== hash)
  throw new Error("Tidewatch was not simulated as it is now: run prove/faults-simulated.ts first");

const opened = openFaultFile(faultFileOf(line));
const { table } = opened;
const ids = model.functions.map(({ id }) => id);
const tried = new Set(simulated.tried.map((id) => ids.indexOf(id)));
const indexOf = new Map(suspects.map(({ id }, s) => [id, s]));
const classOf = new Map(table.classes.flatMap((one, c) => one.suspects.map((s) => [s, c] as const)));
const finder = new FaultFinder(opened);
const says = new Says(opened.model, table);
const tellOf = whatLooksSay(opened);

const text = (symptoms: ReadonlyMap<number, Symptom>): string =>
  [...symptoms]
    .filter(([f]) => tried.has(f))
    .sort(([f], [g]) => f - g)
    .map(([f, symptom]) => `${ids[f]} ${symptom}`)
    .join(", ");
const seenOf = (symptoms: ReadonlyMap<number, Symptom>): ReadonlyMap<number, Seen> =>
  new Map([...tried].map((f) => [f, symptoms.get(f) ?? "works"]));

/** Bits that are open between the groups of a class that looks can tell apart (Shannon 1948). */
const openBits = new Map<number, number>();
function bitsOf(c: number): number {
  const known = openBits.get(c);
  if (known !== undefined) return known;
  const groups = new Map<string, number>();
  for (const s of table.classes[c]?.suspects ?? [])
    groups.set(tellOf(s), (groups.get(tellOf(s)) ?? 0) + (suspects[s]?.odds ?? 0));
  const all = [...groups.values()].reduce((sum, odds) => sum + odds, 0);
  const bits = [...groups.values()].reduce((sum, odds) => sum - (odds / all) * Math.log2(odds / all), 0);
  openBits.set(c, bits);
  return bits;
}

/** What looks say of a suspect in the model; measurements in the simulated circuit where there is one. */
function answerer(s: number, bench: FaultBench | null): (look: SessionLook) => boolean {
  const suspect = suspects[s];
  let volts: ReturnType<FaultBench["volts"]> | null = null;
  return (look) => {
    if (bench !== null && suspect !== undefined && look.kind === "ohms")
      return bench.ohms([suspect], look.a, look.b) < BEEPS_BELOW_OHM;
    if (bench !== null && suspect !== undefined && look.kind === "volts") {
      volts ??= bench.volts([suspect]);
      const source = opened.file.sources.find(({ id }) => id === look.source);
      const minus = opened.file.nodes[source?.minus ?? -1] ?? "";
      return volts(look.node, minus) > ENOUGH_VOLTS * (source?.volts ?? 0);
    }
    return (says.chance(look, [s]) ?? 0) > 0.5;
  };
}

interface Sum {
  faults: number;
  weight: number;
  questions: number;
  bits: number;
  minutes: number;
  notFound: number;
  readonly byKind: Record<string, number>;
  readonly answersMs: number[];
}
const newSum = (): Sum => ({
  ...{ faults: 0, weight: 0, questions: 0, bits: 0, minutes: 0, notFound: 0 },
  byKind: {},
  answersMs: [],
});
function add(sum: Sum, weight: number, bits: number, found: Found): void {
  sum.answersMs.push(...found.answersMs);
  if (!found.isFound) {
    sum.notFound++;
    return;
  }
  sum.faults++;
  sum.weight += weight;
  sum.questions += weight * found.questions;
  sum.minutes += weight * found.minutes;
  sum.bits += weight * bits;
  for (const [kind, count] of Object.entries(found.byKind))
    sum.byKind[kind] = (sum.byKind[kind] ?? 0) + count;
}
const round = (value: number): number => Math.round(value * 1000) / 1000;
/** Of the faults that were found; the others stand beside. */
const told = ({ faults, weight, questions, bits, minutes, notFound, byKind }: Sum) => ({
  faults,
  meanQuestions: round(questions / weight),
  entropyBits: round(bits / weight),
  ratio: round(questions / bits),
  meanMinutes: round(minutes / weight),
  notFound,
  byKind,
});

const single = {
  agree: 0,
  visible: 0,
  classFirst: 0,
  classAmongFive: 0,
  tellable: 0,
  tellableFirst: 0,
  unsolved: 0,
};
const apart: Record<string, string>[] = [];
const byModel = newSum();
const byMeter = newSum();
const outcomeCount = new Map<number, number>();
for (const [, outcome] of simulated.single) outcomeCount.set(outcome, (outcomeCount.get(outcome) ?? 0) + 1);
const bench = metered > 0 ? setUp() : null;

for (const [n, [id, outcome]] of simulated.single.entries()) {
  const s = indexOf.get(id) ?? -1;
  const suspect = suspects[s];
  if (suspect === undefined || outcome < 0) {
    single.unsolved++;
    continue;
  }
  const symptoms = outcomeSymptoms(simulated, model, outcome);
  const [said, own] = [text(symptoms), text(model.symptoms([suspect.fault]))];
  if (said === own) single.agree++;
  else apart.push({ suspect: id, simulated: said.slice(0, 200), model: own.slice(0, 200) });
  if (symptoms.size === 0) continue;
  single.visible++;
  const answers = likeliest(table, seenOf(symptoms), ANSWERS);
  // Classes that do the same to all that is tried are one.
  const isTheClass = (c: number): boolean =>
    table.classes[c]?.suspects.includes(s) === true ||
    (said === own && text(table.classes[c]?.symptoms ?? new Map()) === own);
  const place = answers.findIndex(({ classes }) => classes.some(isTheClass));
  if (place === 0) single.classFirst++;
  else apart.push({ suspect: id, place: String(place + 1), simulated: said.slice(0, 200) });
  if (place >= 0) single.classAmongFive++;
  const c = classOf.get(s) ?? -1;
  if (table.classes[c]?.suspects.length === 1 && outcomeCount.get(outcome) === 1) {
    single.tellable++;
    if (place === 0) single.tellableFirst++;
  }
  if (c < 0) continue;
  const byId = new Map([...symptoms].map(([f, symptom]) => [ids[f] ?? "", symptom]));
  // What the simulation does not try is said as the model has it.
  for (const [f, symptom] of table.classes[c]?.symptoms ?? [])
    if (!tried.has(f)) byId.set(ids[f] ?? "", symptom);
  const run = (by: FaultBench | null): Found =>
    sessionOfTruth(
      finder,
      ids,
      byId,
      answerer(s, by),
      (other) => other === s || (other >= 0 && tellOf(other) === tellOf(s)),
      (other) => suspects[other]?.id ?? "",
    );
  add(byModel, suspect.odds, bitsOf(c), run(null));
  if (bench !== null && byMeter.faults < metered) add(byMeter, suspect.odds, bitsOf(c), run(bench));
  if ((n + 1) % 100 === 0) process.stderr.write(`${n + 1} of ${simulated.single.length}\n`);
}

const pairs = { pairs: 0, amongFive: 0, tellable: 0, tellableAmongFive: 0, tellableFirst: 0 };
for (const [p, q, outcome] of simulated.pairs) {
  const [a, b] = [indexOf.get(p) ?? -1, indexOf.get(q) ?? -1];
  if (outcome < 0 || a < 0 || b < 0) continue;
  const symptoms = outcomeSymptoms(simulated, model, outcome);
  const alone = [a, b].map((s) => text(table.classes[classOf.get(s) ?? -1]?.symptoms ?? new Map()));
  const answers = likeliest(table, seenOf(symptoms), ANSWERS);
  const place = answers.findIndex(({ classes: [one = -1, other = -1] }) => {
    const has = (c: number, s: number): boolean => table.classes[c]?.suspects.includes(s) === true;
    return (has(one, a) && has(other, b)) || (has(one, b) && has(other, a));
  });
  pairs.pairs++;
  if (place >= 0) pairs.amongFive++;
  // Where one hides the other, the symptoms are those of one fault alone.
  if (alone.includes(text(symptoms))) continue;
  pairs.tellable++;
  if (place >= 0) pairs.tellableAmongFive++;
  if (place === 0) pairs.tellableFirst++;
}

const sorted = byModel.answersMs.toSorted((p, q) => p - q);
const at = (share: number): number => Math.round(sorted[Math.floor(share * (sorted.length - 1))] ?? 0);
writeJson("faults.json", {
  seed: simulated.seed,
  faults: simulated.single.length,
  functionsTried: tried.size,
  functions: ids.length,
  ...single,
  looks: told(byModel),
  looksMeteredInNgspice: told(byMeter),
  twoAtOnce: pairs,
  answersMs: { count: sorted.length, median: at(0.5), p99: at(0.99), most: at(1) },
  apart: apart.slice(0, 100),
});
