import type { HarnessResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { say } from "./compose/say.ts";
import type { HarnessSheetKind } from "./identity.ts";

type Caution = "crimp" | "mains" | "energised" | "pull" | "solder";

/** What the work on each kind of sheet can do to a person. */
const OF_KIND: Readonly<Record<HarnessSheetKind, readonly Caution[]>> = {
  pinboard: [],
  "from-to": [],
  "cut-list": ["crimp"],
  "lay-up": ["crimp"],
  "connector-loading": ["crimp"],
  "wire-labels": [],
  "pull-test": ["pull", "crimp"],
  continuity: ["energised"],
};

/** Sheets at whose work an end may be soldered. */
const SOLDERED_AT: ReadonlySet<HarnessSheetKind> = new Set([
  "cut-list",
  "lay-up",
  "connector-loading",
  "pull-test",
]);

/**
 * Cautions for a sheet of a harness, each with a line for each language: those of the work, soldering when a wire
 * ends in a lug or there is a splice, and mains when any wire of the harness is of that class.
 */
export function cautionsOf(
  harness: HarnessResult,
  kind: HarnessSheetKind,
  language: SheetLanguage,
  solders = harness.splices.length > 0,
): readonly string[] {
  const list: Caution[] = [...OF_KIND[kind]];
  if (solders && SOLDERED_AT.has(kind)) list.push("solder");
  if (harness.wires.some((w) => w.netClass === "mains")) list.unshift("mains");
  return list.map((c) => say(language, (w) => w.caution[c]));
}
