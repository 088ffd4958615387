import {
  bookPlaces,
  type LineResult,
  learntLoads,
  type Machine,
  planStations,
  type StationPlan,
  type StationQuestion,
  type StationScenario,
  stationScenarios,
  USUAL_UNITS,
} from "@pinwright/engine";
import type { Command, CommandCall } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, loadBook, runLine } from "../load.ts";
import { numberOption } from "../number-option.ts";
import { STATUS, UsageError } from "../terminal.ts";
import { textTable } from "../text-table.ts";

/** Signs of the longest bar of a chart. */
const BAR = 40;

const minutes = (seconds: number): string => (seconds / 60).toFixed(1);
const bar = (share: number): string => "#".repeat(Math.round(BAR * Math.min(1, Math.max(0, share))));

function askOf(call: CommandCall, machine: Machine): StationQuestion["ask"] {
  const takt = numberOption(call, "takt", (n) => n > 0, "minutes over 0");
  const places = numberOption(call, "places", (n) => Number.isInteger(n) && n >= 1, "a whole number from 1");
  if (takt !== undefined && places !== undefined)
    throw new UsageError("--takt and --places: expected one of them");
  if (takt !== undefined) return { kind: "fewest-places", taktS: takt * 60 };
  if (places !== undefined) return { kind: "least-takt", places };
  if (machine.book.tables.stations.length > 0) return { kind: "book-stations" };
  return { kind: "fewest-places", taktS: machine.shop.numbers.takt_min * 60 };
}

function questionOf(call: CommandCall, machine: Machine): StationQuestion {
  const ask = askOf(call, machine);
  const absent = call.texts("absent");
  const known = bookPlaces(machine, []).map((place) => place.id);
  for (const id of absent)
    if (ask.kind === "book-stations" && !known.includes(id))
      throw new UsageError(`--absent ${id}: there is no such place; there are ${known.join(", ")}`);
  const longerPct = numberOption(call, "longer", (n) => n > -100, "per cent over -100") ?? 0;
  return { ask, absent, longerPct, skills: call.flag("skills") };
}

function boundText({ question: { ask }, loads, taktS, lowerBound, isProven }: StationPlan): string {
  if (ask.kind === "fewest-places") {
    const bound = isProven ? "no plan has fewer" : `no plan has fewer than ${lowerBound}`;
    return `takt asked for: ${minutes(ask.taktS)} min; places: ${loads.length}, ${bound}; longest load: ${minutes(taktS)} min`;
  }
  const gap = lowerBound > 0 ? (100 * (taktS - lowerBound)) / lowerBound : 0;
  const bound = isProven
    ? "no plan is shorter"
    : `no plan is below ${minutes(lowerBound)} min (${gap.toFixed(1)} % less)`;
  return `places: ${loads.length}; takt: ${minutes(taktS)} min, ${bound}`;
}

function chartText({ loads, taktS }: StationPlan, numbers: ReadonlyMap<string, number>): string {
  const rows = loads.map((load) => [
    load.placeId,
    minutes(load.seconds),
    `${taktS > 0 ? ((100 * load.seconds) / taktS).toFixed(0) : 0} %`,
    bar(taktS > 0 ? load.seconds / taktS : 0).padEnd(BAR),
    load.beside ? "beside" : "",
    spans(load.stepIds.map((id) => numbers.get(id) ?? 0)),
  ]);
  return textTable([["place", "min", "load", "", "", "steps"], ...rows], new Set([1, 2]));
}

/** `1-4 7 9-12` */
function spans(numbers: readonly number[]): string {
  const texts: string[] = [];
  for (let i = 0; i < numbers.length; ) {
    let end = i;
    while (numbers[end + 1] === (numbers[end] ?? 0) + 1) end++;
    texts.push(end === i ? `${numbers[i]}` : `${numbers[i]}-${numbers[end]}`);
    i = end + 1;
  }
  return texts.join(" ");
}

