import { ids, least, most, some } from "./about.ts";
import { CUT, cells, cutAt, onType, rarest } from "./fit.ts";
import type { Mutation, Sound } from "./mutation.ts";
import { heldIn, type Screw, screwsFor } from "./screws.ts";

/** Faults of nuts, tapped holes, heads and what is put on a thread. */
export const threads: readonly Mutation[] = [
  {
    name: "the nutted screw with most thread to spare, with the nut of another thread",
    rule: "nut-thread",
    plan: (sound) => {
      const screw = nutted(sound, "nut-thread");
      const other = sound.machine.book.tables.fastener_types.find(
        ({ id, kind }) => kind === "nut" && id !== screw.item.nut?.id,
      );
      return {
        victim: [screw.item.id, other?.id ?? ""],
        change: cells(screw, { nut: other?.id ?? "" }),
      };
    },
  },
  {
    name: "the nutted screw with most thread to spare, through a flange that takes all of it",
    rule: "nut-short",
    plan: (sound) => {
      const screw = nutted(sound, "nut-short");
      return {
        victim: [screw.item.id, screw.item.nut?.id ?? ""],
        change: cells(screw, { flange_mm: screw.item.flangeMm + 5 }),
        follows: [some("solids-clash", ids(screw.item.id))],
      };
    },
  },
  {
    name: "the nutted screw with most thread to spare, without its nut",
    rule: "nut-missing",
    plan: (sound) => {
      const screw = nutted(sound, "nut-missing");
      return {
        victim: [screw.item.id, screw.item.place.panelId],
        change: cells(screw, { nut: "" }),
      };
    },
  },
  {
    name: "the screw that goes deepest into a tapped hole, in one 2 mm less deep than that",
    rule: "tapped-bottom",
    plan: (sound) => {
      const screw = most(heldIn(sound, "tapped-bottom", "tapped"), ({ fit: { engagedMm } }) => engagedMm);
      return {
        victim: [screw.item.id, screw.item.place.panelId],
        change: cells(screw, { tapped_mm: Math.max(1, Math.floor(screw.fit.engagedMm) - 2) }),
        follows: [some("tapped-short", ids(screw.item.id))],
      };
    },
  },
  {
    name: "the machine screw with least thread in its tapped hole, under a washer of 4 mm",
    rule: "tapped-short",
    plan: (sound) => {
      const screw = least(
        heldIn(sound, "tapped-short", "tapped", "machine-screw"),
        ({ fit: { engagedMm } }) => engagedMm,
      );
      return {
        victim: [screw.item.id, screw.item.place.panelId],
        change: cells(screw, { flange_mm: screw.item.flangeMm + 4 }),
        follows: [some("solids-clash", ids(screw.item.id))],
      };
    },
  },
  {
    name: "the rarest type of wood screw, with threadlocker",
    rule: "threadlocker-wood",
    plan: (sound) => {
      const { typeId, first } = rarest(
        sound,
        ({ item, fit: { holdsIn } }) => item.type.kind === "wood-screw" && holdsIn === "wood",
      );
      return {
        victim: [first.item.id, typeId],
        change: (edit) => edit.set("fastener_types", { id: typeId }, { threadlocker: "yes" }),
        follows: onType("threadlocker-wood", typeId),
      };
    },
  },
  {
    name: "what has fewest screws with threadlocker, made of plastic",
    rule: "threadlocker-plastic",
    plan: (sound) => {
      const locked = screwsFor(sound, "threadlocker-plastic").filter(
        ({ item }) => item.type.threadlocker && item.holds?.startsWith("tp.") === true,
      );
      const holding = (id: string | null) => locked.filter(({ item }) => item.holds === id);
      const { item } = least(locked, (screw) => holding(screw.item.holds).length);
      const held = sound.machine.book.tables.devices.find(({ id }) => id === item.holds);
      return {
        victim: [held?.id ?? "", item.id],
        change: (edit) => edit.set("device_types", { id: held?.type ?? "" }, { plastic: "yes" }),
      };
    },
  },
  {
    name: "the nutted screw with most thread to spare, its hole wider than its nut",
    rule: "head-through",
    plan: (sound) => {
      const screw = nutted(sound, "head-through");
      const nutMm = screw.item.nut?.head_diameter_mm ?? 0;
      return {
        victim: [screw.item.id, CUT],
        change: (edit) =>
          edit.add("cutouts", cutAt(screw, { width_mm: Math.ceil(nutMm) + 3, purpose: "fixing" })),
        // Such a hole is none of its screw's, either.
        follows: [some("pilot-size", ids(CUT))],
      };
    },
  },
];

/** The screw with a nut of its own and most thread beyond it. */
function nutted(sound: Sound, rule: string): Screw {
  return most(
    heldIn(sound, rule, "nut", "machine-screw"),
    ({ fit: { reachMm, woodMm } }) => reachMm - woodMm,
  );
}
