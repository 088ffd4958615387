import type { PackingMemory } from "@pinwright/kernel";
import type { Finding, HarnessResult, Machine, SizedBranch, Wire } from "../model/index.ts";
import { checkPassage, type Passage } from "./capacity.ts";
import { circlesOf } from "./circles.ts";

/** What the check of bundles needs of a harness. */
export type BundledHarness = Pick<HarnessResult, "harness" | "wires" | "route" | "branches">;

/** The branches of one harness that go through a place. */
interface Through {
  readonly harness: BundledHarness;
  readonly branches: SizedBranch[];
}

/** A lane, crossing, hole or clip, and all that goes through it. */
export interface Thoroughfare extends Omit<Passage, "harnessIds" | "diametersMm"> {
  readonly through: readonly Through[];
}

/** Every place with a limited diameter that some harness goes through; harnesses in the order given. */
export function thoroughfares(
  machine: Pick<Machine, "book" | "shop">,
  harnesses: readonly BundledHarness[],
): readonly Thoroughfare[] {
  const { lanes, crossings, waypoints } = machine.book.tables;
  const holderOf = new Map(
    machine.shop.tables.holders
      .filter((h) => h.kind === "saddle" || h.kind === "clip")
      .toReversed()
      .map((h) => [h.part, h]),
  );
  const clips = new Map(
    waypoints.flatMap((w) => {
      const holder = w.hold_part === null ? undefined : holderOf.get(w.hold_part);
      return holder === undefined ? [] : [[w.id, holder] as const];
    }),
  );
  const loads = new Map<string, Through[]>();
  const load = (place: string, harness: BundledHarness, branch: SizedBranch): void => {
    const list = loads.get(place);
    const last = list?.at(-1);
    if (list === undefined) loads.set(place, [{ harness, branches: [branch] }]);
    else if (last?.harness === harness) last.branches.push(branch);
    else list.push({ harness, branches: [branch] });
  };
  const clip = (waypointId: string): string => `clip ${waypointId}`;
  for (const harness of harnesses) {
    for (const branch of harness.branches) {
      if (branch.wireIds.length === 0) continue;
      if (branch.kind !== "tail") load(branch.id, harness, branch);
      for (const node of [branch.a, branch.b]) if (clips.has(node)) load(clip(node), harness, branch);
    }
  }
  const found: Thoroughfare[] = [];
  const add = (part: Omit<Thoroughfare, "through">, place: string): void => {
    const through = loads.get(place);
    if (through !== undefined) found.push({ ...part, through });
  };
  for (const { id, max_diameter_mm } of lanes) {
    add({ id, kind: "lane", minDiameterMm: 0, maxDiameterMm: max_diameter_mm }, id);
  }
  for (const { id, kind, max_diameter_mm } of crossings) {
    const sort = kind === "hole" ? "hole" : "crossing";
    add({ id, kind: sort, minDiameterMm: 0, maxDiameterMm: max_diameter_mm }, id);
  }
  for (const [id, { min_diameter_mm, max_diameter_mm }] of clips) {
    const limits = { minDiameterMm: min_diameter_mm, maxDiameterMm: max_diameter_mm };
    add({ id, kind: "clip", ...limits }, clip(id));
  }
  return found;
}

/** All that the check of a place depends on, as objects that keep their identity while nothing changes. */
export const thoroughfareInputs = ({
  kind,
  minDiameterMm,
  maxDiameterMm,
  through,
}: Thoroughfare): readonly unknown[] => [
  kind,
  minDiameterMm,
  maxDiameterMm,
  ...through.flatMap(({ harness, branches }) => [harness.harness, harness.wires, ...branches]),
];

/** Whether all that goes through a place fits: see `checkPassage`. */
export function checkThoroughfare(
  machine: Pick<Machine, "book" | "shop">,
  { through, ...place }: Thoroughfare,
  memory?: PackingMemory,
): Finding | null {
  const inside = new Map<string, Wire>();
  for (const { harness, branches } of through) {
    const ids = new Set(branches.flatMap((branch) => branch.wireIds));
    for (const wire of harness.wires) if (ids.has(wire.id)) inside.set(wire.id, wire);
  }
  if (inside.size === 0) return null;
  const harnessIds = through.map(({ harness }) => harness.harness.id);
  const diametersMm = circlesOf(inside.values(), machine.book);
  return checkPassage({ ...place, harnessIds, diametersMm }, machine.shop, memory);
}
