import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FasteningSolver } from "../fastening/index.ts";
import type { Machine, StepsResult } from "../model/index.ts";
import { Resolver } from "../model/index.ts";
import { createBook, createShop } from "../testing/book.ts";
import { StepsSolver } from "./steps-solver.ts";
import { arbitraryTables, arbitraryThings, rowsOf } from "./testing/arbitrary.ts";
import { GOLDEN } from "./testing/golden.ts";
import { solveSteps } from "./testing/solve.ts";

/** Everything that is put in, by step. */
const members = ({ steps }: StepsResult) => ({
  items: steps.flatMap((step) => step.itemIds),
  fasteners: steps.flatMap((step) => step.fastenerIds),
});
const idsOf = ({ items }: Machine, isFastener: boolean): readonly string[] =>
  [...items.values()]
    .filter((item) => (item.kind === "fastener") === isFastener && (isFastener || item.parentId === null))
    .map((item) => item.id)
    .sort();

describe("laws", () => {
  const few = { step_most_fasteners: 6 };

  test("every item and every fastener is in exactly one step, none too large but for one item (seed 91)", () => {
    fc.assert(
      fc.property(arbitraryTables, (tables) => {
        const { machine, steps } = solveSteps(tables, few);
        const { items, fasteners } = members(steps);
        expect([...items].sort()).toEqual(idsOf(machine, false));
        expect([...fasteners].sort()).toEqual(idsOf(machine, true));
        for (const { kind, itemIds, fastenerIds } of steps.steps)
          if ((kind === "devices" || kind === "boards") && itemIds.length > 1)
            expect(fastenerIds.length).toBeLessThanOrEqual(6);
      }),
      { seed: 91, numRuns: 30 },
    );
  });

  test("numbers count from 1 and keep to every edge; the tests come after all but what follows them (seed 92)", () => {
    fc.assert(
      fc.property(arbitraryTables, (tables) => {
        const { steps } = solveSteps(tables, few);
        const numbers = new Map(steps.steps.map((step) => [step.id, step.number]));
        expect([...numbers.values()]).toEqual(steps.steps.map((_, i) => i + 1));
        for (const { beforeId, afterId } of steps.edges)
          expect(numbers.get(beforeId)).toBeLessThan(numbers.get(afterId) ?? 0);
        const test = numbers.get("st.test") ?? 0;
        for (const { id, kind, number } of steps.steps)
          if (id !== "st.test") expect(number > test).toBe(id === "st.pack" || kind === "recheck");
        expect(steps.turnOvers).toBe(
          steps.steps.filter((step) => step.motions.some(({ kind }) => kind === "turn-over")).length,
        );
      }),
      { seed: 92, numRuns: 30 },
    );
  });

  test("bits and boxes change no more often in a step than there are kinds of them (seed 93)", () => {
    fc.assert(
      fc.property(arbitraryTables, (tables) => {
        const { machine, steps } = solveSteps(tables);
        for (const step of steps.steps) {
          const types = step.fastenerIds.flatMap((id) => {
            const item = machine.items.get(id);
            return item?.kind === "fastener" ? [item.type.id] : [];
          });
          const opened = types.filter((type, i) => type !== types[i - 1]).length;
          const change = step.motions.find(({ kind }) => kind === "box-change")?.count ?? 0;
          expect(change).toBe(Math.max(0, opened - 1));
        }
      }),
      { seed: 93, numRuns: 20 },
    );
  });

  test("a lamp that is added changes no step of anything but lamps (seed 94)", () => {
    fc.assert(
      fc.property(arbitraryThings, fc.nat(400), fc.nat(600), (things, x, y) => {
        const shape = (list: typeof things) =>
          new Map(
            solveSteps(rowsOf(list), few).steps.steps.flatMap(({ id, kind, itemIds }) =>
              kind === "devices" && !id.includes(":lamp") ? [[id, [...itemIds].sort()] as const] : [],
            ),
          );
        const lamp = { kind: "lamp", panel: "field", side: "under", x, y, screws: ["ft.a"] } as const;
        expect(shape([...things, { ...lamp, screws: [...lamp.screws] }])).toEqual(shape(things));
      }),
      { seed: 94, numRuns: 20 },
    );
  });

  test("what is remembered is what is found from scratch, over edits (seed 95)", () => {
    const edits = fc.array(fc.record({ at: fc.nat(23), x: fc.nat(400), y: fc.nat(600) }), { maxLength: 3 });
    fc.assert(
      fc.property(arbitraryThings, arbitraryThings, edits, (first, other, moves) => {
        const solver = new StepsSolver();
        const fastening = new FasteningSolver();
        const resolver = new Resolver();
        const books = [first];
        for (const { at, x, y } of moves)
          books.push((books.at(-1) ?? first).map((thing, i) => (i === at ? { ...thing, x, y } : thing)));
        for (const things of [...books, other]) {
          const machine = resolver.resolve(createBook(rowsOf(things, [1, 4])), createShop());
          const solved = fastening.solve(machine, new Map());
          const remembered = solver.solve(machine, solved.fastening, new Map());
          expect(remembered).toEqual(new StepsSolver().solve(machine, solved.fastening, new Map()));
          expect(solver.solve(machine, solved.fastening, new Map()).steps).toBe(remembered.steps);
          solver.sweep();
          fastening.sweep();
          resolver.sweep();
        }
      }),
      { seed: 95, numRuns: 15 },
    );
  });

  test("a mechanism that is moved has no other walk found anew than its own", () => {
    const solver = new StepsSolver();
    const resolver = new Resolver();
    const run = (x: number): StepsResult => {
      const mechanisms = book.tables.mechanisms.map((row, i) => (i === 0 ? { ...row, x_mm: x } : row));
      const machine = resolver.resolve({ ...book, tables: { ...book.tables, mechanisms } }, shop);
      const { fastening } = new FasteningSolver().solve(machine, new Map());
      const { steps } = solver.solve(machine, fastening, new Map());
      solver.sweep();
      resolver.sweep();
      return steps;
    };
    const book = createBook(GOLDEN);
    const shop = createShop();
    const before = run(100);
    const computed = solver.computed;
    const after = run(101);
    // It is mounted, and checked again after burn-in.
    expect(solver.computed - computed).toBe(2);
    const same = after.steps.filter((step, i) => step === before.steps[i]);
    expect(same.length).toBeGreaterThanOrEqual(before.steps.length - 1);
  });
});
