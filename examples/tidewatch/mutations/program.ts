import type { LineResult, PlacedElement } from "@pinwright/engine";
import { at, first, ids, least, most, ofSupply, singleBoards } from "./about.ts";
import type { Mutation } from "./mutation.ts";

/** Elements of boards that the machine has one of. */
function singleElements(sound: LineResult): readonly PlacedElement[] {
  const single = new Set(singleBoards(sound).map(({ id }) => id));
  return sound.machine.elements.filter(({ itemId }) => single.has(itemId));
}

/** Elements of other items whose end is in the same net as one end of this. */
function beside({ machine }: LineResult, { itemId, fromPointId, toPointId }: PlacedElement) {
  const netOf = new Map(machine.ends.map(({ point, net }) => [point, net]));
  const own = new Set([netOf.get(fromPointId), netOf.get(toPointId)].filter((net) => net !== undefined));
  return (end: "fromPointId" | "toPointId" | null, kinds: readonly string[]) =>
    machine.elements.filter(
      (other) =>
        other.itemId !== itemId &&
        kinds.includes(other.row.kind) &&
        (["fromPointId", "toPointId"] as const).some(
          (side) => (end === null || side === end) && own.has(netOf.get(other[side]) ?? "?"),
        ),
    );
}

/** Boards of a bus in the order of their addresses. */
const addressed = ({ machine }: LineResult) =>
  machine.book.tables.boards
    .filter(({ address }) => address !== null)
    .sort((p, q) => (p.address ?? 0) - (q.address ?? 0));

