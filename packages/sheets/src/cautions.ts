import type { BookRow } from "@pinwright/book";
import type { HarnessResult, LineResult, SizedWire } from "@pinwright/engine";
import type { SheetLanguage, SheetWords } from "@pinwright/words";
import { shortNumber } from "./compose/number.ts";
import { say } from "./compose/say.ts";
import type { HarnessSheetKind } from "./identity.ts";
import { withVolts } from "./machine-facts.ts";

type Caution = (words: SheetWords, language: "en" | "zh") => string;
type Plain = "crimp" | "energised" | "pull" | "solder";

/** What the work on each kind of sheet can do to a person. */
const OF_KIND: Readonly<Record<HarnessSheetKind, readonly Plain[]>> = {
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

/** Up to here direct current counts as safety extra-low voltage when touched: IEC 60335-1 clause 8.1.4. */
const SAFE_DC_V = 42.4;

/** Supplies by name and volts, each with a figure after it, in book order; those without a figure are left out. */
function names(
  line: LineResult,
  supplyIds: ReadonlySet<string>,
  figureOf: (supply: BookRow<"supplies">) => string | null,
): (language: "en" | "zh") => readonly string[] {
  return (language) =>
    line.machine.book.tables.supplies.flatMap((supply) => {
      const figure = supplyIds.has(supply.id) ? figureOf(supply) : null;
      if (figure === null) return [];
      const english = supply.label === "" ? supply.id : supply.label;
      const name = language === "zh" && supply.label_zh !== "" ? supply.label_zh : english;
      return [`${withVolts(name, supply.volts)}${figure}`];
    });
}

/**
 * What is dangerous about wires that a sheet is about: mains, coil supplies above 42.4 V DC, supplies and filters
 * that stay charged, protective earth. Each caution defers to local codes and a licensed electrician.
 */
function hazards(
  line: LineResult,
  wires: readonly SizedWire[],
  mains: "mains" | "mainsMachine",
): readonly Caution[] {
  const { machine } = line;
  const classes = new Set(wires.map((w) => w.netClass));
  const supplies = new Set(wires.flatMap((w) => machine.nets.get(w.netId)?.supply ?? []));
  const coils = new Set(
    wires.flatMap((w) => (w.netClass === "coil" ? (machine.nets.get(w.netId)?.supply ?? []) : [])),
  );
  const list: Caution[] = [];
  if (classes.has("mains")) list.push((w) => w.caution[mains]);
  const high = names(line, coils, (s) => (s.volts > SAFE_DC_V ? "" : null));
  if (high("en").length > 0) list.push((w, l) => w.caution.coilSupply(high(l).join(", ")));
  const stored = names(line, supplies, (s) =>
    s.stored_j !== null && s.stored_j > 0 ? `: ${shortNumber(s.stored_j, 2)} J` : null,
  );
  const filter = classes.has("mains") && hasFilter(line, wires);
  if (stored("en").length > 0 || filter)
    list.push((w, l) => w.caution.stored([...stored(l), ...(filter ? [w.caution.filter] : [])].join("; ")));
  if (classes.has("earth")) list.push((w) => w.caution.earth);
  return list;
}

/** Whether a wire ends on an item with a capacitor at mains. */
function hasFilter(line: LineResult, wires: readonly SizedWire[]): boolean {
  const itemIds = new Set(
    wires.flatMap((w) =>
      w.netClass === "mains" ? [w.a, w.b].flatMap((end) => line.machine.points.get(end)?.itemId ?? []) : [],
    ),
  );
  return line.machine.elements.some((e) => e.row.kind === "capacitor" && itemIds.has(e.itemId));
}

const said = (list: readonly Caution[], language: SheetLanguage): readonly string[] =>
  list.map((caution) => say(language, caution));

/**
 * Cautions for a sheet of a harness, each with a line for each language: what is dangerous about its wires, what is
 * about the work, and soldering when a wire ends in a lug or there is a splice.
 */
export function cautionsOf(
  line: LineResult,
  harness: HarnessResult,
  kind: HarnessSheetKind,
  language: SheetLanguage,
  solders = harness.splices.length > 0,
): readonly string[] {
  const work: Plain[] = [...OF_KIND[kind]];
  if (solders && SOLDERED_AT.has(kind)) work.push("solder");
  return said(
    [
      ...hazards(line, harness.wires, "mains"),
      ...work.map(
        (c): Caution =>
          (w) =>
            w.caution[c],
      ),
    ],
    language,
  );
}

/** What is dangerous about the wires of a harness alone, each caution with a line for each language. */
export function wireCautions(
  line: LineResult,
  harness: HarnessResult,
  language: SheetLanguage,
): readonly string[] {
  return said(hazards(line, harness.wires, "mains"), language);
}

/** Cautions for a sheet of the whole machine, each with a line for each language. */
export function machineCautions(line: LineResult, language: SheetLanguage): readonly string[] {
  const wires = [...line.harnesses.values()].flatMap((harness) => harness.wires);
  return said(hazards(line, wires, "mainsMachine"), language);
}
