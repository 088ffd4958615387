import { readBook } from "@pinwright/book/io";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { edit } from "../testing/edits.ts";
import { Line } from "../testing/line.ts";
import type { Comparison } from "./change.ts";
import { compareFacts } from "./compare.ts";
import type { MachineFacts } from "./facts.ts";
import { machineFacts } from "./make-facts.ts";
import { readMachineFacts } from "./read-facts.ts";

let before: MachineFacts;
let pairs: readonly (readonly [MachineFacts, MachineFacts])[];

/** Edited books whose facts the laws are held on. */
const EDITS = 24;

beforeAll(async () => {
  const { book, shop } = await readBook(
    new URL("../../../../examples/first-light", import.meta.url).pathname,
  );
  if (shop === null) throw new Error("the example has a shop");
  const line = new Line();
  before = machineFacts(line.run(book, shop), []);
  pairs = fc
    .sample(edit, { seed: 31, numRuns: EDITS })
    .map((change) => [before, machineFacts(line.run(change(book), shop), [])]);
}, 120_000);

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** A value in which one text or number is another, and the names that lead to it; picks count round. */
function otherAt(
  value: Readonly<Record<string, unknown>>,
  [pick = 0, ...picks]: readonly number[],
): { readonly path: readonly string[]; readonly value: Readonly<Record<string, unknown>> } | null {
  const names = Object.keys(value);
  const name = names[pick % names.length];
  const held = name === undefined ? undefined : value[name];
  if (name === undefined || Array.isArray(held)) return null;
  if (!isRecord(held)) {
    const other = typeof held === "number" ? held + 7 : `${String(held)}x`;
    return { path: [name], value: { ...value, [name]: other } };
  }
  const within = otherAt(held, picks);
  return within && { path: [name, ...within.path], value: { ...value, [name]: within.value } };
}

/** Facts as they are read again, with one section that has another value in it. */
const withSection = (section: string, value: unknown): MachineFacts =>
  readMachineFacts({ ...before, [section]: value });

/**
 * What needs no sentence of its own: a wire's id is its net, harness and points, so that another of these is another wire; a
 * net tells its class and supply, and rows of the definition tell names and order numbers; a step has moved only in relation
 * to others.
 */
const TOLD_ELSEWHERE =
  /^(?:wires: (?:net|netClass|supply|harness|[ab] (?:point|item|pin))|parts: (?:orderNumber|unit|labels ..)|steps: (?:number|labels ..))$/u;

const count = ({ groups }: Comparison): number =>
  groups.reduce((sum, { changes }) => sum + changes.length, 0);

describe("laws of comparing", () => {
  it("leaves out no cell of the definition", () => {
    const silent = new Set<string>();
    fc.assert(
      fc.property(fc.array(fc.nat(), { minLength: 3, maxLength: 3 }), (picks) => {
        const other = otherAt(before.rows, picks);
        if (other === null) return;
        const [table = "", key = "", column = ""] = other.path;
        const row = before.rows[table]?.[key];
        // What is settled shows in what it decides; a noted rename changes nothing.
        if (table === "choices" && row?.held === "settled") return;
        if (table === "renames") return;
        // These two name the row: another of them is another row.
        if (table === "ends" && (column === "point" || column === "harness")) return;
        if (count(compareFacts(before, withSection("rows", other.value))) === 0)
          silent.add(`${table}.${column}`);
      }),
      { seed: 5, numRuns: 1500 },
    );
    expect([...silent]).toEqual([]);
  });

  it("leaves out nothing of a wire, of a part's count, of a step's content or time", () => {
    const silent = new Set<string>();
    fc.assert(
      fc.property(
        fc.constantFrom("wires" as const, "parts" as const, "steps" as const),
        fc.array(fc.nat(), { minLength: 3, maxLength: 3 }),
        (section, picks) => {
          const other = otherAt(before[section], picks);
          if (other === null) return;
          const path = `${section}: ${other.path.slice(1).join(" ")}`;
          if (TOLD_ELSEWHERE.test(path)) return;
          if (count(compareFacts(before, withSection(section, other.value))) === 0) silent.add(path);
        },
      ),
      { seed: 6, numRuns: 600 },
    );
    expect([...silent]).toEqual([]);
  });

  it("says nothing twice, and of each wire at one place", () => {
    for (const [from, to] of pairs)
      for (const { groups } of [compareFacts(from, to), compareFacts(to, from)]) {
        const said = groups.flatMap(({ subject, changes }) =>
          changes.map((change) => JSON.stringify([subject.table, subject.id, change])),
        );
        expect(new Set(said).size).toBe(said.length);
        const places = new Map<string, Set<string>>();
        for (const { subject, changes } of groups)
          for (const { what, values } of changes) {
            if (!what.startsWith("wire-") || what === "wire-number") continue;
            const of = places.get(String(values.wire)) ?? new Set();
            places.set(String(values.wire), of.add(`${subject.table} ${subject.id}`));
          }
        expect([...places].filter(([, of]) => of.size > 1)).toEqual([]);
      }
  });

  it("leaves out no number of a finding", () => {
    expect(before.findings.length).toBeGreaterThan(0);
    before.findings.forEach((finding, at) => {
      for (const [name, value] of Object.entries(finding.numbers)) {
        const other = typeof value === "number" ? value + 7 : `${String(value)}x`;
        const findings = before.findings.map((one, i) =>
          i === at ? { ...one, numbers: { ...one.numbers, [name]: other } } : one,
        );
        const { groups } = compareFacts(before, { ...before, findings });
        expect(groups.flatMap(({ changes }) => changes.map(({ what }) => what))).toEqual(["finding-numbers"]);
      }
    });
  });

  it("tells another severity of a finding", () => {
    const [first] = before.findings;
    if (first === undefined) throw new Error("the example has findings");
    const severity = first.severity === "error" ? "warning" : "error";
    const after = { ...before, findings: [{ ...first, severity } as const, ...before.findings.slice(1)] };
    const changes = compareFacts(before, after).groups.flatMap((group) => group.changes);
    expect(changes.map(({ what }) => what).sort()).toEqual(["finding-gone", "finding-new"]);
  });
});