export const program: readonly Mutation[] = [
  {
    name: "the board with the highest address, set to the lowest",
    rule: "address-twice",
    plan: (sound) => {
      const boards = addressed(sound);
      const [first, last] = [boards[0], boards.at(-1)];
      return {
        victim: [first?.id ?? "", last?.id ?? ""],
        change: (edit) => edit.set("boards", { id: last?.id ?? "" }, { address: first?.address ?? 0 }),
      };
    },
  },
  {
    name: "the last board of the bus with the highest address there, its terminator off",
    rule: "bus-unterminated",
    plan: (sound) => {
      const board = most(
        addressed(sound).filter(({ terminated }) => terminated),
        ({ address }) => address ?? 0,
      );
      return {
        victim: [board.id],
        change: (edit) => edit.set("boards", { id: board.id }, { terminated: "" }),
      };
    },
  },
  {
    name: "the first board of a bus, its terminator on though the bus goes on",
    rule: "bus-terminated-midway",
    plan: (sound) => {
      const board = least(
        addressed(sound).filter(({ terminated }) => !terminated),
        ({ address }) => address ?? 0,
      );
      return {
        victim: [board.id],
        change: (edit) => edit.set("boards", { id: board.id }, { terminated: "yes" }),
      };
    },
  },
  {
    name: "the strongest driver of a single board for a coil, left off the board",
    rule: "device-undriven",
    plan: (sound) => {
      const drivers = singleElements(sound).filter(
        (one) => one.row.kind === "driver" && beside(sound, one)(null, ["coil"]).length > 0,
      );
      const driver = most(drivers, ({ row }) => row.amp ?? 0);
      const coil = beside(sound, driver)(null, ["coil"])[0];
      return {
        victim: [coil?.itemId ?? "", coil?.id ?? ""],
        change: (edit) => edit.remove("elements", { id: driver.row.id }),
      };
    },
  },
  {
    name: "the last input of a single board for a switch, left off the board",
    rule: "device-unread",
    plan: (sound) => {
      const inputs = singleElements(sound).filter(
        (one) => one.row.kind === "input" && beside(sound, one)(null, ["contact"]).length > 0,
      );
      const input = inputs.at(-1) ?? most(inputs, () => 0);
      const contact = beside(sound, input)(null, ["contact"])[0];
      return {
        victim: [contact?.itemId ?? "", contact?.id ?? ""],
        change: (edit) => edit.remove("elements", { id: input.row.id }),
      };
    },
  },
  {
    name: "the strongest driver of a single board for a coil, made too weak for it",
    rule: "driver-amps",
    plan: (sound) => {
      const drivers = singleElements(sound).filter(
        (one) => one.row.kind === "driver" && beside(sound, one)(null, ["coil"]).length > 0,
      );
      const driver = most(drivers, ({ row }) => row.amp ?? 0);
      const coil = beside(sound, driver)(null, ["coil"])[0];
      const amps = sound.electric.loads.get(coil?.id ?? "")?.amps.nominal ?? 0;
      return {
        victim: [driver.fromPointId, coil?.itemId ?? ""],
        change: (edit) => edit.set("elements", { id: driver.row.id }, { amp: Math.round(amps * 80) / 100 }),
      };
    },
  },
  {
    name: "the driver of a lamp on a single board, where an input was drawn instead",
    rule: "load-on-input",
    plan: (sound) => {
      const drivers = singleElements(sound).filter(
        (one) => one.row.kind === "driver" && beside(sound, one)("toPointId", ["led"]).length > 0,
      );
      const driver = most(drivers, ({ row }) => row.amp ?? 0);
      const lamp = beside(sound, driver)("toPointId", ["led"])[0];
      return {
        victim: [lamp?.itemId ?? "", driver.fromPointId],
        change: (edit) => edit.set("elements", { id: driver.row.id }, { kind: "input" }),
        // Nothing else switches that lamp.
        follows: [first("device-undriven", ids(lamp?.itemId ?? ""))],
      };
    },
  },
  {
    name: "the last input of a single board for a switch, where a driver was drawn instead",
    rule: "switch-on-driver",
    plan: (sound) => {
      const inputs = singleElements(sound).filter(
        (one) =>
          one.row.kind === "input" &&
          beside(sound, one)(null, ["contact"]).length > 0 &&
          at(sound, one.fromPointId).connector !== null,
      );
      const input = inputs.at(-1) ?? most(inputs, () => 0);
      const contact = beside(sound, input)(null, ["contact"])[0];
      return {
        victim: [contact?.itemId ?? "", input.fromPointId],
        change: (edit) => edit.set("elements", { id: input.row.id }, { kind: "driver" }),
        follows: [first("device-unread", ids(contact?.itemId ?? ""))],
      };
    },
  },
  {
    name: "two coils of one board that never fire together, on one driver",
    rule: "driver-shared",
    plan: (sound) => {
      const { machine } = sound;
      const pairs = machine.elements.flatMap((driver) => {
        const coil =
          driver.row.kind === "driver" ? beside(sound, driver)("toPointId", ["coil"])[0] : undefined;
        return coil === undefined ? [] : [{ driver, coil }];
      });
      const inGroup = (id: string) => machine.book.tables.groups.find(({ items }) => items.includes(id));
      const couples = pairs.flatMap((p, i) =>
        pairs.slice(i + 1).flatMap((q) => {
          const group = inGroup(p.coil.itemId);
          const alone = group !== undefined && group === inGroup(q.coil.itemId) && group.most_on === 1;
          return alone && p.driver.itemId === q.driver.itemId ? [{ p, q }] : [];
        }),
      );
      const { p, q } = least(couples, () => 0);
      const netOf = new Map(machine.ends.map(({ point, net }) => [point, net]));
      return {
        victim: [p.driver.fromPointId, p.coil.itemId, q.coil.itemId],
        change: (edit) => {
          edit.set("ends", { point: q.coil.toPointId }, { net: netOf.get(p.driver.fromPointId) ?? "" });
          edit.remove("ends", { point: q.driver.fromPointId });
          edit.remove("nets", { id: netOf.get(q.driver.fromPointId) ?? "" });
        },
        // Both pull at once: more current in the moment that counts.
        follows: [
          first("pin-unwired", ids(q.driver.fromPointId)),
          first("net-drop", ofSupply(sound, sound.electric.loads.get(p.coil.id)?.supplyId ?? "")),
        ],
      };
    },
  },
  {
    name: "the longest pulse without a hold, made longer than its board allows",
    rule: "pulse-past-timeout",
    plan: (sound) => {
      const pulsed = sound.machine.book.tables.activity.filter(
        ({ pulse_ms, timeout_ms, hold_ms }) => pulse_ms !== null && timeout_ms !== null && hold_ms === null,
      );
      const { item, timeout_ms } = most(pulsed, ({ pulse_ms }) => pulse_ms ?? 0);
      return {
        victim: [item],
        change: (edit) => edit.set("activity", { item }, { pulse_ms: (timeout_ms ?? 0) + 50 }),
      };
    },
  },
];
