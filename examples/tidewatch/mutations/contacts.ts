import type { BookRow } from "@pinwright/book";
import type { LineResult, SizedWire } from "@pinwright/engine";
import { at, first, ids, least, loneWires, most, ofNet, only, singleBoards, some, wiresOf } from "./about.ts";
import type { Edit } from "./edit.ts";
import type { Mutation } from "./mutation.ts";

/** Id of the row that a mutation adds. */
const CHANGED = "changed";

const changedType = ({ wireType }: Pick<SizedWire, "wireType">): string => `${wireType.id}-${CHANGED}`;

/** Gives a net a wire type of its own: like the one that it has, but for some cells. */
function withType(
  edit: Edit,
  wire: Pick<SizedWire, "netId" | "wireType">,
  cells: Partial<Record<keyof BookRow<"wire_types"> & string, number>>,
): void {
  edit.addLike("wire_types", { id: wire.wireType.id }, { id: changedType(wire), ...cells });
  edit.set("nets", { id: wire.netId }, { wire_type: changedType(wire) });
}

/** Gives a connector of a type a family of its own: like the one that it has, but for some cells. */
function withFamily(
  edit: Edit,
  { id, family }: BookRow<"connectors">,
  cells: Partial<Record<keyof BookRow<"connector_families"> & string, number>>,
): void {
  edit.addLike("connector_families", { id: family }, { id: `${family}-${CHANGED}`, ...cells });
  edit.set("connectors", { id }, { family: `${family}-${CHANGED}` });
}

/** The only wire of a net of a switch. */
const switchWires = (sound: LineResult): readonly SizedWire[] =>
  loneWires(sound).filter(({ netClass }) => netClass === "switch");

/** Connectors of boards that the machine has one of. */
function singleConnectors(sound: LineResult): readonly BookRow<"connectors">[] {
  const types = new Set(singleBoards(sound).map(({ type }) => type));
  return sound.machine.book.tables.connectors.filter(({ board_type }) => types.has(board_type ?? ""));
}

/** Whether the solved circuits know what a net carries, so that the designer's own figure does not count. */
const isSolved = (sound: LineResult, net: string): boolean =>
  wiresOf(sound).some(
    ({ id, netId }) => netId === net && (sound.electric.wires.get(id)?.peakA.most ?? 0) > 0,
  );

export const contacts: readonly Mutation[] = [
  {
    name: "the longest wire of the coil supply, insulated for less than its volts",
    rule: "wire-voltage",
    plan: (sound) => {
      const wire = most(
        wiresOf(sound).filter(({ netId }) => (sound.machine.nets.get(netId)?.volts ?? 0) === 48),
        ({ finishedMm }) => finishedMm,
      );
      const own = ofNet(sound, wire.netId);
      return {
        victim: [wire.id, wire.netId],
        change: (edit) => withType(edit, wire, { volts: 40 }),
        follows: [only("wire-voltage", own)],
      };
    },
  },
  {
    name: "the neutral with most wires, insulated for less than mains asks for",
    rule: "wire-mains",
    plan: (sound) => {
      const neutrals = wiresOf(sound).filter(
        ({ netId, netClass }) => netClass === "mains" && sound.machine.nets.get(netId)?.volts === 0,
      );
      const wire = most(neutrals, ({ netId }) => neutrals.filter((other) => other.netId === netId).length);
      return {
        victim: [wire.id, wire.netId],
        change: (edit) => withType(edit, wire, { volts: 250 }),
        follows: [only("wire-mains", ofNet(sound, wire.netId))],
      };
    },
  },
  {
    name: "the wire of a switch, thicker than its finest contact crimps",
    rule: "contact-conductor",
    plan: (sound) => {
      const finest = ({ a, b }: SizedWire) =>
        Math.min(at(sound, a).family?.area_max_mm2 ?? 9, at(sound, b).family?.area_max_mm2 ?? 9);
      const wire = least(switchWires(sound), finest);
      const victim = least([wire.a, wire.b], (end) => at(sound, end).family?.area_max_mm2 ?? 9);
      return {
        victim: [victim, wire.id],
        change: (edit) => withType(edit, wire, { area_mm2: 0.5 }),
        // Nobody gives a height for such a crimp.
        follows: [some("crimp-height-missing", ids(changedType(wire)))],
      };
    },
  },
  {
    name: "the wire of a switch, in insulation thicker than its finest contact holds",
    rule: "contact-insulation",
    plan: (sound) => {
      const wire = least(switchWires(sound), ({ a, b }) =>
        Math.min(at(sound, a).family?.insulation_max_mm ?? 9, at(sound, b).family?.insulation_max_mm ?? 9),
      );
      const victim = least([wire.a, wire.b], (end) => at(sound, end).family?.insulation_max_mm ?? 9);
      return {
        victim: [victim, wire.id],
        change: (edit) => withType(edit, wire, { od_mm: 2.4 }),
      };
    },
  },
  {
    name: "a family without a crimp height for the conductor that most of its ends have",
    rule: "crimp-height-missing",
    plan: (sound) => {
      const ends = wiresOf(sound).flatMap(({ a, b, wireType }) =>
        [a, b].flatMap((end) => {
          const own = at(sound, end).family;
          return own === null || own.crimp_height_mm === "" ? [] : [{ own, wireType }];
        }),
      );
      const { own, wireType } = most(
        ends,
        (end) => ends.filter((o) => o.own === end.own && o.wireType === end.wireType).length,
      );
      const heights = own.crimp_height_mm
        .split("; ")
        .filter((h) => !h.startsWith(`${wireType.area_mm2} mm²`));
      return {
        victim: [own.id, wireType.id],
        change: (edit) =>
          edit.set("connector_families", { id: own.id }, { crimp_height_mm: heights.join("; ") }),
      };
    },
  },
  {
    name: "the housing of the mains with most cavities, rated below the mains",
    rule: "contact-volts",
    plan: (sound) => {
      const { machine } = sound;
      const mains = new Set(
        machine.ends
          .filter(({ net }) => (machine.nets.get(net)?.volts ?? 0) >= 230)
          .map(({ point }) => at(sound, point).connector),
      );
      const connector = most(
        singleConnectors(sound).filter((one) => mains.has(one)),
        ({ ways }) => ways,
      );
      const end = machine.ends.find(
        ({ point, net }) =>
          at(sound, point).connector === connector && (machine.nets.get(net)?.volts ?? 0) >= 230,
      );
      const { point, net } = end ?? { point: "", net: "" };
      return {
        victim: [point, net],
        change: (edit) => withFamily(edit, connector, { rated_v: 125 }),
      };
    },
  },
  {
    name: "the contact that feeds the largest current that no circuit tells, rated for less",
    rule: "contact-amps",
    plan: (sound) => {
      const { machine } = sound;
      const single = new Set(singleConnectors(sound));
      const fed = machine.ends.flatMap(({ point, net }) => {
        const connector = at(sound, point).connector;
        const row = machine.nets.get(net);
        return connector == null || !single.has(connector) || row?.source !== point || isSolved(sound, net)
          ? []
          : [{ point, net, connector, amps: row.amps ?? 0 }];
      });
      const { point, net, connector, amps } = most(fed, (one) => one.amps);
      return {
        victim: [point, net],
        change: (edit) => withFamily(edit, connector, { rated_a: amps / 2 }),
        // Every contact of that housing is of the weaker kind now.
        follows: [
          first(
            "contact-amps",
            (id) => machine.points.get(id)?.landingId === machine.points.get(point)?.landingId,
          ),
        ],
      };
    },
  },
];
