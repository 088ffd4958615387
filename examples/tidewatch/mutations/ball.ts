import type { LineResult, PanelPoint } from "@pinwright/engine";
import { ids, least, most, some } from "./about.ts";
import type { Consequence, Mutation, Sound } from "./mutation.ts";
import { LOOKS_LIKE, NEW_TYPE, retype, screwsFor, solidsNear, typeCounts } from "./screws.ts";

const FIELD = "playfield";
const STEP_MM = 4;

/** Whether nothing stands, is cut or is screwed near a place of the playing surface. */
function isOpen(sound: LineResult, at: PanelPoint, roomMm: number, woodMm: number): boolean {
  const cuts = sound.machine.book.tables.cutouts.filter(({ panel }) => panel === FIELD);
  return (
    solidsNear(sound, FIELD, at, roomMm).every(({ highMm }) => highMm <= 4) &&
    solidsNear(sound, FIELD, at, woodMm).every(({ kind }) => kind !== "fastener") &&
    cuts.every(
      (cut) =>
        Math.hypot(cut.x_mm - at.xMm, cut.y_mm - at.yMm) >
        Math.max(cut.width_mm ?? 0, cut.height_mm ?? 0) / 2 + woodMm,
    )
  );
}

/** The open place nearest to the middle of the playfield; `others` are open as far from it. */
function openPlace(
  sound: Sound,
  roomMm: number,
  woodMm: number,
  others: readonly (readonly [dx: number, dy: number])[] = [],
): PanelPoint {
  const panel = sound.machine.panels.get(FIELD);
  const [width, height] = [panel?.width_mm ?? 0, panel?.height_mm ?? 0];
  const found: PanelPoint[] = [];
  for (let x = 100; x < width - 100; x += STEP_MM)
    for (let y = 250; y < height - 200; y += STEP_MM) {
      const at = { xMm: x, yMm: y };
      const all = [at, ...others.map(([dx, dy]) => ({ xMm: x + dx, yMm: y + dy }))];
      if (all.every((one) => isOpen(sound, one, roomMm, woodMm))) found.push(at);
    }
  return least(found, ({ xMm, yMm }) => Math.hypot(xMm - width / 2, yMm - height / 2));
}

/** Two posts that are added, and what they may be near to beside each other. */
const POSTS = ["fx.other-1", "fx.other-2"] as const;
const aroundPosts: readonly Consequence[] = ["ball-gap", "ball-pocket", "solids-clash", "screw-edge"].map(
  (rule) => some(rule, ids(...POSTS)),
);

/** Two posts in the open, so far apart that a ball comes between them with so much to spare. */
function twoPosts(sound: Sound, spareMm: number) {
  const like = screwsFor(sound, "").find(({ item }) => item.type.kind === "post")?.item;
  const headMm = like?.type.head_diameter_mm ?? 0;
  const apartMm = sound.machine.book.machine.ball_mm + spareMm + headMm;
  const place = openPlace(sound, 36, 7, [[apartMm, 0]]);
  return {
    victim: POSTS,
    change: (edit: Parameters<ReturnType<Mutation["plan"]>["change"]>[0]) => {
      POSTS.forEach((id, i) => {
        edit.addLike(
          "fasteners",
          { id: like?.id ?? "" },
          { id, x_mm: place.xMm + i * apartMm, y_mm: place.yMm, holds: "" },
        );
      });
    },
    follows: aroundPosts,
  };
}

/** What a thing of the upper side that is moved up or down may meet. */
const around = (id: string): readonly Consequence[] =>
  [
    "ramp-clearance",
    "solids-clash",
    "ball-gap",
    "ball-pocket",
    "bundle-blocked",
    "order-loop",
    "driver-blocked",
  ].map((rule) => some(rule, ids(id)));

