import { at, first, ids, isFreeOf, most, netsAt, ofSupply, singleBoards, some, wiredTo } from "./about.ts";
import type { Consequence, Mutation, Sound } from "./mutation.ts";

/** Supplies that no finding of a rule names, with their rows. */
function suppliesFor(sound: Sound, rule: string) {
  const isFree = isFreeOf(sound, rule);
  return [...sound.ratings.supplies.values()].flatMap((rating) => {
    const row = sound.machine.book.tables.supplies.find(({ id }) => id === rating.supplyId);
    return row === undefined || !isFree(row.id) ? [] : [{ rating, row }];
  });
}

/** Supplies that sit on a board and live on another one. */
const converterIds = (sound: Sound): readonly string[] =>
  suppliesFor(sound, "supply-overloaded").flatMap(({ row }) =>
    at(sound, row.positive ?? "").item?.kind === "board" ? [row.id] : [],
  );

const tenth = (amps: number): number => Math.round(amps * 10) / 10;

/** What more current in the worst moment of a supply does to what it feeds. */
const strained = (sound: Sound, supplyId: string): readonly Consequence[] => [
  first("net-drop", ofSupply(sound, supplyId)),
  first("supply-peak", ids(supplyId)),
];

export const supplies: readonly Mutation[] = [
  {
    name: "the supply with the largest load for its rating, one size too small for hard play",
    rule: "supply-overloaded",
    plan: (sound) => {
      const { rating, row } = most(
        suppliesFor(sound, "supply-overloaded").filter((one) => one.row.limit_mode !== "none"),
        (one) => one.rating.rmsA / one.rating.ratedA,
      );
      return {
        victim: [row.id],
        change: (edit) => edit.set("supplies", { id: row.id }, { rated_a: tenth(rating.rmsA * 0.8) }),
      };
    },
  },
  {
    name: "the converter of a board that is loaded most, too small for what hangs on it",
    rule: "supply-overloaded",
    plan: (sound) => {
      const converters = new Set(converterIds(sound));
      const { rating, row } = most(
        suppliesFor(sound, "supply-overloaded").filter((one) => converters.has(one.row.id)),
        (one) => one.rating.rmsA / one.rating.ratedA,
      );
      return {
        victim: [row.id],
        change: (edit) => edit.set("supplies", { id: row.id }, { rated_a: tenth(rating.rmsA * 0.8) }),
      };
    },
  },
  {
    name: "the supply with the largest worst moment for its limit, limited below it",
    rule: "supply-peak",
    plan: (sound) => {
      const limited = suppliesFor(sound, "supply-peak").filter(
        ({ rating, row }) => row.limit_mode !== "none" && rating.limitA !== null,
      );
      const { rating, row } = most(limited, (one) => one.rating.worstA / (one.rating.limitA ?? 1));
      return {
        victim: [row.id],
        change: (edit) => edit.set("supplies", { id: row.id }, { limit_a: tenth(rating.worstA * 0.9) }),
        // With less current in a short circuit it opens fewer of its fuses.
        follows: [some("fuse-never-opens", ids(row.id))],
      };
    },
  },
  {
    name: "the group with most members beside its limit, all of them let on together",
    rule: "supply-peak",
    plan: (sound) => {
      const { groups } = sound.machine.book.tables;
      const group = most(groups, ({ items, most_on }) => items.length - most_on);
      const load = [...sound.electric.loads.values()].find(({ itemId }) => group.items.includes(itemId));
      const supplyId = load?.supplyId ?? "";
      return {
        victim: [supplyId],
        change: (edit) => edit.set("groups", { id: group.id }, { most_on: group.items.length }),
        follows: strained(sound, supplyId),
      };
    },
  },
  {
    name: "the largest load of a single board on a converter, three times as large",
    rule: "supply-overloaded",
    plan: (sound) => {
      const single = new Set(singleBoards(sound).map(({ id }) => id));
      const converters = new Set(converterIds(sound));
      const loads = sound.machine.elements.filter(
        ({ id, itemId, row }) =>
          row.kind === "load" &&
          single.has(itemId) &&
          converters.has(sound.electric.loads.get(id)?.supplyId ?? ""),
      );
      const load = most(loads, ({ row }) => row.amp ?? 0);
      const supplyId = sound.electric.loads.get(load.id)?.supplyId ?? "";
      const own = ofSupply(sound, supplyId);
      return {
        victim: [supplyId],
        change: (edit) => edit.set("elements", { id: load.row.id }, { amp: (load.row.amp ?? 0) * 3 }),
        follows: [
          ...strained(sound, supplyId),
          first("fuse-overloaded", wiredTo(sound, load.itemId)),
          // Its other supply returns in the same wire.
          first("net-drop", netsAt(sound, load.itemId)),
          first("contact-hot", own),
          first("wire-hot", own),
        ],
      };
    },
  },
];
