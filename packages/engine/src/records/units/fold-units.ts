import { type ArrivedFact, type Fact, SERVER_STREAM } from "@pinwright/contract";
import { compareText } from "@pinwright/kernel";
import type { Fitting, ReadingRecord, Source, StruckRecord, UnitState } from "./unit-state.ts";

type Writable<T> = { -readonly [K in keyof T]: T[K] };
type Draft = Writable<Omit<UnitState, "inside" | "within" | "steps" | "readings" | "defects">> & {
  inside: Fitting[];
  within: Fitting[];
  steps: Map<string, UnitState["steps"] extends ReadonlyMap<string, infer S> ? S : never>;
  readings: Map<string, ReadingRecord[]>;
  defects: Map<string, UnitState["defects"] extends ReadonlyMap<string, infer D> ? D : never>;
};

const empty = (unit: string): Draft => ({
  unit,
  begun: null,
  inside: [],
  within: [],
  steps: new Map(),
  readings: new Map(),
  defects: new Map(),
  struck: [],
  lots: [],
  alternates: [],
  overrides: [],
  notes: [],
  stage: "",
  site: "",
  onTheWay: null,
  released: null,
  minutes: 0,
});

/** In the order in which things happened: by time of the device, then stream and place in it. */
export const byTime = (a: Fact, b: Fact): number =>
  compareText(a.at, b.at) || compareText(a.stream, b.stream) || a.seq - b.seq;

const sourceOf = ({ stream, seq, at, person }: Fact): Source => ({ stream, seq, at, person });

/**
 * Facts that a later correction takes the place of, as `stream seq`. What the server wrote nobody corrects: a serial number
 * was given out, a unit was released.
 */
export const corrected = (facts: Iterable<Fact>): ReadonlySet<string> => {
  const gone = new Set<string>();
  for (const { body } of facts)
    if (body.kind === "correction" && body.stream !== SERVER_STREAM) gone.add(`${body.stream} ${body.seq}`);
  return gone;
};

/**
 * Facts with the time of the device, or that of their arrival where its clock is ahead: nothing is recorded before it
 * happens, and a reading from the future would count for ever as the last one.
 */
export const byArrival = (arrived: Iterable<ArrivedFact>): readonly Fact[] =>
  [...arrived].map(({ fact, receivedAt }) => (fact.at > receivedAt ? { ...fact, at: receivedAt } : fact));

/**
 * What the records say of every unit that they name. Facts may come in any order: they are taken by the time of the device
 * that wrote them, so that what a tablet sends late changes what it changes and nothing else. What was corrected does not
 * count.
 */
export function foldUnits(facts: readonly Fact[]): ReadonlyMap<string, UnitState> {
  const gone = corrected(facts);
  const units = new Map<string, Draft>();
  const of = (unit: string): Draft => {
    const known = units.get(unit);
    if (known !== undefined) return known;
    const made = empty(unit);
    units.set(unit, made);
    return made;
  };
  for (const fact of [...facts].sort(byTime))
    if (gone.has(`${fact.stream} ${fact.seq}`)) strike(fact, of);
    else take(fact, of);
  return units;
}

/** Notes a step or reading that was corrected: what it said is not forgotten. */
function strike(fact: Fact, of: (unit: string) => Draft): void {
  const { body } = fact;
  if (body.kind !== "step-done" && body.kind !== "reading") return;
  const unit = of(body.unit);
  const source = sourceOf(fact);
  const record: StruckRecord =
    body.kind === "step-done"
      ? { gate: "step", of: body.step, value: null, good: true, source }
      : { gate: "test", of: body.test, value: body.value ?? null, good: body.good, source };
  unit.struck = [...unit.struck, record];
}

