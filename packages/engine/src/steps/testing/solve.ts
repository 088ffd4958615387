import { FasteningSolver } from "../../fastening/index.ts";
import type { Machine } from "../../model/index.ts";
import { resolveMachine } from "../../model/index.ts";
import { createBook, createShop, type SomeTables } from "../../testing/book.ts";
import { type Stepped, StepsSolver } from "../steps-solver.ts";

type Numbers = Parameters<typeof createShop>[1];

/** Steps of a book without harnesses, from scratch. */
export function solveSteps(
  tables: SomeTables,
  numbers: Numbers = {},
): Stepped & { readonly machine: Machine } {
  const machine = resolveMachine(createBook(tables), createShop({}, numbers));
  return { machine, ...solveMachine(machine) };
}

/** Steps of a machine without harnesses, from scratch. */
function solveMachine(machine: Machine): Stepped {
  const { fastening } = new FasteningSolver().solve(machine, new Map());
  return new StepsSolver().solve(machine, fastening, new Map());
}
