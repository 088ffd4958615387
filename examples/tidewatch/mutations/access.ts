import type { FastenerItem } from "@pinwright/engine";
import { ids, least, most, some } from "./about.ts";
import type { Mutation, Sound } from "./mutation.ts";
import { heldIn, screwsFor, singleMechanisms, solidsNear, typeCounts } from "./screws.ts";

/** Screws of the only mechanism of its type with the largest coil that stands low on its plate. */
function lowCoil(sound: Sound) {
  const { mechanism_devices, device_types, mechanism_fasteners } = sound.machine.book.tables;
  const types = new Map(device_types.map((type) => [type.id, type]));
  const found = singleMechanisms(sound).flatMap((mechanism) =>
    mechanism_devices
      .filter((row) => row.mechanism_type === mechanism.type && types.get(row.device_type)?.class === "coil")
      .filter(({ z_mm }) => z_mm >= 0 && z_mm < 10)
      .map((coil) => ({ mechanism, coil, type: types.get(coil.device_type) })),
  );
  const best = most(found, ({ type }) => (type?.width_mm ?? 0) * (type?.depth_mm ?? 0));
  const screw = mechanism_fasteners.find((row) => row.mechanism_type === best.mechanism.type);
  return { ...best, screw };
}

/** Fasteners with a nut on a panel of the cabinet, whose far side is free around it. */
function freeNuts(sound: Sound, rule: string) {
  return heldIn(sound, rule, "nut").filter(({ item: { place, id, holds } }) => {
    const near = solidsNear(sound, place.panelId, place, 60);
    return near.every(({ itemId }) => itemId === id || itemId === holds || itemId.startsWith("fx."));
  });
}

export const access: readonly Mutation[] = [
  {
    name: "the type with fewest fasteners, of a drive that the shop has no tool for",
    rule: "driver-missing",
    plan: (sound) => {
      const [typeId, items] = least(
        [...typeCounts(sound)].filter(([, list]) => (list[0]?.type.drive ?? "") !== ""),
        ([, list]) => list.length,
      );
      return {
        victim: [typeId],
        change: (edit) => edit.set("fastener_types", { id: typeId }, { drive: "star 20" }),
        follows: [
          some("screw-lookalike", ids(typeId)),
          some("driver-blocked", ids(...items.map((item: FastenerItem) => item.id))),
        ],
      };
    },
  },
  {
    name: "the largest low coil of a mechanism, over one of its own screws",
    rule: "driver-blocked",
    plan: (sound) => {
      const { mechanism, coil, screw } = lowCoil(sound);
      const id = `${mechanism.id}/${screw?.child ?? ""}`;
      return {
        victim: [id, mechanism.id],
        change: (edit) =>
          edit.set(
            "mechanism_fasteners",
            { mechanism_type: mechanism.type, child: screw?.child ?? "" },
            { x_mm: coil.x_mm, y_mm: coil.y_mm },
          ),
        // It lies in other wood there, and no board is over it.
        follows: ["screw-edge", "screw-no-wood", "screw-spacing", "screw-meets"].map((rule) =>
          some(rule, ids(id)),
        ),
      };
    },
  },
  {
    name: "the highest coil of a mechanism, grown over all its screws",
    rule: "driver-blocked",
    plan: (sound) => {
      const { mechanism, screw } = lowCoil(sound);
      const own = new RegExp(`^${mechanism.id}/`);
      return {
        victim: [`${mechanism.id}/${screw?.child ?? ""}`, mechanism.id],
        change: (edit) =>
          edit.add("bodies", {
            id: "bo.other",
            mechanism_type: mechanism.type,
            width_mm:
              sound.machine.book.tables.mechanism_types.find(({ id }) => id === mechanism.type)?.width_mm ??
              1,
            depth_mm:
              sound.machine.book.tables.mechanism_types.find(({ id }) => id === mechanism.type)?.depth_mm ??
              1,
            from_mm: 40,
            to_mm: 44,
          }),
        follows: [
          some("driver-blocked", (id) => own.test(id)),
          some("solids-clash", ids(mechanism.id)),
          some("service-deep", ids(mechanism.id)),
        ],
      };
    },
  },
  {
    name: "a frame of what a screw holds, round its nut so closely that no spanner swings",
    rule: "nut-blocked",
    plan: (sound) => {
      const screw = most(
        freeNuts(sound, "nut-blocked").filter(({ item }) => item.holds?.startsWith("sp.") === true),
        ({ item }) => item.place.xMm,
      );
      const { place } = screw.item;
      const held = sound.machine.items.get(screw.item.holds ?? "");
      if (held?.kind !== "device") throw new Error("It holds no device.");
      const thicknessMm = sound.machine.panels.get(place.panelId)?.thickness_mm ?? 0;
      const at = { x: place.xMm - held.place.xMm, y: place.yMm - held.place.yMm };
      const bar = (id: string, dx: number, dy: number, width: number, depth: number) => ({
        id: `bo.other-${id}`,
        device_type: held.type.id,
        x_mm: at.x + dx,
        y_mm: at.y + dy,
        width_mm: width,
        depth_mm: depth,
        from_mm: -thicknessMm - 30,
        to_mm: -thicknessMm,
      });
      const own = ids(
        ...sound.machine.book.tables.devices.flatMap((row) => (row.type === held.type.id ? [row.id] : [])),
      );
      return {
        victim: [screw.item.id, held.id],
        change: (edit) => {
          edit.add("bodies", bar("1", 14, 0, 4, 40));
          edit.add("bodies", bar("2", -14, 0, 4, 40));
          edit.add("bodies", bar("3", 0, 14, 24, 4));
          edit.add("bodies", bar("4", 0, -14, 24, 4));
          // No socket comes from the end, either.
          edit.add("bodies", { ...bar("5", 0, 0, 32, 32), to_mm: -thicknessMm - 12 });
        },
        // All devices of the type have such a frame; it may stand beyond the panel, and in the way of others.
        follows: ["nut-blocked", "off-panel", "pose-clash", "solids-clash"].map((rule) => some(rule, own)),
      };
    },
  },
  {
    name: "the loneliest device with its own screws in the cabinet, under a pile of five",
    rule: "service-deep",
    plan: (sound) => {
      const device = lonely(sound);
      const pile = [0, 1, 2, 3, 4].map((i) => ({ id: `tp.pile-${i + 1}`, z_mm: 95 + 13 * i }));
      const own = ids(...pile.map(({ id }) => id));
      return {
        victim: [device.id, ...pile.map(({ id }) => id)],
        change: (edit) => {
          for (const { id, z_mm } of pile)
            edit.add("devices", {
              id,
              label: "Plate that was added",
              type: "dt.bumper-cap",
              panel: device.panel,
              side: device.side,
              x_mm: device.x_mm,
              y_mm: device.y_mm,
              z_mm,
            });
        },
        follows: [some("pose-clash", own)],
      };
    },
  },
];

/** The device on a side of the cabinet, held by screws close to its middle, with fewest things near. */
function lonely(sound: Sound) {
  const held = sound.machine.book.tables.devices.filter(({ id, panel, x_mm, y_mm }) => {
    const own = screwsFor(sound, "service-deep").filter(({ item }) => item.holds === id);
    const isSmall = own.every(({ item: { place } }) => Math.hypot(place.xMm - x_mm, place.yMm - y_mm) < 25);
    return panel.startsWith("cab.") && own.length > 0 && isSmall;
  });
  return least(
    held,
    ({ panel, x_mm, y_mm }) => solidsNear(sound, panel, { xMm: x_mm, yMm: y_mm }, 60).length,
  );
}
