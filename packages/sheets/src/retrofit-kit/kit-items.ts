import type { ItemFact, MachineFacts } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { isLicensed } from "./kit-wires.ts";

/** A place or turn is another when it differs by more than this. */
const PLACE_MM = 0.05;
const TURN_DEG = 0.05;

/** Something that was fitted later is told of when it stands so near: common practice, no source. */
const NEAR_MM = 60;

/** One thing that is done to an item in a machine that was built before. */
export interface ItemWork {
  readonly id: string;
  readonly was: ItemFact | null;
  readonly is: ItemFact | null;
  readonly moved: boolean;
  readonly turned: boolean;
  readonly replaced: boolean;
  /** It has mains or protective earth on it. */
  readonly licensed: boolean;
}

const isElsewhere = (was: ItemFact, is: ItemFact): boolean =>
  was.panel !== is.panel || was.side !== is.side || Math.hypot(was.xMm - is.xMm, was.yMm - is.yMm) > PLACE_MM;

const isTurned = (was: ItemFact, is: ItemFact): boolean =>
  Math.abs(((was.rotationDeg - is.rotationDeg + 540) % 360) - 180) > TURN_DEG;

/** Items that are new, gone, elsewhere, turned or of another kind. What a mechanism carries moves with it. */
export function itemWork(before: MachineFacts, after: MachineFacts): readonly ItemWork[] {
  const licensed = licensedItems([before, after]);
  const ids = [...new Set([...Object.keys(before.items), ...Object.keys(after.items)])].sort(compareText);
  return ids.flatMap((id): ItemWork[] => {
    const [was = null, is = null] = [before.items[id], after.items[id]];
    const carried = is?.parent ?? was?.parent ?? "";
    const same = was !== null && is !== null;
    const parent = [before.items[carried], after.items[carried]];
    const parentMoves =
      parent[0] !== undefined &&
      parent[1] !== undefined &&
      (isElsewhere(parent[0], parent[1]) || isTurned(parent[0], parent[1]));
    const goesWithParent = carried !== "" && (parent[0] === undefined || parent[1] === undefined);
    if (goesWithParent) return [];
    const moved = same && !parentMoves && isElsewhere(was, is);
    const turned = same && !parentMoves && isTurned(was, is);
    const replaced = same && was.type !== is.type;
    if (same && !moved && !turned && !replaced) return [];
    return [{ id, was, is, moved, turned, replaced, licensed: licensed.has(id) }];
  });
}

/** Items that a wire of mains or protective earth ends on. */
function licensedItems(sides: readonly MachineFacts[]): ReadonlySet<string> {
  return new Set(
    sides.flatMap(({ wires }) =>
      Object.values(wires)
        .filter(isLicensed)
        .flatMap(({ a, b }) => [a.item, b.item]),
    ),
  );
}

/**
 * Items that were fitted later than one and stand beside it: what may be in the way of taking it off. By their middles
 * only, for a release keeps no bodies; whoever does the work sees whether they are.
 */
export function fittedBeside(facts: MachineFacts, id: string): readonly string[] {
  const item = facts.items[id];
  if (item === undefined) return [];
  const stepOf = stepNumbers(facts);
  const own = stepOf.get(id);
  if (own === undefined) return [];
  return Object.entries(facts.items)
    .filter(
      ([other, { panel, side, xMm, yMm, kind, parent }]) =>
        other !== id &&
        kind !== "fastener" &&
        parent === "" &&
        item.parent !== other &&
        panel === item.panel &&
        side === item.side &&
        Math.hypot(xMm - item.xMm, yMm - item.yMm) <= NEAR_MM &&
        (stepOf.get(other) ?? 0) > own,
    )
    .map(([other]) => other)
    .sort(compareText);
}

/** Number of the step that fits each item. */
export function stepNumbers({ steps }: MachineFacts): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  for (const { number, items } of Object.values(steps))
    for (const id of items) numbers.set(id, Math.max(number, numbers.get(id) ?? 0));
  return numbers;
}
