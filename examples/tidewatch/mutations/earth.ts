import { anyOf, at, first, ids, least, most, ofNet, only, some, wiresOf } from "./about.ts";
import type { Mutation } from "./mutation.ts";

export const earth: readonly Mutation[] = [
  {
    name: "the supply unit that the machine has one of with the largest current, its zero tied to its case",
    rule: "earth-second",
    plan: (sound) => {
      const { machine } = sound;
      const { supplies, device_types, devices, terminals } = machine.book.tables;
      const found = supplies.flatMap((supply) => {
        const { item, localId } = at(sound, supply.negative ?? "");
        const type = item?.kind === "device" ? item.type : undefined;
        if (item === null || type === undefined || !device_types.includes(type)) return [];
        const single = devices.filter((device) => device.type === type.id).length === 1;
        const earth = terminals.find(
          (row) =>
            row.device_type === type.id &&
            machine.nets.get(
              machine.ends.find(({ point }) => point === `${item.id}:${row.terminal}`)?.net ?? "",
            )?.class === "earth",
        );
        return single && earth !== undefined ? [{ supply, item, type, localId, earth: earth.terminal }] : [];
      });
      const { supply, item, type, localId, earth: terminal } = most(found, (one) => one.supply.rated_a);
      return {
        victim: [supply.id, item.id],
        change: (edit) =>
          edit.add("elements", {
            id: "el.added-tie",
            device_type: type.id,
            kind: "resistor",
            from: localId,
            to: terminal,
            ohm: 0.01,
          }),
      };
    },
  },
  {
    name: "the mechanism with the highest metal, without its row in the table of bonds",
    rule: "metal-unbonded",
    plan: (sound) => {
      const bonds = sound.machine.book.tables.bonds.filter(({ item }) => {
        const metal = sound.machine.items.get(item ?? "");
        return metal?.kind === "mechanism" && metal.type.needs_bond;
      });
      const height = (item: string | null) => {
        const metal = sound.machine.items.get(item ?? "");
        return metal?.kind === "mechanism" ? metal.type.height_mm : 0;
      };
      const bond = most(bonds, ({ item }) => height(item));
      return {
        victim: [bond.item ?? ""],
        change: (edit) => edit.remove("bonds", { id: bond.id }),
      };
    },
  },
  {
    name: "the bond with the longest wire, its wire taken off",
    rule: "bond-open",
    plan: (sound) => {
      const wires = wiresOf(sound);
      const wireAt = (point: string) => wires.filter(({ a, b }) => a === point || b === point);
      const bond = most(
        sound.machine.book.tables.bonds.filter(({ at: point }) => wireAt(point).length === 1),
        ({ at: point }) => wireAt(point)[0]?.finishedMm ?? 0,
      );
      const wire = wireAt(bond.at)[0];
      const other = wire?.a === bond.at ? wire.b : (wire?.a ?? "");
      const net = wire?.netId ?? "";
      return {
        victim: [bond.id, bond.at],
        change: (edit) => edit.remove("ends", { point: bond.at }),
        follows: [
          only("pin-unwired", ids(bond.at)),
          // The stud at the other end carries nothing more; the pinned chain names it.
          first("choice-not-followed", ids(net)),
          first("end-unwired", ids(other)),
          some("pinboard-peg-unknown", ids(wire?.harnessId ?? "")),
        ],
      };
    },
  },
  {
    name: "the bond with the longest wire, in wire that is thinner than it asks for",
    rule: "bond-thin",
    plan: (sound) => {
      const { bonds, wire_types } = sound.machine.book.tables;
      const wires = wiresOf(sound);
      const found = bonds.flatMap((bond) => {
        const on = wires.filter(({ a, b }) => a === bond.at || b === bond.at);
        const [wire] = on;
        return wire === undefined || on.length > 1 || bond.wire_type !== wire.wireType.id
          ? []
          : [{ bond, wire }];
      });
      const { bond, wire } = most(found, (one) => one.wire.finishedMm);
      const earthTypes = wire_types.filter(({ colours }) => colours.includes(wire.colour));
      const type = `${least(earthTypes, ({ area_mm2 }) => area_mm2).id}-changed`;
      return {
        victim: [bond.id, wire.id],
        change: (edit) => {
          edit.addLike("wire_types", { id: wire.wireType.id }, { id: type, area_mm2: 0.52, strands: 26 });
          edit.add("choices", { kind: "wire-type", subject: wire.id, value: type });
        },
        // Nobody gives a height for such a crimp.
        follows: [some("crimp-height-missing", ids(type))],
      };
    },
  },
  {
    name: "the coil board with the least current in the harness of the logic's return, returning with the logic",
    rule: "return-shared",
    plan: (sound) => {
      const { machine } = sound;
      const netOf = new Map(machine.ends.map(({ point, net }) => [point, net]));
      const isReturn = (net: string | undefined, netClass: string) => {
        const row = machine.nets.get(net ?? "");
        return row?.class === netClass && row.volts === 0 && row.source !== null;
      };
      const pairs = machine.ends.flatMap((coil) => {
        if (!isReturn(coil.net, "coil") || machine.nets.get(coil.net)?.source === coil.point) return [];
        const ends = machine.ends.filter(({ net }) => net === coil.net);
        if (ends.length !== 2) return [];
        const logic = machine.ends.find(
          (end) =>
            end.harness === coil.harness && isReturn(end.net, "logic") && netOf.get(end.point) === end.net,
        );
        return logic === undefined ? [] : [{ coil, logic, other: ends.find((end) => end !== coil) }];
      });
      const { coil, logic, other } = most(pairs, ({ coil: end }) => -(machine.nets.get(end.net)?.amps ?? 0));
      const own = ofNet(sound, logic.net);
      const zeros = machine.book.tables.supplies.map(({ negative }) => ids(netOf.get(negative ?? "") ?? ""));
      return {
        victim: [logic.net],
        change: (edit) => {
          edit.set("ends", { point: coil.point }, { net: logic.net });
          edit.remove("ends", { point: other?.point ?? "" });
          edit.remove("nets", { id: coil.net });
        },
        // The coils' current goes to their supply over the star point and lifts every zero that is tied there.
        follows: [
          first("net-classes-mixed", ids(logic.net)),
          first("pin-unwired", ids(other?.point ?? "")),
          first("pin-class", ids(coil.point)),
          first("net-drop", anyOf(own, ...zeros)),
          first("return-shared", anyOf(...zeros)),
          // It was a chain of two and has three ends now.
          first("settled-dropped", ids(logic.net)),
          // They meet in a splice, which Tidewatch has nowhere else and names no part for.
          first("part-unnamed", ids("splice")),
        ],
      };
    },
  },
];
