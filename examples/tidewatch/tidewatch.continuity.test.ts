import { readBook } from "@pinwright/book/io";
import type { HarnessResult } from "@pinwright/engine";
import {
  diagnoseHarness,
  type HarnessFault,
  Line,
  type TestBench,
  type Tug,
  testBench,
} from "@pinwright/engine";
import { beforeAll, expect, test } from "vitest";

/** Numbers from 0 to 1 that are the same every time. */
function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A harness as copper: every wire end sits in a contact, every contact in a cavity. It knows nothing of suspects. */
class Copper {
  readonly #bench: TestBench;
  readonly #contactOf = new Map<string, string | null>();
  readonly #cavityOf = new Map<string, string | null>();
  readonly #bridges: (readonly [string, string])[] = [];
  readonly #laid: Set<string>;

  constructor(bench: TestBench) {
    this.#bench = bench;
    this.#laid = new Set(bench.wires.map(({ id }) => id));
    for (const wire of bench.wires)
      for (const end of ["a", "b"] as const) this.#contactOf.set(`${wire.id} ${end}`, wire[end]);
    for (const place of bench.places) if (place.wires.length > 0) this.#cavityOf.set(place.id, place.id);
  }

  spoil(fault: HarnessFault): void {
    switch (fault.kind) {
      case "missing-wire":
        this.#laid.delete(fault.wireId);
        break;
      case "open": {
        const wire = this.#bench.wires.find(({ id }) => id === fault.wireId);
        this.#contactOf.set(`${fault.wireId} ${wire?.a === fault.at ? "a" : "b"}`, null);
        break;
      }
      case "contact-out":
        this.#cavityOf.set(fault.at, null);
        break;
      case "short":
        this.#bridges.push([fault.a, fault.b]);
        break;
      case "swapped":
        this.#cavityOf.set(fault.a, fault.b);
        this.#cavityOf.set(fault.b, fault.a);
        break;
      case "wrong-cavity":
        this.#cavityOf.set(fault.contact, fault.cavity);
        break;
    }
  }

  /** Everything that current from a place reaches, walked step by step. */
  readings(): number[] {
    const next = new Map<string, string[]>();
    const join = (a: string, b: string): void => {
      next.set(a, [...(next.get(a) ?? []), b]);
      next.set(b, [...(next.get(b) ?? []), a]);
    };
    for (const wire of this.#bench.wires) {
      if (!this.#laid.has(wire.id)) continue;
      for (const end of ["a", "b"] as const) {
        const contact = this.#contactOf.get(`${wire.id} ${end}`) ?? null;
        if (contact !== null) join(`wire ${wire.id}`, `contact ${contact}`);
      }
    }
    for (const [contact, cavity] of this.#cavityOf)
      if (cavity !== null) join(`contact ${contact}`, `cavity ${cavity}`);
    for (const [a, b] of this.#bridges) join(`cavity ${a}`, `cavity ${b}`);
    const groupOf = new Map<string, number>();
    this.#bench.places.forEach(({ id }, group) => {
      const todo = [`cavity ${id}`];
      for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
        if (groupOf.has(at)) continue;
        groupOf.set(at, group);
        todo.push(...(next.get(at) ?? []));
      }
    });
    return this.#bench.places.map(({ id }) => groupOf.get(`cavity ${id}`) ?? -1);
  }

