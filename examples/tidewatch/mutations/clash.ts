import { boxOf } from "@pinwright/kernel";
import { ids, least, most, some } from "./about.ts";
import type { Mutation } from "./mutation.ts";
import { aroundGrown, boardsFor, boxGap, centreOf, freeLanes, neighbours, reaching } from "./neighbours.ts";
import { screwsFor, singleMechanisms } from "./screws.ts";

export const clash: readonly Mutation[] = [
  {
    name: "two mechanisms that are nearest to each other, one grown into the other",
    rule: "solids-clash",
    plan: (sound) => {
      const { a, b } = least(
        neighbours(sound).filter(({ gapMm }) => gapMm > 0),
        ({ gapMm }) => gapMm,
      );
      const heights = [Math.max(0, -13 - b.highMm), Math.max(1, -13 - b.lowMm)] as const;
      return {
        victim: [a.itemId, b.itemId],
        change: (edit) => edit.add("bodies", reaching(sound, a.itemId, centreOf(b), heights)),
        follows: aroundGrown(a.itemId),
      };
    },
  },
  {
    name: "the mechanism nearest to a board, grown up through it",
    rule: "solids-clash",
    plan: (sound) => {
      const boards = [...sound.fastening.solids.values()]
        .flat()
        .filter(({ kind, panelId, side }) => kind === "board" && panelId === "playfield" && side === "under");
      const pairs = neighbours(sound).map(({ a }) => {
        const b = least(boards, (board) => boxGap(a, board));
        return { a, b, gapMm: boxGap(a, b) };
      });
      const { a, b } = least(pairs, ({ gapMm }) => gapMm);
      const middle = centreOf(b);
      return {
        victim: [a.itemId, b.itemId],
        change: (edit) =>
          edit.add("bodies", reaching(sound, a.itemId, middle, [-13 - b.highMm, -13 - b.lowMm])),
        follows: aroundGrown(a.itemId),
      };
    },
  },
  {
    name: "the part of the upper side with the most neighbours, moved onto one of them",
    rule: "solids-clash",
    plan: (sound) => {
      const guides = sound.machine.book.tables.devices.filter(({ id }) => id.startsWith("tp.top-lane-"));
      const solidOf = (id: string) => (sound.fastening.solids.get(id) ?? [])[0];
      const targets = [...sound.machine.items.values()].filter(({ id }) => id.startsWith("sw.top-lane-"));
      const pairs = guides.flatMap((guide) =>
        targets.map((target) => ({ guide, target, mm: Math.abs(guide.x_mm - target.place.xMm) })),
      );
      const { guide } = least(pairs, ({ mm }) => mm);
      const mast = least(
        screwsFor(sound, "solids-clash").filter(
          ({ item }) => item.type.kind === "post" && item.place.side === "top",
        ),
        ({ item }) => Math.hypot(item.place.xMm - guide.x_mm, item.place.yMm - guide.y_mm),
      );
      const half = ((solidOf(guide.id)?.box.maxXMm ?? 0) - (solidOf(guide.id)?.box.minXMm ?? 0)) / 2;
      return {
        victim: [guide.id, mast.item.id],
        change: (edit) => edit.set("devices", { id: guide.id }, { x_mm: mast.item.place.xMm + half }),
        follows: [
          some("solids-clash", ids(guide.id)),
          some("ball-gap", ids(guide.id)),
          some("ball-pocket", ids(guide.id)),
          some("screw-no-wood", ids(guide.id)),
        ],
      };
    },
  },
  {
    name: "the sweep of the mechanism that moves nearest to another, wider",
    rule: "solids-clash",
    plan: (sound) => {
      const pairs = neighbours(sound).filter(({ a, gapMm }) => a.moves && gapMm > 0);
      const { a, b } = least(pairs, ({ gapMm }) => gapMm);
      const heights = [Math.max(0, -13 - b.highMm), Math.max(1, -13 - b.lowMm)] as const;
      return {
        victim: [a.itemId, b.itemId],
        change: (edit) =>
          edit.add("bodies", { ...reaching(sound, a.itemId, centreOf(b), heights), moves: "yes" }),
        follows: aroundGrown(a.itemId),
      };
    },
  },
  {
    name: "a tall screw head under the board with most stand-offs",
    rule: "board-over",
    plan: (sound) => {
      const { item, own } = most(
        boardsFor(sound, "board-over").filter(
          ({ item: { place } }) => place.panelId === "bb.back" && place.zMm < 20,
        ),
        ({ own: { length } }) => length,
      );
      const box = boxOf(item.footprint);
      const at = {
        x_mm: ((box?.minXMm ?? 0) + (box?.maxXMm ?? 0)) / 2,
        y_mm: ((box?.minYMm ?? 0) + (box?.maxYMm ?? 0)) / 2,
      };
      const like = own[0]?.item;
      return {
        victim: [item.id, "fx.other"],
        change: (edit) => {
          edit.addLike(
            "fastener_types",
            { id: like?.type.id ?? "" },
            { id: "ft.other", kind: "wood-screw", head_height_mm: item.place.zMm - 1, head_diameter_mm: 8 },
          );
          edit.addLike(
            "fasteners",
            { id: like?.id ?? "" },
            { id: "fx.other", type: "ft.other", holds: "", ...at },
          );
        },
        follows: [some("screw-lookalike", ids("ft.other"))],
      };
    },
  },
  {
    name: "the board with most stand-offs, one of them of another height",
    rule: "standoff-height",
    plan: (sound) => {
      const { item, own } = most(boardsFor(sound, "standoff-height"), ({ own: { length } }) => length);
      const screw = own[0];
      const other = sound.machine.book.tables.fastener_types.find(
        ({ kind, head_height_mm, bites }) =>
          kind === "standoff" && bites === "usual" && (head_height_mm ?? 0) < item.type.standoff_mm,
      );
      return {
        victim: [screw?.item.id ?? "", item.id],
        change: (edit) => edit.set("fasteners", { id: screw?.item.id ?? "" }, { type: other?.id ?? "" }),
        follows: [some("screw-lookalike", ids(other?.id ?? ""))],
      };
    },
  },
  {
    name: "the board with most stand-offs, one of them left out",
    rule: "standoff-missing",
    plan: (sound) => {
      const { item, own } = most(boardsFor(sound, "standoff-missing"), ({ own: { length } }) => length);
      return {
        victim: [item.id],
        change: (edit) => edit.remove("fasteners", { id: own[0]?.item.id ?? "" }),
      };
    },
  },
  {
    name: "a coil's bracket that grew into the free lane nearest to its mechanism",
    rule: "bundle-blocked",
    plan: (sound) => {
      const lanes = freeLanes(sound, 8);
      const mechanisms = singleMechanisms(sound).filter(
        ({ panel, side }) => panel === "playfield" && side === "under",
      );
      const found = mechanisms.flatMap((mechanism) =>
        lanes.map((lane) => ({
          ...lane,
          mechanism,
          mm: Math.hypot(mechanism.x_mm - lane.middle.xMm, mechanism.y_mm - lane.middle.yMm),
        })),
      );
      const { branch, harnessId, mechanism, middle } = least(found, ({ mm }) => mm);
      return {
        victim: [branch.id, harnessId, mechanism.id],
        change: (edit) => edit.add("bodies", reaching(sound, mechanism.id, middle, [0, 60], 24)),
        follows: aroundGrown(mechanism.id),
      };
    },
  },
  {
    name: "a tower that stands on the longest free lane, so that its bundle would go through it",
    rule: "bundle-blocked",
    plan: (sound) => {
      const { branch, harnessId, middle } = most(freeLanes(sound, 12), (lane) => lane.branch.routeMm);
      const id = "tp.other";
      return {
        victim: [branch.id, harnessId, id],
        change: (edit) =>
          edit.add("devices", {
            id,
            label: "Tower that was added",
            type: "dt.lantern",
            panel: "playfield",
            side: "under",
            x_mm: middle.xMm,
            y_mm: middle.yMm,
          }),
        follows: [
          some("bundle-blocked", ids(id)),
          some("solids-clash", ids(id)),
          some("order-loop", ids(id)),
        ],
      };
    },
  },
  {
    name: "the highest thing on the playfield, 100 mm higher",
    rule: "glass-clearance",
    plan: (sound) => {
      const top = most(
        [...sound.fastening.solids.values()]
          .flat()
          .filter(
            ({ panelId, kind, itemId }) =>
              panelId === "playfield" && kind === "device" && itemId.startsWith("tp."),
          ),
        ({ highMm }) => highMm,
      );
      const device = sound.machine.book.tables.devices.find(({ id }) => id === top.itemId);
      const glass = sound.machine.book.tables.panels.find(({ purpose }) => purpose === "glass");
      return {
        victim: [top.itemId, glass?.id ?? ""],
        change: (edit) => edit.set("device_types", { id: device?.type ?? "" }, { height_mm: 180 }),
        follows: [
          some("pose-clash", ids(top.itemId)),
          some("solids-clash", ids(top.itemId)),
          some("driver-blocked", ids(top.itemId)),
          some("service-deep", ids(top.itemId)),
          some("order-loop", ids(top.itemId)),
        ],
      };
    },
  },
  {
    name: "the highest ramp at the far end, which meets the backbox in a pose that lifts the playfield too far",
    rule: "pose-clash",
    plan: (sound) => {
      const rear = [...sound.fastening.solids.values()]
        .flat()
        .filter(
          ({ panelId, kind, itemId, box }) =>
            panelId === "playfield" && kind === "device" && itemId.startsWith("tp.ramp-") && box.maxYMm > 800,
        );
      const top = most(rear, ({ highMm }) => highMm);
      return {
        victim: [top.itemId],
        change: (edit) =>
          edit.set(
            "pose_places",
            { pose: "lifted", panel: "playfield" },
            { rx_deg: -62, y_mm: 640.8, z_mm: 1276.8 },
          ),
        follows: [
          // Everything that stands at the far end meets it.
          { rule: "pose-clash", where: ({ numbers }) => numbers.poses === "lifted" },
          { rule: "crossing-pull", where: ({ numbers }) => numbers.pose === "lifted" },
        ],
      };
    },
  },
  {
    name: "the mechanism that passes through the panel with one opening of its own, without it",
    rule: "no-opening",
    plan: (sound) => {
      const { cutouts } = sound.machine.book.tables;
      const cutsOf = (id: string) => cutouts.filter(({ serves }) => serves === id);
      const areaOf = (id: string) => (cutsOf(id)[0]?.width_mm ?? 0) * (cutsOf(id)[0]?.height_mm ?? 0);
      const alone = singleMechanisms(sound).filter(({ id }) => cutsOf(id).length === 1);
      const mechanism = most(alone, ({ id }) => areaOf(id));
      return {
        victim: [mechanism.id, mechanism.panel],
        change: (edit) => edit.remove("cutouts", { id: cutsOf(mechanism.id)[0]?.id ?? "" }),
      };
    },
  },
  {
    name: "the part of the upper side nearest to the edge, moved beyond it",
    rule: "off-panel",
    plan: (sound) => {
      const { devices } = sound.machine.book.tables;
      const loose = devices.filter(
        ({ id }) => id.startsWith("tp.") && !screwsFor(sound, "").some(({ item }) => item.holds === id),
      );
      const boxes = loose.flatMap((device) => {
        const solid = (sound.fastening.solids.get(device.id) ?? [])[0];
        return solid === undefined || solid.highMm > 40 ? [] : [{ device, box: solid.box }];
      });
      const { device, box } = most(boxes, (one) => one.box.maxXMm);
      return {
        victim: [device.id, device.panel],
        change: (edit) => edit.set("devices", { id: device.id }, { x_mm: device.x_mm + 520 - box.minXMm }),
        follows: [some("pose-clash", ids(device.id)), some("solids-clash", ids(device.id))],
      };
    },
  },
];
