import type {
  Comparison,
  FactNames,
  LineResult,
  MachineChange,
  SheetFact,
  SizedWire,
} from "../../packages/engine/src/index.ts";
import { changeSentence, subjectName } from "../../packages/words/src/index.ts";
import type { ScriptedChange } from "./script.ts";

export interface Held {
  readonly before: LineResult;
  readonly after: LineResult;
  readonly comparison: Comparison;
  readonly names: FactNames;
}

/** What is said of what was done; all the rest follows from it. */
const DONE: ReadonlySet<MachineChange["what"]> = new Set([
  ...(["new", "gone", "renamed", "moved", "turned", "put-on", "type", "named", "uses", "joined"] as const),
  ...(["field", "row-new", "row-gone", "decided", "undecided", "drawn"] as const),
]);

/** Everything that is said and should not be, or should be and is not. */
export function disagreements(change: ScriptedChange, held: Held): string[] {
  return [
    ...doneOf(change, held),
    // An id that is another is another for everything: only what was done is held against the script then.
    ...(change.name.startsWith("another id")
      ? []
      : [...wiresOf(held), ...stepsOf(held), ...findingsOf(held)]),
    ...countsOf(held),
  ];
}

const differ = (what: string, expected: readonly string[], found: readonly string[]): string[] => {
  const [p, q] = [expected.toSorted(), found.toSorted()];
  return JSON.stringify(p) === JSON.stringify(q)
    ? []
    : [`${what}: expected ${JSON.stringify(p).slice(0, 400)}, found ${JSON.stringify(q).slice(0, 400)}`];
};

function doneOf({ says }: ScriptedChange, { comparison, names }: Held): string[] {
  const said = comparison.groups.flatMap(({ subject, changes }) =>
    changes
      .filter(({ what }) => DONE.has(what))
      .map((one) => ({
        one,
        text: `${subjectName("en", subject)}: ${changeSentence("en", subject, one, names)}`,
      })),
  );
  if (says.length > 0)
    return differ(
      "what was done",
      says,
      said.map(({ text }) => text),
    );
  const areEnds = said.length > 0 && said.every(({ one }) => one.what === "uses" || one.what === "joined");
  const [first] = said;
  const isOneField = said.length === 1 && (first?.one.what === "field" || first?.one.what === "moved");
  return areEnds || isOneField
    ? []
    : [`one thing was done, said is ${JSON.stringify(said.map(({ text }) => text))}`];
}

const wiresIn = ({ harnesses }: LineResult): ReadonlyMap<string, readonly [string, SizedWire]> =>
  new Map(
    [...harnesses.values()].flatMap(({ harness, wires }) =>
      wires.map((wire) => [wire.id, [`${harness.number}-${wire.number}`, wire]] as const),
    ),
  );

/** Every wire that is another is named, and none that is not; lengths by as much as they differ. */
function wiresOf({ before, after, comparison }: Held): string[] {
  const [old, now] = [wiresIn(before), wiresIn(after)];
  const changed = new Set<string>();
  const lengths: string[] = [];
  const loose = new Set<string>();
  for (const [id, [number, wire]] of now) {
    const was = old.get(id);
    if (was === undefined) {
      loose.add(number);
      continue;
    }
    const mm = wire.finishedMm - was[1].finishedMm || wire.cutMm - was[1].cutMm;
    if (mm !== 0) lengths.push(`${number} ${mm}`);
    const same =
      number === was[0] && wire.colour === was[1].colour && wire.wireType.id === was[1].wireType.id;
    if (!same || mm !== 0) changed.add(number);
  }
  for (const [id, [number]] of old) if (!now.has(id)) loose.add(number);
  const said = new Set<string>();
  const saidLengths: string[] = [];
  for (const { what, values } of comparison.groups.flatMap(({ changes }) => changes)) {
    if (what === "wires" && Array.isArray(values.wires) && Array.isArray(values.mms))
      values.wires.forEach((wire, i) => {
        said.add(String(wire));
        saidLengths.push(`${String(wire)} ${String(Array.isArray(values.mms) ? values.mms[i] : "")}`);
      });
    else if (what === "wire-number") said.add(String(values.to));
    else if (what.startsWith("wire-")) {
      said.add(String(values.wire));
      if (what === "wire-length") saidLengths.push(`${String(values.wire)} ${String(values.mm)}`);
    }
  }
  const isLoose = (text: string): boolean => loose.has(text.split(" ")[0] ?? "");
  return [
    ...differ(
      "wires",
      [...changed].filter((number) => !loose.has(number)),
      [...said].filter((number) => !loose.has(number)),
    ),
    ...[...loose].filter((number) => !said.has(number)).map((number) => `nothing is said of wire ${number}`),
    ...differ(
      "lengths",
      lengths.filter((text) => !isLoose(text)),
      saidLengths.filter((text) => !isLoose(text)),
    ),
  ];
}