export const ball: readonly Mutation[] = [
  {
    name: "two guides of the top lanes, moved to a ball's width and a little more",
    rule: "ball-gap",
    plan: ({ machine, fastening }) => {
      const lanes = machine.book.tables.devices.filter(({ id }) => id.startsWith("tp.top-lane-"));
      const [first, second] = lanes;
      const solid = (fastening.solids.get(first?.id ?? "") ?? [])[0];
      const thickMm = (solid?.box.maxXMm ?? 0) - (solid?.box.minXMm ?? 0);
      return {
        victim: [first?.id ?? "", second?.id ?? ""],
        change: (edit) =>
          edit.set(
            "devices",
            { id: second?.id ?? "" },
            { x_mm: (first?.x_mm ?? 0) + machine.book.machine.ball_mm + thickMm + 0.5 },
          ),
        follows: around(second?.id ?? ""),
      };
    },
  },
  {
    name: "two posts in the open, a little wider apart than a ball",
    rule: "ball-gap",
    plan: (sound) => twoPosts(sound, 0.8),
  },
  {
    name: "two posts in the open, a little closer than a ball",
    rule: "ball-gap",
    plan: (sound) => twoPosts(sound, -0.8),
  },
  {
    name: "a pocket in the open that faces up the slope",
    rule: "ball-pocket",
    plan: (sound) => {
      const id = "tp.other";
      const place = openPlace(sound, 66, 0);
      return {
        victim: [FIELD, id],
        change: (edit) =>
          edit.add("devices", {
            id,
            label: "Pocket that was added",
            type: "dt.top-ramp-left-mouth",
            panel: FIELD,
            side: "top",
            x_mm: place.xMm,
            y_mm: place.yMm,
            rotation_deg: 180,
          }),
        follows: [...around(id), some("off-panel", ids(id))],
      };
    },
  },
  {
    name: "the ramp that ends highest, with its floor so low that a ball rubs",
    rule: "ramp-clearance",
    plan: (sound) => {
      const deck = deckOf(sound, "tp.ramp-");
      return {
        victim: [deck.id],
        change: (edit) =>
          edit.set("devices", { id: deck.id }, { z_mm: sound.machine.book.machine.ball_mm + 1 }),
        follows: around(deck.id),
      };
    },
  },
  {
    name: "the lowest wireform, hung so low that the ball strikes it",
    rule: "ramp-clearance",
    plan: (sound) => {
      const wire = least(
        sound.machine.book.tables.devices.filter(({ id }) => id.startsWith("tp.wireform-")),
        ({ z_mm }) => z_mm,
      );
      return {
        victim: [wire.id],
        change: (edit) =>
          edit.set("devices", { id: wire.id }, { z_mm: sound.machine.book.machine.ball_mm + 2 }),
        follows: around(wire.id),
      };
    },
  },
  {
    name: "one of the commonest wood screws, 2 mm longer over a bracket 2 mm thicker",
    rule: "screw-lookalike",
    plan: (sound) => {
      const counts = typeCounts(sound);
      const screws = screwsFor(sound, "screw-lookalike").filter(
        ({ item, fit }) => item.type.kind === "wood-screw" && (fit.leftMm ?? 9) <= 2,
      );
      const commonest = most(screws, ({ item }) => counts.get(item.type.id)?.length ?? 0);
      const { item } = commonest;
      return {
        victim: [NEW_TYPE, item.type.id],
        change: (edit) => {
          retype(edit, commonest, { length_mm: item.type.length_mm + 2 });
          edit.set("fasteners", { id: item.id }, { flange_mm: item.flangeMm + 2 });
        },
        follows: [...LOOKS_LIKE, some("solids-clash", ids(item.id))],
      };
    },
  },
  {
    name: "the two types with most screws, whose symbols somebody has made alike",
    rule: "symbol-alike",
    plan: (sound) => {
      const counts = [...typeCounts(sound)]
        .filter(([, list]) => list[0]?.type.kind === "wood-screw")
        .sort(([, a], [, b]) => b.length - a.length);
      const [first = "", second = ""] = counts.map(([typeId]) => typeId);
      return {
        victim: [first, second],
        change: (edit) => {
          edit.add("choices", { kind: "symbol", subject: first, value: "A moon open" });
          edit.add("choices", { kind: "symbol", subject: second, value: "B moon open" });
        },
      };
    },
  },
];

/** The device of some that ends highest. */
function deckOf({ machine, fastening }: Sound, prefix: string) {
  return most(
    machine.book.tables.devices.filter(({ id }) => id.startsWith(prefix) && /deck/.test(id)),
    ({ id }) => Math.max(...(fastening.solids.get(id) ?? []).map(({ highMm }) => highMm)),
  );
}
