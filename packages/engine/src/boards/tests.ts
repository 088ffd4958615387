import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import { appliesTo, type Machine } from "../model/index.ts";

/** The tests of a board type that apply to this machine, least risk first. */
export const boardTests = (machine: Machine, typeId: string): readonly BookRow<"tests">[] =>
  machine.book.tables.tests
    .filter((row) => row.scope === "board" && row.board_type === typeId && appliesTo(row, machine.options))
    .toSorted((a, b) => a.order - b.order || compareText(a.id, b.id));

/** Minutes to test so many boards of a session on their jigs; times of tests are the shop's. */
export const testMinutes = (machine: Machine, boards: number): number =>
  boards * machine.shop.numbers.board_test_min;
