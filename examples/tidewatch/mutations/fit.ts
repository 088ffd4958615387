import { ids, least, most, some } from "./about.ts";
import type { Mutation, Plan, Sound } from "./mutation.ts";
import { heldIn, LOOKS_LIKE, retype, type Screw, screwsFor, typeCounts } from "./screws.ts";

export const CUT = "cut.other";

/** A cut at a fastener's place, or beside it. */
export const cutAt = (
  { item: { place } }: Screw,
  cells: {
    readonly side?: string;
    readonly width_mm: number;
    readonly depth_mm?: number;
    readonly purpose: string;
  },
  [dx, dy]: readonly [number, number] = [0, 0],
) => ({
  id: CUT,
  panel: place.panelId,
  side: "top",
  shape: "circle",
  x_mm: place.xMm + dx,
  y_mm: place.yMm + dy,
  ...cells,
});

/** The wood screw in the playfield that leaves least wood at its point. */
const deepest = (sound: Sound): Screw =>
  least(
    heldIn(sound, "screw-through", "wood", "wood-screw").filter(
      ({ item, fit }) => item.place.panelId === "playfield" && fit.leftMm !== null,
    ),
    ({ fit }) => fit.leftMm ?? 0,
  );

/** A screw in the wood of the cabinet, where nothing else is near. */
const loneliest = (sound: Sound, rule: string): Screw => {
  const all = screwsFor(sound, rule);
  const alone = ({ item: { id, place } }: Screw): number =>
    Math.min(
      ...all
        .filter(({ item }) => item.id !== id && item.place.panelId === place.panelId)
        .map(({ item }) => Math.hypot(item.place.xMm - place.xMm, item.place.yMm - place.yMm)),
    );
  return most(
    heldIn(sound, rule, "wood", "wood-screw").filter(
      (screw) => screw.item.place.panelId.startsWith("cab.") && Number.isFinite(alone(screw)),
    ),
    alone,
  );
};

/** The type with fewest fasteners among some. */
export const rarest = (
  sound: Sound,
  isMeant: (screw: Screw) => boolean,
): { typeId: string; first: Screw } => {
  const counts = typeCounts(sound);
  const meant = screwsFor(sound, "").filter(isMeant);
  const first = least(meant, ({ item }) => counts.get(item.type.id)?.length ?? 0);
  return { typeId: first.item.type.id, first };
};

export const onType = (rule: string, typeId: string) => [
  {
    rule,
    where: ({ numbers }: { numbers: Readonly<Record<string, unknown>> }) => numbers.type === typeId,
  },
];

/** A row of cells of one fastener. */
export const cells =
  (screw: Screw, values: Record<string, string | number>): Plan["change"] =>
  (edit) =>
    edit.set("fasteners", { id: screw.item.id }, values);