function countsOf({ before, after, comparison }: Held): string[] {
  const [old, now] = [before.parts.bill.totals, after.parts.bill.totals];
  const isPart = (id: string): boolean =>
    (after.parts.bill.nodes.get(id) ?? before.parts.bill.nodes.get(id))?.kind === "part";
  const expected = [...new Set([...old.keys(), ...now.keys()])].filter(
    (id) => isPart(id) && old.get(id) !== now.get(id),
  );
  const found = comparison.groups
    .filter(({ subject }) => subject.table === "bill")
    .map(({ subject }) => subject.id);
  return differ("counts", expected, found);
}

function stepsOf({ before, after, comparison }: Held): string[] {
  const of = (what: MachineChange["what"]): readonly string[] =>
    comparison.groups.flatMap(({ subject, changes }) =>
      changes.some((change) => change.what === what) ? [subject.id] : [],
    );
  const [old, now] = [
    new Map(before.steps.steps.map((step) => [step.id, step])),
    new Map(after.steps.steps.map((step) => [step.id, step])),
  ];
  const both = [...now.keys()].filter((id) => old.has(id));
  const minutes = ({ seconds, times }: { seconds: number; times: number }): number =>
    Math.round((seconds * times) / 6);
  const holds = (id: string): string => {
    const [p, q] = [old.get(id), now.get(id)];
    return JSON.stringify([p?.itemIds, p?.fastenerIds]) === JSON.stringify([q?.itemIds, q?.fastenerIds])
      ? ""
      : id;
  };
  const order = before.steps.steps.flatMap(({ id }) => now.get(id)?.number ?? []);
  return [
    ...differ(
      "steps that are new",
      [...now.keys()].filter((id) => !old.has(id)),
      of("step-new"),
    ),
    ...differ(
      "steps that are gone",
      [...old.keys()].filter((id) => !now.has(id)),
      of("step-gone"),
    ),
    ...differ(
      "steps of other content",
      both.map(holds).filter((id) => id !== ""),
      of("step-content"),
    ),
    ...differ(
      "steps of other time",
      both.filter((id) => {
        const [p, q] = [old.get(id), now.get(id)];
        return p !== undefined && q !== undefined && minutes(p) !== minutes(q);
      }),
      of("step-minutes"),
    ),
    ...differ(
      "steps that moved",
      [String(order.length - longestRisingOf(order))],
      [String(of("step-order").length)],
    ),
  ];
}

/** Length of a longest rising subsequence, by trying every end. */
function longestRisingOf(numbers: readonly number[]): number {
  const best: number[] = [];
  numbers.forEach((number, i) => {
    best[i] =
      1 + Math.max(0, ...numbers.slice(0, i).flatMap((other, j) => (other < number ? [best[j] ?? 0] : [])));
  });
  return Math.max(0, ...best);
}

function findingsOf({ before, after, comparison }: Held): string[] {
  const counted = (of: LineResult): ReadonlyMap<string, number> => {
    const counts = new Map<string, number>();
    for (const { rule, severity, subjects } of of.findings) {
      const key = `${severity}:${rule} ${subjects.join(" ")}`;
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
    return counts;
  };
  const [old, now] = [counted(before), counted(after)];
  const more = (p: ReadonlyMap<string, number>, q: ReadonlyMap<string, number>): readonly string[] => [
    ...new Set(
      [...p]
        .filter(([key, count]) => count > (q.get(key) ?? 0))
        .map(([key]) => key.slice(key.indexOf(":") + 1)),
    ),
  ];
  const of = (what: MachineChange["what"]): readonly string[] =>
    comparison.groups.flatMap(({ subject, changes }) =>
      changes.some((change) => change.what === what) ? [subject.id] : [],
    );
  return [
    ...differ("findings that are new", more(now, old), of("finding-new")),
    ...differ("findings that are gone", more(old, now), of("finding-gone")),
  ];
}

/** The sheets that are told are exactly those whose bodies differ. */
export function sheetDisagreements(
  before: readonly SheetFact[],
  after: readonly SheetFact[],
  { sheets }: Comparison,
): string[] {
  const bodies = (list: readonly SheetFact[]): ReadonlyMap<string, string> =>
    new Map(list.map(({ id, bodyHash }) => [id, bodyHash]));
  const [old, now] = [bodies(before), bodies(after)];
  const expected = [...new Set([...old.keys(), ...now.keys()])].filter((id) => old.get(id) !== now.get(id));
  return differ(
    "sheets",
    expected,
    sheets.map(({ id }) => id),
  );
}
