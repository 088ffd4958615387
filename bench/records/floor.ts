import { createHash } from "node:crypto";
import { type Fact, type FactBody, factText, NO_FACT } from "@pinwright/contract";
import { seededRandom } from "@pinwright/kernel";

/** What an invented machine is made of, and what is recorded of each: five thousand readings, and some taken again. */
export const BOARDS = 50;
export const HARNESSES = 25;
const BOARD_READINGS = 66;
const HARNESS_READINGS = 62;
const MACHINE_READINGS = 150;
export const READINGS = BOARDS * BOARD_READINGS + HARNESSES * HARNESS_READINGS + MACHINE_READINGS;

const STATIONS = 40;
const PEOPLE = 20;
const INSTRUMENTS = 12;
const PARTS = 60;
/** Machines that a lot of a part lasts for. */
const LOT_MACHINES = 8;
/** Tests that every board has, so that these are read most. */
const COMMON_TESTS = 6;
const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;
const FIRST_DAY_MS = Date.UTC(2027, 0, 4, 6);
/** Days from a machine to the next. */
const PACE_DAYS = 1.5;
const FAILS = 0.02;

/** Serial numbers of a machine and of what goes into it. */
export interface MachineUnits {
  readonly machine: string;
  readonly boards: readonly string[];
  readonly harnesses: readonly string[];
}

/** Change of the book that units of the n-th machine are built to. */
export const revisionOf = (machine: number): string => `@${1 + Math.floor(machine / 50)}`;

/** When the n-th machine is begun. */
export const timeOf = (machine: number, minutes = 0): string =>
  new Date(FIRST_DAY_MS + machine * PACE_DAYS * DAY_MS + minutes * MINUTE_MS).toISOString();

/** The test that is read most, on every board. */
export const COMMON_TEST = "t.common-0";
/** Part and lot that go into some boards of the n-th machine. */
export const partOf = (part: number): string => `ic.part-${part % PARTS}`;
export const lotOf = (part: number, machine: number): string =>
  `L-${part % PARTS}-${Math.floor(machine / LOT_MACHINES)}`;
export const personOf = (i: number): string => `builder-${i % PEOPLE}`;
export const instrumentOf = (i: number): string => `meter-${i % INSTRUMENTS}`;

/** A workshop that records machine after machine, each station into a stream of its own. */
export class RecordingFloor {
  readonly #random = seededRandom(7);
  readonly #ends = new Map<string, { seq: number; hash: string }>();

  /** Everything that is recorded of the n-th machine. */
  machine(n: number, { machine, boards, harnesses }: MachineUnits): readonly Fact[] {
    const facts: Fact[] = [];
    for (const [i, unit] of boards.entries()) this.#board(facts, n, i, unit);
    for (const [i, unit] of harnesses.entries()) this.#harness(facts, n, i, unit);
    const write = this.#writer(facts, n, BOARDS + HARNESSES, DAY_MS / MINUTE_MS);
    for (const [i, unit] of [...boards, ...harnesses].entries())
      write({ kind: "fitted", unit, into: machine, place: `place-${i}` });
    for (let i = 0; i < 100; i++)
      write({ kind: "step-done", unit: machine, step: `st.machine-${i}`, minutes: 3 });
    for (let i = 0; i < MACHINE_READINGS; i++) this.#test(write, machine, `t.machine-${i % 130}`, i);
    write({ kind: "handed", unit: machine, stage: "crated" });
    return facts;
  }

  #board(facts: Fact[], n: number, i: number, unit: string): void {
    const write = this.#writer(facts, n, i, i * 7);
    for (let part = 0; part < 3; part++)
      write({ kind: "lot-used", unit, part: partOf(i + 20 * part), lot: lotOf(i + 20 * part, n) });
    for (let step = 0; step < 6; step++)
      write({ kind: "step-done", unit, step: `st.board-${step}`, minutes: 2 });
    for (let test = 0; test < BOARD_READINGS; test++) {
      const name = test < COMMON_TESTS ? `t.common-${test}` : `t.board-${i % 10}-${test % 54}`;
      this.#test(write, unit, name, i + test);
    }
    if (this.#random() < 0.05) {
      const defect = `d-${unit}`;
      write({ kind: "defect", unit, defect, what: "cold-joint", says: "", where: { item: `R${i}` } });
      write({ kind: "mended", unit, defect, cause: "soldering", says: "", minutes: 4 });
    }
  }

  #harness(facts: Fact[], n: number, i: number, unit: string): void {
    const write = this.#writer(facts, n, BOARDS + i, 400 + i * 9);
    for (let part = 0; part < 2; part++)
      write({ kind: "lot-used", unit, part: partOf(i + part), lot: lotOf(i + part, n) });
    for (let step = 0; step < 5; step++)
      write({ kind: "step-done", unit, step: `st.harness-${step}`, minutes: 6 });
    for (let test = 0; test < HARNESS_READINGS; test++)
      this.#test(write, unit, `t.harness-${i}-${test % 58}`, i + test);
  }

  /** A reading; one that is not good is taken again. */
  #test(write: (body: FactBody) => void, unit: string, test: string, i: number): void {
    const read = (good: boolean): void => {
      const near = this.#random() + this.#random() + this.#random() - 1.5;
      const value = Math.round((5 + 0.03 * near + (good ? 0 : 1)) * 1e4) / 1e4;
      write({ kind: "reading", unit, test, value, good, instrument: instrumentOf(i) });
    };
    if (this.#random() < FAILS) read(false);
    read(true);
  }

  /** Writes into the stream of a station, a minute after the last. */
  #writer(facts: Fact[], n: number, i: number, startMinutes: number): (body: FactBody) => void {
    const stream = `station-${i % STATIONS}`;
    const person = personOf(i + n);
    let minutes = startMinutes;
    return (body) => {
      const end = this.#ends.get(stream) ?? { seq: 0, hash: NO_FACT };
      const text = { stream, seq: end.seq + 1, before: end.hash, at: timeOf(n, minutes++), person, body };
      const hash = createHash("sha256").update(factText(text)).digest("hex");
      this.#ends.set(stream, { seq: text.seq, hash });
      facts.push({ ...text, hash });
    };
  }
}
