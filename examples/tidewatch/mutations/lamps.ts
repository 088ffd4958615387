import type { LampRating } from "@pinwright/engine";
import {
  anyOf,
  besideSupply,
  first,
  type Ids,
  ids,
  isFreeOf,
  least,
  most,
  ofSupply,
  some,
  wiredTo,
} from "./about.ts";
import type { Mutation, Sound } from "./mutation.ts";

interface LampType {
  readonly lamp: LampRating;
  readonly rowId: string;
  /** Items of the machine with such a lamp. */
  readonly items: readonly string[];
}

/** Every type of lamp with a resistor, with its lamp that gets most current. */
function lampTypes(sound: Sound, rule: string): readonly LampType[] {
  const isFree = isFreeOf(sound, rule);
  const rows = new Map(sound.machine.elements.map(({ id, row }) => [id, row]));
  const types = new Map<string, { lamp: LampRating; items: string[] }>();
  for (const lamp of sound.ratings.lamps.values()) {
    const row = rows.get(lamp.elementId);
    if (row === undefined || lamp.ohm === 0 || !isFree(lamp.itemId)) continue;
    const known = types.get(row.id) ?? { lamp, items: [] };
    known.items.push(lamp.itemId);
    if (lamp.amps > known.lamp.amps) known.lamp = lamp;
    types.set(row.id, known);
  }
  return [...types].map(([rowId, { lamp, items }]) => ({ rowId, lamp, items }));
}

/** Items with the fuses of a supply. */
const fuseItems = ({ ratings }: Sound, supplyId: string): Ids =>
  ids(
    ...[...ratings.fuses.values()]
      .filter((fuse) => fuse.supplyId === supplyId)
      .map(({ elementId }) => elementId.slice(0, elementId.lastIndexOf(":"))),
  );

export const lamps: readonly Mutation[] = [
  {
    name: "the lamp type with fewest lamps, with half the resistance",
    rule: "led-current",
    plan: (sound) => {
      const { lamp, rowId, items } = least(lampTypes(sound, "led-current"), (type) => type.items.length);
      return {
        victim: [lamp.itemId, lamp.elementId],
        change: (edit) => edit.set("elements", { id: rowId }, { ohm: lamp.ohm / 2 }),
        // All of its type, and their resistors with twice the current.
        follows: [
          first("led-current", ids(...items)),
          first("resistor-hot", ids(...items)),
          first("fuse-overloaded", wiredTo(sound, lamp.itemId)),
        ],
      };
    },
  },
  {
    name: "the lamp type with fewest lamps, without its resistor",
    rule: "led-current",
    plan: (sound) => {
      const { lamp, rowId, items } = least(lampTypes(sound, "led-current"), (type) => type.items.length);
      const supplyId = sound.electric.loads.get(lamp.elementId)?.supplyId ?? "";
      return {
        victim: [lamp.itemId, lamp.elementId],
        change: (edit) => edit.set("elements", { id: rowId }, { ohm: 0 }),
        // Nothing holds the current but what feeds it: everything on the way there is too small.
        follows: [
          first("led-current", ids(...items)),
          some("driver-amps", ids(...items)),
          first("fuse-overloaded", anyOf(wiredTo(sound, lamp.itemId), fuseItems(sound, supplyId))),
          ...["contact-hot", "wire-hot", "net-drop"].map((rule) => first(rule, ofSupply(sound, supplyId))),
          // A bundle in which more wires carry more lets each carry less than the supply can hold.
          some("wire-unprotected", besideSupply(sound, supplyId)),
        ],
      };
    },
  },
  {
    name: "the lamp type with the hottest resistor, made for half of that heat",
    rule: "resistor-hot",
    plan: (sound) => {
      const { lamp, rowId, items } = most(lampTypes(sound, "resistor-hot"), (type) => type.lamp.watts);
      return {
        victim: [lamp.itemId, lamp.elementId],
        change: (edit) => edit.set("elements", { id: rowId }, { rated_w: Math.round(lamp.watts * 50) / 100 }),
        follows: [first("resistor-hot", ids(...items))],
      };
    },
  },
  {
    name: "the lamp type with fewest lamps in a multiplex of one in ten, its resistor chosen for the mean alone",
    rule: "led-current",
    plan: (sound) => {
      const { lamp, rowId, items } = least(lampTypes(sound, "led-current"), (type) => type.items.length);
      const ohm = (lamp.volts - lamp.forwardV) / ((lamp.ratedA ?? 0) * 10);
      return {
        victim: [lamp.itemId, lamp.elementId],
        change: (edit) => {
          edit.set(
            "elements",
            { id: rowId },
            { ohm: Math.round(ohm * 100) / 100, peak_a: (lamp.ratedA ?? 0) * 4 },
          );
          for (const item of items) edit.add("activity", { item, duty_pct: 10 });
        },
        follows: [
          first("led-current", ids(...items)),
          some("driver-amps", ids(...items)),
          first("fuse-overloaded", wiredTo(sound, lamp.itemId)),
        ],
      };
    },
  },
];
