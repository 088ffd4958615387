import { foldUnits, type LineResult, testsOf, type UnitState } from "@pinwright/engine";

type Fact = Parameters<typeof foldUnits>[0][number];
type Body = Fact["body"];
type Kind = Extract<Body, { kind: "begun" }>["what"];

const LINK = "0".repeat(64);
const MINUTE_MS = 60_000;
const STREAMS = ["2c81f0a97be34d15", "7f3c2e9b5d10448c", "server"] as const;
const PEOPLE = ["ann", "bob", "chen"] as const;
const LETTER: Readonly<Record<Kind, string>> = { machine: "m", board: "b", harness: "h", mechanism: "a" };

/** The machine that `recordedMachine` builds. */
export const MACHINE = "m-000001";

/** Writes facts one after another, a minute apart, by three people on three devices. */
class Shift {
  readonly facts: Fact[] = [];
  readonly #next = new Map<Kind, number>();

  write(body: Body): void {
    const n = this.facts.length;
    const at = new Date(Date.UTC(2027, 0, 4, 8) + n * MINUTE_MS).toISOString();
    const stream = STREAMS[n % 2] ?? "";
    const person = PEOPLE[n % 3] ?? "";
    this.facts.push({ stream, seq: n + 1, before: LINK, at, person, body, hash: LINK });
  }

  begin(what: Kind, type: string, book: string, options: readonly string[] = []): string {
    const number = (this.#next.get(what) ?? 0) + 1;
    this.#next.set(what, number);
    const unit = `${LETTER[what]}-${String(number).padStart(6, "0")}`;
    const revision = what === "machine" ? "@12" : "@9";
    this.write({ kind: "begun", unit, what, type, book, revision, run: "run-3", options: [...options] });
    return unit;
  }

  /** Reads every test of a unit, each second one twice. */
  test(line: LineResult, unit: string, what: Kind, type: string): void {
    for (const [i, { id, kind, nominal, min, max }] of testsOf(line, what, type).entries()) {
      const value = kind === "measure" ? (nominal ?? max ?? min ?? 0) : undefined;
      const instrument = kind === "measure" ? `meter-${1 + (i % 3)}` : undefined;
      const read = { kind: "reading" as const, unit, test: id, good: true };
      const full = {
        ...read,
        ...(value === undefined ? {} : { value }),
        ...(instrument === undefined ? {} : { instrument }),
      };
      if (i % 4 === 3) this.write({ ...full, good: false });
      this.write(full);
    }
  }
}

/**
 * A whole machine as the floor records it: every board, harness and mechanism of the line with a serial number, tested and
 * fitted, a defect on every twentieth, alternates, concessions, an override, and the release.
 * @param isReleased false: it is built and half tested, and not released
 */
export function recordedMachine(line: LineResult, isReleased = true): ReadonlyMap<string, UnitState> {
  const shift = new Shift();
  const { book } = line.machine;
  const machine = shift.begin("machine", book.machine.id, book.machine.id, [...line.machine.options]);
  const parts: { readonly what: Kind; readonly type: string; readonly place: string }[] = [
    ...book.tables.boards.map(({ id, type }) => ({ what: "board" as const, type, place: id })),
    ...[...line.harnesses.keys()].map((id) => ({ what: "harness" as const, type: id, place: id })),
    ...book.tables.mechanisms.map(({ id, type }) => ({ what: "mechanism" as const, type, place: id })),
  ];
  for (const [i, { what, type, place }] of parts.entries()) {
    const unit = shift.begin(what, type, book.machine.id);
    if (i % 20 === 7) defect(shift, unit, `d-${i}`);
    if (what === "harness")
      shift.write({ kind: "reading", unit, test: `continuity:${type}`, good: true, instrument: "tester-1" });
    for (const step of line.steps.steps)
      if (step.kind === "bench" && step.mechanismTypeId === type)
        shift.write({ kind: "step-done", unit, step: step.id, minutes: 1.5 });
    shift.test(line, unit, what, type);
    shift.write({ kind: "fitted", unit, into: machine, place });
  }
  for (const step of line.steps.steps)
    if (step.kind !== "bench")
      shift.write({ kind: "step-done", unit: machine, step: step.id, minutes: step.seconds / 60 });
  if (!isReleased) return foldUnits(shift.facts);
  const [part, instead] = book.tables.parts;
  const why = "The reel ran out; the same gauge and insulation, another colour.";
  const other = { part: part?.id ?? "", instead: instead?.id ?? "", why };
  shift.write({ kind: "alternate", unit: machine, allowed: "book", ...other });
  shift.write({ kind: "alternate", unit: "b-000003", allowed: "concession", ...other });
  shift.write({ kind: "override", unit: machine, gate: "step", of: "st.extra", why: "Done with the next." });
  defect(shift, machine, "d-last");
  shift.test(line, machine, "machine", book.machine.id);
  shift.write({ kind: "released", unit: machine, heads: [] });
  return foldUnits(shift.facts);
}

function defect(shift: Shift, unit: string, id: string): void {
  const where = { item: "bd.drv-main", point: "bd.drv-main:j1.1" };
  shift.write({ kind: "defect", unit, defect: id, what: "dry joint", says: "second pin", where });
  shift.write({ kind: "mended", unit, defect: id, cause: "cold iron", says: "reflowed", minutes: 4 });
}
