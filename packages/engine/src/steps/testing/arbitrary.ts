import fc from "fast-check";
import type { SomeTables } from "../../testing/book.ts";

type Rows<N extends keyof SomeTables> = NonNullable<SomeTables[N]>;

/** Types that the machines below are made of. */
export const TYPES: SomeTables = {
  panels: [
    {
      id: "field",
      label: "Field",
      width_mm: 400,
      height_mm: 800,
      thickness_mm: 12,
      wood: "hardwood",
      purpose: "playfield",
    },
    {
      id: "floor",
      label: "Floor",
      width_mm: 600,
      height_mm: 600,
      thickness_mm: 15,
      wood: "hardwood",
      purpose: "cabinet",
    },
  ],
  fastener_types: [
    { id: "ft.a", kind: "wood-screw", diameter_mm: 3, length_mm: 10, head_diameter_mm: 6, drive: "cross 1" },
    { id: "ft.b", kind: "wood-screw", diameter_mm: 4, length_mm: 12, head_diameter_mm: 8, drive: "cross 2" },
    {
      id: "ft.c",
      kind: "machine-screw",
      diameter_mm: 4,
      length_mm: 30,
      head_diameter_mm: 8,
      drive: "cross 2",
    },
    { id: "ft.washer", kind: "washer", diameter_mm: 4 },
    { id: "ft.nut", kind: "nut", diameter_mm: 4 },
  ],
  device_types: [
    { id: "dt.lamp", class: "lamp", width_mm: 8, depth_mm: 8, height_mm: 10 },
    { id: "dt.switch", class: "switch", width_mm: 20, depth_mm: 10, height_mm: 15 },
  ],
  board_types: [{ id: "bt.one", revision: "A", width_mm: 60, depth_mm: 40, height_mm: 15, standoff_mm: 10 }],
  mechanism_types: [
    { id: "mt.kick", label: "Kicker", width_mm: 60, depth_mm: 40, height_mm: 50 },
    { id: "mt.gate", label: "Gate", width_mm: 30, depth_mm: 30, height_mm: 30 },
  ],
  mechanism_devices: [{ mechanism_type: "mt.kick", child: "coil", device_type: "dt.switch" }],
  mechanism_fasteners: [
    {
      mechanism_type: "mt.kick",
      child: "s1",
      fastener_type: "ft.b",
      x_mm: -20,
      moments: "start align tighten recheck",
    },
    {
      mechanism_type: "mt.kick",
      child: "s2",
      fastener_type: "ft.b",
      x_mm: 20,
      moments: "start align tighten recheck",
    },
    { mechanism_type: "mt.gate", child: "s1", fastener_type: "ft.c", washer: "ft.washer", nut: "ft.nut" },
  ],
  mechanism_steps: [
    { mechanism_type: "mt.kick", order: 1, kind: "build", label: "Put together" },
    {
      mechanism_type: "mt.kick",
      order: 2,
      kind: "adjust",
      label: "Gap",
      min: 1,
      max: 2,
      unit: "mm",
      tool: "feeler",
    },
    { mechanism_type: "mt.kick", order: 3, kind: "cycle", label: "Cycle", minutes: 5, tool: "cycle box" },
  ],
};

const thing = fc.record({
  kind: fc.constantFrom("lamp", "switch", "board", "kick", "gate", "screw"),
  panel: fc.constantFrom("field", "field", "field", "floor"),
  side: fc.constantFrom<("top" | "under")[]>("top", "under", "under"),
  x: fc.integer({ min: 0, max: 400 }),
  y: fc.integer({ min: 0, max: 600 }),
  screws: fc.array(fc.constantFrom("ft.a", "ft.b", "ft.c"), { maxLength: 3 }),
});
type Thing = typeof thing extends fc.Arbitrary<infer T> ? T : never;

/** A thing of the random machine, as its rows. */
export function rowsOf(things: readonly Thing[], claimed: readonly number[] = []): SomeTables {
  const devices: Rows<"devices">[number][] = [];
  const boards: Rows<"boards">[number][] = [];
  const mechanisms: Rows<"mechanisms">[number][] = [];
  const fasteners: Rows<"fasteners">[number][] = [];
  const ids: string[] = [];
  things.forEach(({ kind, panel, side, x, y, screws }, i) => {
    const id = `${kind}.${i}`;
    const place = { id, panel, side, x_mm: x, y_mm: y };
    ids.push(id);
    if (kind === "lamp" || kind === "switch") devices.push({ ...place, type: `dt.${kind}` });
    else if (kind === "board") boards.push({ ...place, type: "bt.one" });
    else if (kind === "screw") fasteners.push({ ...place, type: "ft.a" });
    else mechanisms.push({ ...place, type: `mt.${kind}` });
    if (kind === "screw") return;
    screws.forEach((type, k) => {
      const moments = k === 0 ? "start tighten recheck" : "";
      fasteners.push({ ...place, id: `fx.${i}.${k}`, x_mm: x + 3 * k, type, holds: id, moments });
    });
  });
  const items = [...new Set(claimed)].flatMap((i) => ids[i % Math.max(1, ids.length)] ?? []);
  const half = Math.ceil(items.length / 2);
  return {
    ...TYPES,
    devices,
    boards,
    mechanisms,
    fasteners,
    steps: [
      { id: "st.one", items: [...new Set(items.slice(0, half))], minutes: 3 },
      {
        id: "st.two",
        items: [...new Set(items.slice(half))].filter((id) => !items.slice(0, half).includes(id)),
        after: ["st.one"],
      },
      { id: "st.test", skill: "test", minutes: 10 },
      { id: "st.pack", after: ["st.test"], minutes: 4 },
    ],
  };
}

/** Machines of up to two dozen things, some of them claimed by the designer's steps. */
export const arbitraryThings = fc.array(thing, { maxLength: 24 });
export const arbitraryTables: fc.Arbitrary<SomeTables> = fc
  .tuple(arbitraryThings, fc.array(fc.nat(30), { maxLength: 5 }))
  .map(([things, claimed]) => rowsOf(things, claimed));
