import { SharedMemory } from "@pinwright/kernel";
import type { Item, Machine, PlacedElement, Solid } from "../../model/index.ts";

/** What decides whether two things stand well beside each other, apart from themselves. */
export interface ClashSettings {
  readonly solidsMm: number;
  readonly movingMm: number;
  readonly boardMm: number;
  readonly stepMm: number;
}

/** The shop's clearances, mm. */
export const clashSettings = ({ shop: { numbers } }: Machine): ClashSettings => ({
  solidsMm: numbers.clear_solids_mm,
  movingMm: numbers.clear_moving_mm,
  boardMm: numbers.clear_board_mm,
  stepMm: numbers.length_step_mm,
});

/** Largest distance beside each other that any rule of pairs looks at, mm. */
export const farthestMm = (settings: ClashSettings): number => Math.max(settings.solidsMm, settings.movingMm);

/** The item that is put in as a whole: a device of a mechanism goes in with it. */
export const wholeId = (item: Item): string =>
  item.kind === "device" && item.parentId !== null ? item.parentId : item.id;

const wired = new SharedMemory<readonly PlacedElement[], ReadonlySet<string>>();

/** Items, as wholes, that have something electrical in them. */
export const electricItems = ({ elements }: Machine): ReadonlySet<string> =>
  wired.ask(
    elements,
    [],
    () =>
      new Set(
        elements.map(({ itemId }) => (itemId.includes("/") ? (itemId.split("/")[0] ?? itemId) : itemId)),
      ),
  );

/** Whether two solids are one thing by design: parts of one item, or a fastener and what it holds. */
export function oneThing(items: Machine["items"], a: Solid, b: Solid): boolean {
  if (a.itemId === b.itemId) return true;
  return holds(items, a, b) || holds(items, b, a);
}

function holds(items: Machine["items"], fastener: Solid, held: Solid): boolean {
  if (fastener.kind !== "fastener") return false;
  const item = items.get(fastener.itemId);
  if (item?.kind !== "fastener" || item.holds === null) return false;
  const target = items.get(item.holds);
  return target !== undefined && wholeId(target) === held.itemId;
}

/** Heights of a solid off a side of its panel, mm. */
export function offSide(
  solid: Solid,
  side: Solid["side"],
  thicknessMm: number,
): { readonly fromMm: number; readonly toMm: number } {
  if (side === "top") return { fromMm: solid.lowMm, toMm: solid.highMm };
  return { fromMm: -thicknessMm - solid.highMm, toMm: -thicknessMm - solid.lowMm };
}
