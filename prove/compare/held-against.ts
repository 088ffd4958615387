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
  ...(["pin-harness", "pin-options", "acceptance-new", "acceptance-gone", "acceptance-changed"] as const),
]);

/** Everything that is said and should not be, or should be and is not. */
export function disagreements(change: ScriptedChange, held: Held): string[] {
  return [
    ...doneOf(change, held),
    ...followsOf(change, held),
    ...sayingOf(held),
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

/** Everything that is said, with its subject, in a language. */
const saidOf = ({ comparison, names }: Held, language: "en" | "zh") =>
  comparison.groups.flatMap(({ subject, changes }) =>
    changes.map((one) => ({
      what: one.what,
      text: `${subjectName(language, subject)}: ${changeSentence(language, subject, one, names)}`,
    })),
  );

/** What was done is said in exactly these sentences. */
const doneOf = ({ says }: ScriptedChange, held: Held): string[] =>
  differ(
    "what was done",
    says,
    saidOf(held, "en").flatMap(({ what, text }) => (DONE.has(what) ? [text] : [])),
  );

function followsOf({ follows }: ScriptedChange, held: Held): string[] {
  const said = new Set(saidOf(held, "en").map(({ text }) => text));
  return follows.filter((text) => !said.has(text)).map((text) => `not said: ${text}`);
}

/** Nothing is said twice in either language, and no sentence has a hole in it. */
function sayingOf(held: Held): string[] {
  return (["en", "zh"] as const).flatMap((language) => {
    const texts = saidOf(held, language).map(({ text }) => text);
    const twice = texts.filter((text, i) => texts.indexOf(text) !== i);
    const holes = texts.filter((text) => /undefined|\bNaN\b|\[object|\{\w+\}/u.test(text));
    return [
      ...twice.map((text) => `said twice in ${language}: ${text}`),
      ...holes.map((text) => `a hole in ${language}: ${text}`),
    ];
  });
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
    else if (what === "wire-number") {
      said.add(String(values.to));
      if (loose.has(String(values.from))) said.add(String(values.from));
    } else if (what.startsWith("wire-")) {
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

/** Findings of a rule about the same things, by these. */
function findingsBy({ findings }: LineResult): ReadonlyMap<string, LineResult["findings"]> {
  const by = new Map<string, LineResult["findings"]>();
  for (const finding of findings) {
    const key = `${finding.rule} ${finding.subjects.join(" ")}`;
    by.set(key, [...(by.get(key) ?? []), finding]);
  }
  return by;
}

/** New ones, gone ones, those of which only numbers differ, and what is accepted, each as the line has it. */
function findingsOf({ before, after, comparison }: Held): string[] {
  const [old, now] = [findingsBy(before), findingsBy(after)];
  const keys = [...new Set([...old.keys(), ...now.keys()])];
  const of = (what: MachineChange["what"]): readonly string[] =>
    comparison.groups.flatMap(({ subject, changes }) =>
      changes.some((change) => change.what === what) ? [subject.id] : [],
    );
  const count = (list: LineResult["findings"] | undefined, severity: string): number =>
    (list ?? []).filter((one) => one.severity === severity).length;
  const changed = (grows: boolean): readonly string[] =>
    keys.filter((key) =>
      ["error", "warning", "note"].some((severity) => {
        const by = count(now.get(key), severity) - count(old.get(key), severity);
        return grows ? by > 0 : by < 0;
      }),
    );
  const figures = (list: LineResult["findings"] | undefined): string =>
    (list ?? [])
      .map(({ severity, numbers }) => JSON.stringify([severity, Object.entries(numbers).sort()]))
      .sort()
      .join();
  const isChanged = new Set([...changed(true), ...changed(false)]);
  const accepted = (list: LineResult["findings"] | undefined): number =>
    (list ?? []).filter((one) => one.accepted !== null).length;
  const both = (is: (was: number, now: number) => boolean): readonly string[] =>
    keys.filter((key) => now.has(key) && is(accepted(old.get(key)), accepted(now.get(key))));
  return [
    ...differ("findings that are new", changed(true), of("finding-new")),
    ...differ("findings that are gone", changed(false), of("finding-gone")),
    ...differ(
      "findings of other numbers",
      keys.filter((key) => !isChanged.has(key) && figures(old.get(key)) !== figures(now.get(key))),
      of("finding-numbers").filter((key) => !isChanged.has(key)),
    ),
    ...differ(
      "findings that were accepted",
      both((was, is) => is > was),
      of("accepted"),
    ),
    ...differ(
      "findings that are no longer accepted",
      both((was, is) => is < was),
      of("no-longer-accepted"),
    ),
  ];
}

/** The sheets that are told are exactly those whose bodies differ, with exactly the pages that differ. */
export function sheetDisagreements(
  before: readonly SheetFact[],
  after: readonly SheetFact[],
  { sheets }: Comparison,
): string[] {
  const byId = (list: readonly SheetFact[]): ReadonlyMap<string, SheetFact> =>
    new Map(list.map((sheet) => [sheet.id, sheet]));
  const [old, now] = [byId(before), byId(after)];
  const pagesOf = (id: string): string => {
    const [was, is] = [old.get(id)?.pageHashes ?? [], now.get(id)?.pageHashes ?? []];
    return is.flatMap((hash, i) => (hash === was[i] ? [] : [i + 1])).join(" ");
  };
  const expected = [...new Set([...old.keys(), ...now.keys()])]
    .filter((id) => old.get(id)?.bodyHash !== now.get(id)?.bodyHash)
    .map((id) => `${id}: ${pagesOf(id)}`);
  return differ(
    "sheets",
    expected,
    sheets.map(({ id, pages }) => `${id}: ${pages.join(" ")}`),
  );
}
