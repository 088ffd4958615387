import { SharedMemory } from "@pinwright/kernel";
import type { Finding, Machine } from "../model/index.ts";
import { checkMatrices } from "./matrix/index.ts";
import { checkProgram } from "./program/index.ts";

const known = new SharedMemory<Machine["elements"], readonly Finding[]>();

/**
 * What the checks of switch matrices and of the program map depend on, beside the elements, to be compared by
 * identity. No place is among it, and of the boards only what is set on them.
 */
export function matrixAndProgramInputs(machine: Machine): readonly unknown[] {
  const { ends, nets, book } = machine;
  const { supplies, activity, boards, connector_families } = book.tables;
  const set = boards.map(({ id, address, terminated }) => `${id} ${address} ${terminated}`).join("\n");
  return [ends, nets, supplies, activity, connector_families, set, machine.choices.get("matrix")];
}

/** Ghosts of every switch matrix, and whether each point is able to do what hangs on it. */
export const checkMatrixAndProgram = (machine: Machine): readonly Finding[] =>
  known.ask(machine.elements, matrixAndProgramInputs(machine), () => [
    ...checkMatrices(machine),
    ...checkProgram(machine),
  ]);
