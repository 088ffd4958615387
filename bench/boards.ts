/**
 * The boards of Tidewatch: the register and its checks from scratch and after one moved mechanism, the stuffing plans of
 * all types, the choice between hand and bath with its curve and its shifts, the kits of all types; and the register at
 * 1, 4 and 16 times the boards and parts. `npx tsx bench/boards.ts`
 */
import { join } from "node:path";
import { type Book, emptyShop, withRows } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import {
  BoardsSolver,
  boardKit,
  type Machine,
  Resolver,
  resolveMachine,
  sessionOf,
  solderChoice,
  solderCurve,
  solderShifts,
  stuffingPlan,
} from "@pinwright/engine";
import { figures, type JobTime, median, once, writeResults } from "./measure.ts";

const RUNS = 9;
const CURVE = Array.from({ length: 100 }, (_, i) => i + 1);

const { book, shop: ownShop } = await readBook(join(import.meta.dirname, "../examples/tidewatch"));
const shop = ownShop ?? emptyShop();
const machine = resolveMachine(book, shop);
const types = book.tables.board_types.map((row) => row.id);

const times = (work: () => unknown): readonly JobTime[] => Array.from({ length: RUNS }, () => once(work));

/** Board types with their parts and boards, so many times over. */
function manyTypes(count: number): Machine {
  const copies = <R extends object>(rows: readonly R[], rename: (row: R, n: number) => R): R[] =>
    Array.from({ length: count }, (_, n) => rows.map((row) => rename(row, n))).flat();
  const t = book.tables;
  const many: Book = {
    ...book,
    tables: {
      ...t,
      board_types: copies(t.board_types, (row, n) => ({ ...row, id: `${row.id}-${n}` })),
      placements: copies(t.placements, (row, n) => ({ ...row, board_type: `${row.board_type}-${n}` })),
      boards: copies(t.boards, (row, n) => ({ ...row, id: `${row.id}-${n}`, type: `${row.type}-${n}` })),
    },
  };
  // The solver looks at the book alone.
  return { ...machine, book: many };
}

/** Each mechanism moved in turn, the register asked for after it. */
function afterMoves(): readonly JobTime[] {
  const resolver = new Resolver();
  const solver = new BoardsSolver();
  solver.solve(resolver.resolve(book, shop));
  return book.tables.mechanisms.map((moved, i) => {
    const rows = book.tables.mechanisms.map((row) =>
      row.id === moved.id ? { ...row, x_mm: row.x_mm + 1 + i } : row,
    );
    const now = resolver.resolve(withRows(book, "mechanisms", rows), shop);
    return once(() => {
      solver.solve(now);
      solver.sweep();
    });
  });
}

const cold = once(() => new BoardsSolver().solve(machine));
const session = sessionOf(machine, 25);
const growth = [1, 4, 16].map((count) => {
  const many = manyTypes(count);
  const own = times(() => new BoardsSolver().solve(many));
  return { count, own, cpuMs: median(own.map(({ cpuMs }) => cpuMs)) };
});
const one = growth[0]?.cpuMs ?? 1;

writeResults("boards", [
  figures("register and checks, first in the process", [cold]),
  figures(
    "the same from scratch, warm",
    times(() => new BoardsSolver().solve(machine)),
  ),
  figures("after one moved mechanism, each in turn", afterMoves()),
  figures(
    "stuffing plans of all types over three benches",
    times(() => types.map((id) => stuffingPlan(machine, id, 3))),
  ),
  figures(
    "hand or bath for 25 machines",
    times(() => solderChoice(machine, session)),
  ),
  figures(
    "its curve at a hundred quantities",
    times(() => solderCurve(machine, session, CURVE)),
  ),
  figures(
    "how its crossing moves with the times",
    times(() => solderShifts(machine, session)),
  ),
  figures(
    "kits of all types",
    times(() => types.map((id) => boardKit(machine, id, 100))),
  ),
  ...growth.map(({ count, own, cpuMs }) => ({
    ...figures(`register and checks, ${count} times the types`, own),
    exponent: count === 1 ? "" : Number((Math.log(cpuMs / one) / Math.log(count)).toFixed(2)),
  })),
]);
