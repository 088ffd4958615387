import type { CellTables } from "@pinwright/book";
import {
  ASSEMBLY_SHEET_KINDS,
  HARNESS_SHEET_KINDS,
  MACHINE_SHEET_KINDS,
  MACHINE_SHEETS,
  MAKING_SHEET_KINDS,
} from "@pinwright/sheets";

/** Sheets of which the machine has one each, and those of which it has one or several with what they are about behind. */
const SINGLE: readonly string[] = [...MACHINE_SHEET_KINDS, "service-book"];
const SEVERAL: readonly string[] = [...ASSEMBLY_SHEET_KINDS, ...MAKING_SHEET_KINDS];

const isOne = (kinds: readonly string[], name: string): boolean =>
  kinds.some((kind) => name === kind || name.startsWith(`${kind}-`));

/**
 * Whether a book as it is now can have a sheet of this name: of a kind that there is, in a language that there is, of the
 * machine or of a harness that it has. Which panels, steps and boards have sheets only the whole line would tell, which takes
 * seconds; what a draft's sheet says it alone would tell too.
 */
export function isDraftSheet(tables: CellTables, sheet: string): boolean {
  const [, rest] = /^(.+)\.(?:en|zh|both)$/u.exec(sheet) ?? [];
  if (rest === undefined) return false;
  if (rest.startsWith(`${MACHINE_SHEETS}.`)) {
    const name = rest.slice(MACHINE_SHEETS.length + 1);
    return SINGLE.includes(name) || isOne(SEVERAL, name);
  }
  return [...(tables.get("harnesses")?.values() ?? [])].some((cells) => {
    const id = cells.get("id") ?? "";
    return id !== "" && rest.startsWith(`${id}.`) && isOne(HARNESS_SHEET_KINDS, rest.slice(id.length + 1));
  });
}
