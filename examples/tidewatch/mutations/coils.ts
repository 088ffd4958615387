import type { CoilRating } from "@pinwright/engine";
import { first, ids, isFreeOf, least, most } from "./about.ts";
import type { Mutation, Sound } from "./mutation.ts";

/** Coils of which something is known, and that no finding of a rule names. */
function coilsFor(sound: Sound, rule: string): readonly CoilRating[] {
  const isFree = isFreeOf(sound, rule);
  return [...sound.ratings.coils.values()].filter(
    ({ elementId, itemId }) => isFree(elementId) && isFree(itemId),
  );
}

const rowOf = ({ machine }: Sound, elementId: string) =>
  machine.elements.find(({ id }) => id === elementId)?.row;

/** Items of the machine that have an element of a row. */
const itemsWith = ({ machine }: Sound, rowId: string): readonly string[] =>
  machine.elements.flatMap((element) => (element.row.id === rowId ? [element.itemId] : []));

const useOf = ({ machine }: Sound, itemId: string) =>
  machine.book.tables.activity.find(({ item }) => item === itemId);

const isHeld = (sound: Sound, { itemId }: CoilRating): boolean => useOf(sound, itemId)?.hold_ms != null;

export const coils: readonly Mutation[] = [
  {
    name: "the coil with the largest current, without its diode",
    rule: "coil-diode-missing",
    plan: (sound) => {
      const coil = most(
        coilsFor(sound, "coil-diode-missing").filter(({ diode }) => diode !== null),
        ({ mostA }) => mostA,
      );
      const rowId = rowOf(sound, coil.diode?.elementId ?? "")?.id ?? "";
      return {
        victim: [coil.itemId, coil.elementId],
        change: (edit) => edit.remove("elements", { id: rowId }),
        // Every coil of its type is without one.
        follows: [first("coil-diode-missing", ids(...itemsWith(sound, rowId)))],
      };
    },
  },
  {
    name: "the diode of the coil type that the machine has one of with the largest current, the wrong way round",
    rule: "coil-diode-missing",
    plan: (sound) => {
      const single = coilsFor(sound, "coil-diode-missing").filter(
        ({ elementId, diode }) =>
          diode !== null && itemsWith(sound, rowOf(sound, elementId)?.id ?? "").length === 1,
      );
      const coil = most(single, ({ mostA }) => mostA);
      const row = rowOf(sound, coil.diode?.elementId ?? "");
      return {
        victim: [coil.itemId, coil.elementId],
        change: (edit) =>
          edit.set("elements", { id: row?.id ?? "" }, { from: row?.to ?? "", to: row?.from ?? "" }),
      };
    },
  },
  {
    name: "the diode that takes the largest current, made for a tenth of it",
    rule: "coil-diode-small",
    plan: (sound) => {
      const coil = most(
        coilsFor(sound, "coil-diode-small").filter(({ diode }) => diode !== null),
        ({ diode }) => diode?.peakA ?? 0,
      );
      const rowId = rowOf(sound, coil.diode?.elementId ?? "")?.id ?? "";
      return {
        victim: [coil.itemId, coil.diode?.elementId ?? ""],
        change: (edit) =>
          edit.set("elements", { id: rowId }, { peak_a: Math.round((coil.diode?.peakA ?? 0) * 10) / 100 }),
        follows: [first("coil-diode-small", ids(...itemsWith(sound, rowId)))],
      };
    },
  },
  {
    name: "the coil that burns soonest below its fuse, without a time-out",
    rule: "coil-stuck",
    plan: (sound) => {
      const coil = least(
        coilsFor(sound, "coil-stuck").filter(({ stuckS, fuseS }) => stuckS !== null && stuckS < (fuseS ?? 0)),
        ({ stuckS }) => stuckS ?? 0,
      );
      return {
        victim: [coil.itemId, coil.elementId],
        change: (edit) => edit.set("activity", { item: coil.itemId }, { timeout_ms: "" }),
        follows: [first("coil-stuck", ids(coil.itemId))],
      };
    },
  },
  {
    name: "the coil that stands being stuck for the shortest time, with a time-out twice as long",
    rule: "coil-stuck",
    plan: (sound) => {
      const coil = least(
        coilsFor(sound, "coil-stuck").filter(
          ({ stuckS, fuseS, timeoutS }) => stuckS !== null && timeoutS !== null && stuckS < (fuseS ?? 0),
        ),
        ({ stuckS }) => stuckS ?? 0,
      );
      return {
        victim: [coil.itemId, coil.elementId],
        change: (edit) =>
          edit.set("activity", { item: coil.itemId }, { timeout_ms: Math.ceil((coil.stuckS ?? 0) * 2000) }),
        follows: [first("coil-stuck", ids(coil.itemId))],
      };
    },
  },
  {
    name: "the coil with the least current that is only pulsed, used twice as much as its winding stands",
    rule: "coil-hot",
    plan: (sound) => {
      const coil = least(
        coilsFor(sound, "coil-hot").filter(
          (one) => one.allowedDuty !== null && one.allowedDuty < 0.5 && !isHeld(sound, one),
        ),
        ({ mostA }) => mostA,
      );
      return {
        victim: [coil.itemId, coil.elementId],
        change: (edit) =>
          edit.set(
            "activity",
            { item: coil.itemId },
            { duty_pct: Math.round((coil.allowedDuty ?? 0) * 200) },
          ),
        // So hot already, it stands being stuck for no time at all.
        follows: [first("coil-stuck", ids(coil.itemId))],
      };
    },
  },
  {
    name: "the held coil with the least current, held at full duty for as long as it may be",
    rule: "coil-held",
    plan: (sound) => {
      const coil = least(
        coilsFor(sound, "coil-held").filter(
          (one) =>
            one.stuckS !== null && Number.isFinite(one.stuckS) && one.askedHoldS > 0 && isHeld(sound, one),
        ),
        ({ mostA }) => mostA,
      );
      return {
        victim: [coil.itemId, coil.elementId],
        change: (edit) =>
          edit.set(
            "activity",
            { item: coil.itemId },
            { hold_ms: 3_600_000, hold_duty_pct: 100, timeout_ms: 4_000_000 },
          ),
        // The time-out that would let it go so late no longer saves it when it sticks.
        follows: [first("coil-stuck", ids(coil.itemId)), first("coil-hot", ids(coil.itemId))],
      };
    },
  },
  {
    name: "the coil with most turns, wound with half of them",
    rule: "coil-winding",
    plan: (sound) => {
      const windings = sound.machine.book.tables.windings.filter(({ turns }) => turns !== null);
      const winding = most(windings, ({ turns }) => turns ?? 0);
      const element = sound.machine.elements.find(({ row }) => row.id === winding.element);
      return {
        victim: [element?.itemId ?? "", element?.id ?? ""],
        change: (edit) =>
          edit.set("windings", { element: winding.element }, { turns: Math.round((winding.turns ?? 0) / 2) }),
      };
    },
  },
  {
    name: "the coil that can give off most heat, fitted where it gives off a tenth",
    rule: "coil-hot",
    plan: (sound) => {
      const hot = coilsFor(sound, "coil-hot").filter(
        ({ allowedDuty, duty }) => allowedDuty !== null && duty > 0,
      );
      const coil = most(hot, ({ meanW }) => meanW);
      const winding = sound.machine.book.tables.windings.find(
        ({ element }) => element === rowOf(sound, coil.elementId)?.id,
      );
      const alike = ids(...itemsWith(sound, winding?.element ?? ""));
      return {
        victim: [coil.itemId, coil.elementId],
        change: (edit) =>
          edit.set("windings", { element: winding?.element ?? "" }, { heat_w: (winding?.heat_w ?? 0) / 10 }),
        // Coils of the same type are fitted alike, and burn sooner when they stick or are held.
        follows: [first("coil-hot", alike), first("coil-stuck", alike), first("coil-held", alike)],
      };
    },
  },
];