export const fit: readonly Mutation[] = [
  {
    name: "the wood screw with least wood left at its point, 4 mm longer",
    rule: "screw-through",
    plan: (sound) => {
      const screw = deepest(sound);
      return {
        victim: [screw.item.id, screw.item.place.panelId],
        change: (edit) => retype(edit, screw, { length_mm: screw.item.type.length_mm + 4 }),
        follows: [...LOOKS_LIKE, some("solids-clash", ids(screw.item.id))],
      };
    },
  },
  {
    name: "the loneliest screw of the cabinet, over a pocket from the other side",
    rule: "screw-through",
    plan: (sound) => {
      const screw = loneliest(sound, "screw-through");
      const side = screw.item.place.side === "top" ? "under" : "top";
      const depthMm = (screw.fit.leftMm ?? 0) + 1;
      return {
        victim: [screw.item.id, CUT],
        change: (edit) =>
          edit.add("cutouts", cutAt(screw, { side, width_mm: 12, depth_mm: depthMm, purpose: "pocket" })),
      };
    },
  },
  {
    name: "the post that stands deepest, with a body 4 mm higher",
    rule: "screw-short",
    plan: (sound) => {
      const post = most(heldIn(sound, "screw-short", "wood", "post"), ({ fit: { engagedMm } }) => engagedMm);
      return {
        victim: [post.item.id, post.item.place.panelId],
        change: cells(post, { flange_mm: post.item.flangeMm + 4 }),
        follows: [some("solids-clash", ids(post.item.id))],
      };
    },
  },
  {
    name: "the wood screw with least thread to spare, one size shorter",
    rule: "screw-short",
    plan: (sound) => {
      const screw = least(
        heldIn(sound, "screw-short", "wood", "wood-screw"),
        ({ fit: { engagedMm, leastEngagedMm } }) => engagedMm - leastEngagedMm,
      );
      return {
        victim: [screw.item.id, screw.item.place.panelId],
        change: (edit) => retype(edit, screw, { length_mm: screw.item.type.length_mm - 4 }),
        follows: LOOKS_LIKE,
      };
    },
  },
  {
    name: "the loneliest screw of the cabinet, over a hole",
    rule: "screw-no-wood",
    plan: (sound) => {
      const screw = loneliest(sound, "screw-no-wood");
      return {
        victim: [screw.item.id, CUT],
        change: (edit) => edit.add("cutouts", cutAt(screw, { width_mm: 7, purpose: "vent" })),
      };
    },
  },
  {
    name: "the panel with fewest screws in its wood, which is no wood after all",
    rule: "screw-no-wood",
    plan: (sound) => {
      const all = heldIn(sound, "screw-no-wood", "wood");
      const on = (panelId: string) => all.filter(({ item }) => item.place.panelId === panelId);
      const { item } = least(all, (screw) => on(screw.item.place.panelId).length);
      return {
        victim: [item.place.panelId, item.id],
        change: (edit) => edit.set("panels", { id: item.place.panelId }, { wood: "none" }),
        follows: [some("screw-no-wood", ids(item.place.panelId))],
      };
    },
  },
  {
    name: "the loneliest screw of the cabinet, its head in a groove that is as deep as it holds",
    rule: "screw-through",
    plan: (sound) => {
      const screw = loneliest(sound, "screw-through");
      return {
        victim: [screw.item.id],
        change: (edit) =>
          edit.add(
            "cutouts",
            cutAt(screw, {
              side: screw.item.place.side,
              width_mm: 60,
              depth_mm: (screw.fit.leftMm ?? 0) + 1,
              purpose: "groove",
            }),
          ),
      };
    },
  },
  {
    name: "the rarest type of wood screw, with a pilot hole as wide as its thread",
    rule: "pilot-size",
    plan: (sound) => {
      const { typeId, first } = rarest(sound, ({ item }) => item.type.kind === "wood-screw");
      return {
        victim: [typeId],
        change: (edit) =>
          edit.set("fastener_types", { id: typeId }, { pilot_mm: first.item.type.diameter_mm }),
      };
    },
  },
  {
    name: "the type with most fasteners in wood, with a pilot hole half as wide",
    rule: "pilot-size",
    plan: (sound) => {
      const counts = typeCounts(sound);
      const { item } = most(
        heldIn(sound, "pilot-size", "wood").filter((screw) => screw.item.type.pilot_mm !== null),
        (screw) => counts.get(screw.item.type.id)?.length ?? 0,
      );
      return {
        victim: [item.type.id],
        change: (edit) =>
          edit.set("fastener_types", { id: item.type.id }, { pilot_mm: (item.type.pilot_mm ?? 0) / 2 }),
      };
    },
  },
  {
    name: "the loneliest screw of the cabinet, with a hole bored beside it",
    rule: "screw-edge",
    plan: (sound) => {
      const screw = loneliest(sound, "screw-edge");
      return {
        victim: [screw.item.id, CUT],
        change: (edit) =>
          edit.add(
            "cutouts",
            cutAt(screw, { width_mm: 6, purpose: "wire-hole" }, [3 + 1.2 * screw.item.type.diameter_mm, 0]),
          ),
      };
    },
  },
  {
    name: "the loneliest screw of the cabinet, with another one close beside it",
    rule: "screw-spacing",
    plan: (sound) => {
      const screw = loneliest(sound, "screw-spacing");
      const id = "fx.other";
      return {
        victim: [screw.item.id, id],
        change: (edit) =>
          edit.addLike(
            "fasteners",
            { id: screw.item.id },
            { id, y_mm: screw.item.place.yMm + 2.3 * screw.item.type.diameter_mm },
          ),
        follows: [some("driver-blocked", ids(id)), some("solids-clash", ids(id))],
      };
    },
  },
  {
    name: "the loneliest screw of the cabinet, met by one from the other side",
    rule: "screw-meets",
    plan: (sound) => {
      const screw = loneliest(sound, "screw-meets");
      const id = "fx.other";
      const side = screw.item.place.side === "top" ? "under" : "top";
      return {
        victim: [screw.item.id, id],
        change: (edit) => edit.addLike("fasteners", { id: screw.item.id }, { id, side, flange_mm: 2 }),
        follows: [some("solids-clash", ids(id))],
      };
    },
  },
];
