import type { PanelPoint } from "@pinwright/engine";
import type { BoxMm } from "@pinwright/kernel";
import { ids, least, most, some } from "./about.ts";
import type { Consequence, Mutation, Sound } from "./mutation.ts";
import { LOOKS_LIKE, NEW_TYPE, retype, screwsFor, typeCounts } from "./screws.ts";

const FIELD = "playfield";
const STEP_MM = 4;

interface Spot extends PanelPoint {
  readonly halfMm: number;
}

/** Whether no spot comes nearer to a place than so far. */
const isClear = (spots: readonly Spot[], at: PanelPoint, roomMm: number): boolean =>
  spots.every((spot) => Math.hypot(spot.xMm - at.xMm, spot.yMm - at.yMm) > spot.halfMm + roomMm);

/** The open place nearest to the middle of the playfield; `others` are open as far from it. */
function openPlace(
  sound: Sound,
  roomMm: number,
  woodMm: number,
  others: readonly (readonly [dx: number, dy: number])[] = [],
): PanelPoint {
  const panel = sound.machine.panels.get(FIELD);
  const middle = { xMm: (panel?.width_mm ?? 0) / 2, yMm: (panel?.height_mm ?? 0) / 2 };
  const solids = [...sound.fastening.solids.values()].flat().filter(({ panelId }) => panelId === FIELD);
  const standing = solids.filter(({ highMm }) => highMm > 4);
  const screws = solids.filter(({ kind }) => kind === "fastener").map(({ box }) => spotOf(box));
  const cuts = sound.machine.book.tables.cutouts
    .filter((cut) => cut.panel === FIELD)
    .map((cut) => ({
      xMm: cut.x_mm,
      yMm: cut.y_mm,
      halfMm: Math.max(cut.width_mm ?? 0, cut.height_mm ?? 0) / 2,
    }));
  const isOpen = (at: PanelPoint): boolean =>
    standing.every(
      ({ box }) =>
        Math.hypot(
          Math.max(0, box.minXMm - at.xMm, at.xMm - box.maxXMm),
          Math.max(0, box.minYMm - at.yMm, at.yMm - box.maxYMm),
        ) > roomMm,
    ) &&
    isClear(screws, at, woodMm) &&
    isClear(cuts, at, woodMm);
  const places = gridAbout(middle);
  const found = places.find((at) =>
    [at, ...others.map(([dx, dy]) => ({ xMm: at.xMm + dx, yMm: at.yMm + dy }))].every(isOpen),
  );
  if (found === undefined) throw new Error("The playfield is nowhere so open.");
  return found;
}

const spotOf = (box: BoxMm): Spot => ({
  xMm: (box.minXMm + box.maxXMm) / 2,
  yMm: (box.minYMm + box.maxYMm) / 2,
  halfMm: Math.max(box.maxXMm - box.minXMm, box.maxYMm - box.minYMm) / 2,
});

/** Places about one, nearest first. */
function gridAbout({ xMm, yMm }: PanelPoint): readonly PanelPoint[] {
  const steps = Array.from({ length: 81 }, (_, i) => (i - 40) * STEP_MM);
  return steps
    .flatMap((dx) => steps.map((dy) => ({ dx, dy, mm: Math.hypot(dx, dy) })))
    .sort((a, b) => a.mm - b.mm || a.dx - b.dx || a.dy - b.dy)
    .map(({ dx, dy }) => ({ xMm: xMm + dx, yMm: yMm + dy }));
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
    name: "the two wood screws of one type that are nearest to each other, one 3 mm longer over a thicker bracket",
    rule: "screw-lookalike",
    plan: (sound) => {
      const screws = screwsFor(sound, "screw-lookalike").filter(
        ({ item, fit }) => item.type.kind === "wood-screw" && (fit.leftMm ?? 9) <= 2,
      );
      const commonest = least(screws, ({ item }) =>
        Math.min(
          ...screws
            .filter((other) => other.item.id !== item.id && other.item.type.id === item.type.id)
            .filter((other) => other.item.place.panelId === item.place.panelId)
            .map(({ item: { place } }) => Math.hypot(place.xMm - item.place.xMm, place.yMm - item.place.yMm)),
        ),
      );
      const { item } = commonest;
      return {
        victim: [NEW_TYPE, item.type.id],
        change: (edit) => {
          retype(edit, commonest, { length_mm: item.type.length_mm + 3 });
          edit.set("fasteners", { id: item.id }, { flange_mm: item.flangeMm + 3 });
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
      const { symbols } = sound.fastening;
      const sign = symbols.get(first);
      return {
        victim: [first, second],
        change: (edit) => {
          const pin = (subject: string, letter: string): void =>
            edit.set(
              "choices",
              { kind: "symbol", subject },
              { value: `${letter} ${sign?.shape ?? ""} ${sign?.shade ?? ""}`, held: "pinned" },
            );
          pin(first, sign?.letter ?? "");
          pin(second, symbols.get(second)?.letter ?? "");
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