function take(fact: Fact, of: (unit: string) => Draft): void {
  const { body } = fact;
  if (!isOfUnit(body)) return;
  const unit = of(body.unit);
  const source = sourceOf(fact);
  switch (body.kind) {
    case "begun": {
      const { kind: _, unit: _unit, ...begun } = body;
      unit.begun ??= { ...begun, source };
      break;
    }
    case "fitted": {
      leave(unit, of, source);
      const fitting = { place: body.place, from: source, until: null };
      // Whatever was at that place must have come out for this one to go in.
      const before = of(body.into).inside.find((one) => one.place === body.place && one.until === null);
      if (before !== undefined) leave(of(before.unit), of, source);
      unit.within.push({ ...fitting, unit: body.into });
      of(body.into).inside.push({ ...fitting, unit: body.unit });
      break;
    }
    case "removed":
      leave(unit, of, source);
      break;
    case "lot-used": {
      const { kind: _, unit: _unit, ...lot } = body;
      unit.lots = [...unit.lots, { ...lot, source }];
      break;
    }
    case "step-done":
      unit.minutes += body.minutes ?? 0;
      unit.steps.set(body.step, {
        step: body.step,
        minutes: body.minutes ?? 0,
        count: body.count ?? null,
        source,
      });
      break;
    case "reading": {
      const { test, good } = body;
      unit.minutes += body.minutes ?? 0;
      const reading = { test, value: body.value ?? null, good, instrument: body.instrument ?? "", source };
      unit.readings.set(test, [...(unit.readings.get(test) ?? []), reading]);
      break;
    }
    case "noted":
      unit.notes = [...unit.notes, { says: body.says, source }];
      break;
    case "defect": {
      const { defect, what, says, where } = body;
      const known = unit.defects.get(defect);
      if (known === undefined)
        unit.defects.set(defect, {
          ...{ defect, what, says, where },
          ...{ station: body.station ?? "", picture: body.picture ?? "", found: source, mended: null },
        });
      break;
    }
    case "mended": {
      unit.minutes += body.minutes ?? 0;
      const known = unit.defects.get(body.defect);
      const { cause, says } = body;
      if (known !== undefined)
        unit.defects.set(body.defect, {
          ...known,
          mended: { cause, says, minutes: body.minutes ?? 0, source },
        });
      break;
    }
    case "handed":
      unit.stage = body.stage;
      unit.site = body.site ?? unit.site;
      break;
    case "sent":
      unit.onTheWay = { transport: body.transport, to: body.to, source };
      break;
    case "arrived":
      unit.onTheWay = null;
      unit.site = body.site;
      break;
    case "alternate": {
      const { kind: _, unit: _unit, ...alternate } = body;
      unit.alternates = [...unit.alternates, { ...alternate, source }];
      break;
    }
    case "override": {
      const { kind: _, unit: _unit, ...override } = body;
      unit.overrides = [...unit.overrides, { ...override, source }];
      break;
    }
    case "released":
      unit.released = { ...source, heads: new Map(body.heads.map(([stream, seq]) => [stream, seq])) };
      break;
  }
}

type UnitBody = Exclude<
  Fact["body"],
  { kind: "correction" | "recall" | "recall-ended" | "problem" | "problem-note" | "problem-ended" }
>;

/** Whether a record is of a unit: recalls, problems and corrections are not. */
function isOfUnit(body: Fact["body"]): body is UnitBody {
  switch (body.kind) {
    case "correction":
    case "recall":
    case "recall-ended":
    case "problem":
    case "problem-note":
    case "problem-ended":
      return false;
    default:
      return true;
  }
}

/** Takes a unit out of whatever it is in. */
function leave(unit: Draft, of: (unit: string) => Draft, until: Source): void {
  const at = unit.within.findIndex((fitting) => fitting.until === null);
  const fitting = unit.within[at];
  if (fitting === undefined) return;
  unit.within[at] = { ...fitting, until };
  const parent = of(fitting.unit);
  const place = parent.inside.findIndex((one) => one.unit === unit.unit && one.until === null);
  const inside = parent.inside[place];
  if (inside !== undefined) parent.inside[place] = { ...inside, until };
}

/** Everything that is in a unit now, at any depth, itself not. */
export function contentsOf(units: ReadonlyMap<string, UnitState>, unit: string): readonly string[] {
  const found = new Set<string>();
  const todo = [unit];
  for (let at = todo.pop(); at !== undefined; at = todo.pop())
    for (const { unit: child, until } of units.get(at)?.inside ?? [])
      if (until === null && child !== unit && !found.has(child)) {
        found.add(child);
        todo.push(child);
      }
  return [...found].sort(compareText);
}
