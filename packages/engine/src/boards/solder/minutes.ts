import type { SolderMinutes } from "../../model/index.ts";
import type { KindMinutes, SessionKind } from "./kinds.ts";

/** Minutes of so many boards of a kind by hand. */
export const handTotal = (kind: SessionKind, boards: number): number =>
  kind.hand.setup + boards * eachOf(kind.hand);

/** Minutes of so many boards of a kind in the bath, without what a session takes once. */
const bathTotal = (kind: SessionKind, boards: number): number =>
  kind.bath.setup + boards * eachOf(kind.bath) + Math.ceil(boards / kind.carrier) * kind.dip;

/** Minutes of one board, set-up and dips apart. */
export const eachOf = (m: KindMinutes): number => m.stuff + m.solder + m.mask + m.wash + m.mend + m.afterWash;

/** What the bath saves at so many boards of a kind; below 0: it takes longer. */
export const savingOf = (kind: SessionKind, boards: number): number =>
  handTotal(kind, boards) - bathTotal(kind, boards);

/**
 * Minutes of a session in which some kinds go into the bath and the others are soldered by hand.
 * @param once minutes that the bath takes once, when it is lit at all
 */
export function sessionMinutes(
  kinds: readonly SessionKind[],
  inBath: ReadonlySet<string>,
  once: number,
): SolderMinutes {
  const sum = {
    setup: inBath.size > 0 ? once : 0,
    stuff: 0,
    solder: 0,
    mask: 0,
    wash: 0,
    mend: 0,
    afterWash: 0,
  };
  for (const kind of kinds) {
    const isDipped = inBath.has(kind.typeId);
    const m = isDipped ? kind.bath : kind.hand;
    sum.setup += m.setup;
    sum.stuff += m.stuff * kind.count;
    sum.solder += m.solder * kind.count + (isDipped ? Math.ceil(kind.count / kind.carrier) * kind.dip : 0);
    sum.mask += m.mask * kind.count;
    sum.wash += m.wash * kind.count;
    sum.mend += m.mend * kind.count;
    sum.afterWash += m.afterWash * kind.count;
  }
  const total = Object.values(sum).reduce((all, minutes) => all + minutes, 0);
  return { ...sum, total };
}