  /** What tugging shows: a contact is not there, or lacks a wire, where wires were never laid. */
  tugs(): ReadonlyMap<string, Tug> {
    return new Map(
      this.#bench.places
        .filter(({ wires }) => wires.length > 0)
        .map(({ id }): readonly [string, Tug] => {
          const ends = this.#bench.wires.filter((wire) => wire.a === id || wire.b === id);
          const laid = ends.filter((wire) => this.#laid.has(wire.id)).length;
          return [id, laid === ends.length ? "held" : laid > 0 ? "wire-missing" : "nothing-there"];
        }),
    );
  }
}

const KINDS = ["open", "short", "swapped", "missing-wire", "wrong-cavity"] as const;
type Kind = (typeof KINDS)[number];

/** A fault of a kind somewhere in a harness; null where the harness has no place for it. */
function anyFault(bench: TestBench, kind: Kind, next: () => number): HarnessFault | null {
  const pick = <T>(list: readonly T[]): T | undefined => list[Math.floor(next() * list.length)];
  const filled = bench.places.filter(({ wires, loose }) => wires.length > 0 && !loose);
  const wire = pick(bench.wires);
  const a = pick(filled);
  if (wire === undefined || a === undefined) return null;
  const beside = bench.places.filter(
    (b) =>
      b.id !== a.id &&
      b.landingId === a.landingId &&
      Math.abs(a.column - b.column) <= 1 &&
      Math.abs(a.row - b.row) <= 1,
  );
  const b = pick(
    beside.filter(({ wires }) => (kind === "wrong-cavity" ? wires.length === 0 : wires.length > 0)),
  );
  switch (kind) {
    case "open":
      return { kind, wireId: wire.id, at: next() < 0.5 ? wire.a : wire.b };
    case "missing-wire":
      return { kind, wireId: wire.id };
    case "short":
    case "swapped":
      return b === undefined ? null : { kind, a: a.id, b: b.id };
    case "wrong-cavity":
      return b === undefined ? null : { kind, contact: a.id, cavity: b.id };
  }
}

let harnesses: readonly HarnessResult[] = [];
let benches: readonly TestBench[] = [];

beforeAll(async () => {
  const { book, shop } = await readBook(import.meta.dirname);
  if (shop === null) throw new Error("Tidewatch has a shop");
  const line = new Line().run(book, shop);
  harnesses = [...line.harnesses.values()];
  benches = harnesses.map((harness) => testBench(line.machine, harness));
}, 120_000);

test("every harness of Tidewatch as it should be is good", () => {
  expect(benches.length).toBeGreaterThan(30);
  for (const bench of benches)
    expect(diagnoseHarness(bench, new Copper(bench).readings()), bench.harnessId).toEqual({
      good: true,
      explanations: [],
    });
});

test("500 random faults are each found and named as what they are (seed 27)", () => {
  const next = random(27);
  const done = new Map<Kind, number>();
  const wrong: unknown[] = [];
  for (let tried = 0; [...done.values()].reduce((a, b) => a + b, 0) < 500 && tried < 20_000; tried++) {
    const kind = KINDS[tried % KINDS.length] ?? "open";
    const bench = benches[Math.floor(next() * benches.length)];
    if (bench === undefined || (done.get(kind) ?? 0) >= 100) continue;
    const fault = anyFault(bench, kind, next);
    if (fault === null) continue;
    const copper = new Copper(bench);
    const good = copper.readings().join();
    copper.spoil(fault);
    const readings = copper.readings();
    // A swap within one net, or a second way round, reads as it should: nothing is wrong that a tester can see.
    if (readings.join() === good) continue;
    done.set(kind, (done.get(kind) ?? 0) + 1);
    const { explanations } = diagnoseHarness(bench, readings, copper.tugs());
    const ways = explanations.flatMap((one) => one.ways);
    const rank = ways.findIndex(
      (way) => way.length === 1 && JSON.stringify(way[0]) === JSON.stringify(normal(fault, way[0])),
    );
    const named = ways[0]?.[0]?.kind;
    if (explanations.length !== 1 || rank < 0 || named !== fault.kind)
      wrong.push({ fault, named, rank, ways: ways.slice(0, 4) });
  }
  expect([...done.values()]).toEqual([100, 100, 100, 100, 100]);
  expect(wrong).toEqual([]);
});

/** A fault written like another that means the same: shorts and swaps have no order. */
function normal(fault: HarnessFault, like: HarnessFault | undefined): HarnessFault {
  if ((fault.kind === "short" || fault.kind === "swapped") && like?.kind === fault.kind && like.a === fault.b)
    return { kind: fault.kind, a: fault.b, b: fault.a };
  return fault;
}
