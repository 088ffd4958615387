import type { LineResult, LoadVolts } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { say } from "../compose/say.ts";
import type { TableRow } from "../compose/table.ts";
import { itemName } from "../machine-facts.ts";

/** Numbers of moments by which a list of loads refers to them. */
export interface MomentNumbers {
  readonly nameOf: (momentId: string, language: SheetLanguage) => string;
  /** In the order of their numbers. */
  readonly ids: readonly string[];
}

const ALWAYS = "always";

/** Numbers the moments of some loads in the order in which they come. */
export function momentNumbers(loads: readonly LoadVolts[]): MomentNumbers {
  const ids = [...new Set(loads.map((load) => load.momentId))].filter((id) => id !== ALWAYS);
  const numbers = new Map(ids.map((id, i) => [id, `M${i + 1}`]));
  return {
    nameOf: (id, language) => numbers.get(id) ?? say(language, (w) => w.machine.drops.always),
    ids,
  };
}

/** A row for each moment: what is on then besides what is always on. */
export function momentRows(
  line: LineResult,
  moments: MomentNumbers,
  language: SheetLanguage,
): readonly TableRow[] {
  const always = new Set(line.electric.moments.get(ALWAYS)?.loadIds);
  return moments.ids.map((id): TableRow => {
    const on = (line.electric.moments.get(id)?.loadIds ?? []).filter((loadId) => !always.has(loadId));
    const items = new Set(on.map((loadId) => line.electric.loads.get(loadId)?.itemId ?? loadId));
    const names = [...items].map((itemId) => itemName(line, itemId, language));
    const text = names.length === 0 ? say(language, (w) => w.machine.drops.nothing) : names.join(", ");
    return { kind: "row", cells: [moments.nameOf(id, language), text] };
  });
}