function openText({ unplaced, waysBack }: StationPlan): string {
  const lines = [
    ...unplaced.map(({ stepId, skill, why }) =>
      why === "skill"
        ? `nobody can do ${stepId}: it needs the skill ${skill}`
        : `${stepId} by itself takes longer than the takt`,
    ),
    ...waysBack.map(
      ({ beforeId, afterId }) => `the panel goes back along the line between ${beforeId} and ${afterId}`,
    ),
  ];
  return lines.map((line) => `${line}\n`).join("");
}

/** Bench by bench over the run. */
function learningText(machine: Machine, plan: StationPlan): string {
  const loads = learntLoads(machine, plan);
  const heads = ["place", ...USUAL_UNITS.map((unit) => `no. ${unit}`)];
  const rows = plan.loads.map((load, i) => [
    load.placeId,
    ...loads.map(({ seconds }) => minutes(seconds[i] ?? 0)),
  ]);
  const takts = ["takt", ...loads.map(({ taktS }) => minutes(taktS))];
  const right = new Set(heads.map((_, i) => i).slice(1));
  return `Minutes of each place for machine no. …, at ${machine.shop.numbers.learning_pct} % learning\n${textTable([heads, ...rows, takts], right)}\n`;
}

function scenariosText(scenarios: readonly StationScenario[]): string {
  const rows = scenarios.map(({ id, plan, worst }) => [
    id,
    minutes(plan.taktS),
    minutes(plan.lowerBound),
    String(plan.unplaced.length),
    worst ? "worst absence" : "",
  ]);
  return `${textTable([["day", "takt min", "at least", "undone", ""], ...rows], new Set([1, 2, 3]))}\n`;
}

function report(line: LineResult, call: CommandCall): string {
  if (call.flag("scenarios")) return scenariosText(stationScenarios(line));
  const plan = planStations(line, questionOf(call, line.machine));
  const numbers = new Map(line.steps.steps.map((step) => [step.id, step.number]));
  const parts = [`${boundText(plan)}\n`, `${chartText(plan, numbers)}\n`, openText(plan)];
  if (call.flag("learning")) parts.push(learningText(line.machine, plan));
  return parts.filter((part) => part !== "").join("\n");
}

function asJson(line: LineResult, call: CommandCall): string {
  const { id, revision } = line.machine.book.machine;
  if (call.flag("scenarios")) {
    const scenarios = stationScenarios(line);
    return `${JSON.stringify({ machine: id, revision, scenarios }, null, 2)}\n`;
  }
  const plan = planStations(line, questionOf(call, line.machine));
  const learning = learntLoads(line.machine, plan);
  return `${JSON.stringify({ machine: id, revision, ...plan, learning }, null, 2)}\n`;
}

/** Shares the steps out to stations and tells loads, takt and what no plan can beat. */
export const stationsCommand: Command = {
  name: "stations",
  operands: "BOOK",
  about: "share the steps out to the book's stations, to the fewest places for a takt, or to so many places",
  count: [1, 1],
  options: {
    ...BOOK_OPTIONS,
    takt: { type: "string", value: "MIN", about: "fewest places at which each takes no longer than this" },
    places: { type: "string", value: "N", about: "least takt of so many places" },
    absent: { type: "string", multiple: true, value: "PLACE", about: "without this person: station:number" },
    longer: { type: "string", value: "PCT", about: "everything takes so much longer" },
    skills: { type: "boolean", about: "each step only where its skill is" },
    learning: { type: "boolean", about: "loads of the first machine and later ones of a run" },
    scenarios: { type: "boolean", about: "a usual day, each person absent, 30 % longer, and by skills" },
    json: { type: "boolean", about: "write all of it as JSON" },
  },
  run: async (call, terminal) => {
    const loaded = await loadBook(call);
    for (const fault of loaded.faults) terminal.err(`${faultText(fault)}\n`);
    if (fatalFaults(loaded.faults).length > 0) return STATUS.failed;
    const line = runLine(loaded);
    terminal.out(call.flag("json") ? asJson(line, call) : report(line, call));
    return STATUS.good;
  },
};
