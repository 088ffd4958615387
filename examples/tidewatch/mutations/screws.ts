import type { FastenerFit, FastenerItem, LineResult, Solid } from "@pinwright/engine";
import { ids, isFreeOf, some } from "./about.ts";
import type { Edit, Typed } from "./edit.ts";
import type { Consequence, Sound } from "./mutation.ts";

/** A fastener that is a row of its own, with how it holds. */
export interface Screw {
  readonly item: FastenerItem;
  readonly fit: FastenerFit;
}

/** Fasteners that are rows of their own and that no finding of a rule names. */
export function screwsFor(sound: Sound, rule: string): readonly Screw[] {
  const { machine, fastening } = sound;
  const isFree = isFreeOf(sound, rule);
  const rows = new Set(machine.book.tables.fasteners.map(({ id }) => id));
  return [...machine.items.values()].flatMap((item) => {
    const fit = fastening.fits.get(item.id);
    return item.kind === "fastener" && fit !== undefined && rows.has(item.id) && isFree(item.id)
      ? [{ item, fit }]
      : [];
  });
}

/** Fasteners of one kind of type that hold in something. */
export const heldIn = (
  sound: Sound,
  rule: string,
  holdsIn: FastenerFit["holdsIn"],
  kind?: FastenerItem["type"]["kind"],
): readonly Screw[] =>
  screwsFor(sound, rule).filter(
    ({ item, fit }) => fit.holdsIn === holdsIn && (kind === undefined || item.type.kind === kind),
  );

/** Id of the type that a mutation makes. */
export const NEW_TYPE = "ft.other";

/** Gives a fastener a type of its own, like the one it has but for some cells. */
export function retype(edit: Edit, { item }: Screw, cells: Typed<"fastener_types">): void {
  edit.addLike("fastener_types", { id: item.type.id }, { id: NEW_TYPE, ...cells });
  edit.set("fasteners", { id: item.id }, { type: NEW_TYPE });
}

/** A type that is new may be taken for another one beside it; where it was, nothing is mixed up any more. */
export const LOOKS_LIKE: readonly Consequence[] = [some("screw-lookalike", ids(NEW_TYPE))];

/** Solids of a panel near a place, in plan. */
export function solidsNear(
  { fastening }: LineResult,
  panelId: string,
  at: { readonly xMm: number; readonly yMm: number },
  withinMm: number,
): readonly Solid[] {
  return [...fastening.solids.values()]
    .flat()
    .filter(
      ({ panelId: panel, box }) =>
        panel === panelId &&
        box.minXMm - withinMm < at.xMm &&
        box.maxXMm + withinMm > at.xMm &&
        box.minYMm - withinMm < at.yMm &&
        box.maxYMm + withinMm > at.yMm,
    );
}

/** Fastener types by how many fasteners there are of each; children of mechanisms count. */
export function typeCounts({ machine }: LineResult): ReadonlyMap<string, readonly FastenerItem[]> {
  const counts = new Map<string, FastenerItem[]>();
  for (const item of machine.items.values()) {
    if (item.kind !== "fastener") continue;
    const known = counts.get(item.type.id);
    if (known === undefined) counts.set(item.type.id, [item]);
    else known.push(item);
  }
  return counts;
}

/** Mechanism types of which the machine has one, so that a change of the type harms nobody else. */
export function singleMechanisms({ machine }: Pick<LineResult, "machine">) {
  const { mechanisms } = machine.book.tables;
  return mechanisms.filter(({ type }) => mechanisms.filter((other) => other.type === type).length === 1);
}
