import type { BookRow, ShopNumbers } from "@pinwright/book";
import { roundTo } from "@pinwright/kernel";
import { type BoardRegisterRow, type Finding, makeFinding } from "../../model/index.ts";
import type { Placement } from "../joints.ts";
import { bathMinutes, boardWork, handMinutes } from "../solder/kinds.ts";
import { eachOf } from "../solder/minutes.ts";

/**
 * Class letters of parts that work one way round only: diode, LED, transistor, integrated circuit, rectifier, cell.
 * IEEE 315-1975 clause 22 (CR, D, DS, Q, U, BT) and their common spellings (LED, IC, BR), from memory.
 */
const POLAR_LETTERS: ReadonlySet<string> = new Set(["D", "CR", "DS", "LED", "Q", "U", "IC", "BR", "BT"]);

/**
 * What the book lacks of a board type that the machine has:
 * - `board-no-parts`: it has no parts, and nobody sells it with its parts on;
 * - `board-no-test`: it is stuffed here, and no test says that it works.
 */
export function checkBoardType(row: BoardRegisterRow, tests: number): readonly Finding[] {
  if (row.boardIds.length === 0) return [];
  const numbers = { boards: row.boardIds.length };
  const found: Finding[] = [];
  if (row.comes === "unknown") found.push(makeFinding("board-no-parts", "warning", [row.typeId], numbers));
  if (row.comes === "stuffed" && tests === 0)
    found.push(makeFinding("board-no-test", "warning", [row.typeId], numbers));
  return found;
}

/**
 * `polarity-missing`: nothing says which way round a part goes, though its reference is that of a kind with a right way
 * round, or the same part is marked elsewhere.
 * @param marked parts that have a mark at any place of the book
 */
export function checkPolarity(
  typeId: string,
  rows: readonly Placement[],
  marked: ReadonlySet<string>,
): readonly Finding[] {
  return rows
    .filter((row) => row.polarity === "" && (marked.has(row.part) || POLAR_LETTERS.has(lettersOf(row))))
    .map((row) => makeFinding("polarity-missing", "warning", [typeId, row.reference, row.part]));
}

const lettersOf = ({ reference }: Placement): string => /^[A-Z]+/u.exec(reference.toUpperCase())?.[0] ?? "";

/**
 * `bath-blocked`: a board takes no less time in the solder bath than by hand, at any quantity, for its masks, hidden
 * joints and what goes in after the wash. A note: it is soldered by hand within any session.
 */
export function checkBath(
  type: BookRow<"board_types">,
  rows: readonly Placement[],
  numbers: ShopNumbers,
): readonly Finding[] {
  if (rows.length === 0) return [];
  const work = boardWork(type.id, type.carrier, rows);
  const hand = eachOf(handMinutes(work, numbers));
  const bath =
    eachOf(bathMinutes(work, numbers)) + (numbers.bath_dip_min * numbers.bath_people) / type.carrier;
  if (bath < hand) return [];
  return [
    makeFinding("bath-blocked", "note", [type.id], {
      hand_min: roundTo(hand, 0.01),
      bath_min: roundTo(bath, 0.01),
      joints: work.joints,
      masks: work.masks,
      hidden: work.hidden,
      after_wash: work.lateJoints,
    }),
  ];
}

/** `test-no-limits`: something is measured, and no limit says what is good. */
export const checkTests = (tests: readonly BookRow<"tests">[]): readonly Finding[] =>
  tests
    .filter((test) => test.kind === "measure" && test.min === null && test.max === null)
    .map((test) => makeFinding("test-no-limits", "warning", [test.id], { scope: test.scope }));
