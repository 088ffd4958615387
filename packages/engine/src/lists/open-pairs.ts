import { compareText } from "@pinwright/kernel";
import type { HarnessResult, Landing, Machine } from "../model/index.ts";
import type { OpenPair, ProbeSpot } from "./continuity.ts";
import { wireEntryCell } from "./ends.ts";

/** Why two spots are tried against each other: the first that holds. */
export type OpenReason = "mains" | "feed" | "load" | "neighbour";

/** What lies on the bench, as pairs are sought in it. */
export interface Bench {
  readonly spots: readonly ProbeSpot[];
  readonly partOf: (spot: ProbeSpot) => number;
  readonly netOf: (spot: ProbeSpot) => string;
}

interface Found {
  readonly landingId: string;
  readonly a: ProbeSpot;
  readonly b: ProbeSpot;
}

/**
 * Pairs that must be open, the most dangerous first: mains and earth conductors that land together or at one end
 * of the harness; a supply's feed and return in one place; both ends of a coil's or motor's winding; neighbours.
 * Two parts are tried against each other once: a short anywhere between them shows at any of their spots.
 */
export function openPairs(machine: Machine, harness: HarnessResult, bench: Bench): readonly OpenPair[] {
  const byLanding = new Map<string, ProbeSpot[]>();
  for (const spot of bench.spots) {
    const landingId = machine.points.get(spot.pointId)?.landingId ?? "";
    byLanding.set(landingId, [...(byLanding.get(landingId) ?? []), spot]);
  }
  const landings = harness.landingIds.flatMap((id) => machine.landings.get(id) ?? []);
  const at = (landing: Landing): readonly ProbeSpot[] =>
    landing.pointIds.flatMap((id) => (byLanding.get(landing.id) ?? []).filter((spot) => spot.pointId === id));
  const found: readonly (readonly [OpenReason, readonly Found[]])[] = [
    ["mains", mainsPairs(machine, harness, landings, at, bench)],
    ["feed", landings.flatMap((l) => pairsOf(at(l), l.id).filter((p) => isFeedPair(machine, bench, p)))],
    ["load", windingPairs(machine, bench)],
    ["neighbour", landings.flatMap((landing) => neighbours(machine, landing, at(landing)))],
  ];
  const tried = new Set<string>();
  return found.flatMap(([reason, list]) =>
    list.flatMap((pair): readonly OpenPair[] => {
      const p = bench.partOf(pair.a);
      const q = bench.partOf(pair.b);
      const key = `${Math.min(p, q)} ${Math.max(p, q)}`;
      if (tried.has(key) || bench.netOf(pair.a) === bench.netOf(pair.b)) return [];
      tried.add(key);
      return [{ ...pair, reason }];
    }),
  );
}

function pairsOf(spots: readonly ProbeSpot[], landingId: string): readonly Found[] {
  return spots.flatMap((a, i) => spots.slice(i + 1).map((b): Found => ({ landingId, a, b })));
}

/** Mains and earth conductors at one landing, then at landings whose tails leave the harness at one place. */
function mainsPairs(
  machine: Machine,
  harness: HarnessResult,
  landings: readonly Landing[],
  at: (landing: Landing) => readonly ProbeSpot[],
  bench: Bench,
): readonly Found[] {
  const isMains = (spot: ProbeSpot): boolean => {
    const kind = machine.nets.get(bench.netOf(spot))?.class;
    return kind === "mains" || kind === "earth";
  };
  const nodeOf = new Map(
    harness.branches.filter((b) => b.kind === "tail").map((b) => [b.id.slice("tail:".length), b.a]),
  );
  const regions = new Map<string, Landing[]>();
  for (const landing of landings) {
    const node = nodeOf.get(landing.id) ?? landing.id;
    regions.set(node, [...(regions.get(node) ?? []), landing]);
  }
  const together = landings.flatMap((l) => pairsOf(at(l).filter(isMains), l.id));
  const near = [...regions]
    .sort(([a], [b]) => compareText(a, b))
    .flatMap(([, members]) =>
      pairsOf(
        members.flatMap((l) => at(l).filter(isMains)),
        "",
      ).map((pair) => ({
        ...pair,
        landingId: machine.points.get(pair.a.pointId)?.landingId ?? "",
      })),
    );
  return [...together, ...near];
}

/** Nets of one supply at different volts: swapped or joined, they short it or feed what hangs on it the wrong way round. */
function isFeedPair(machine: Machine, bench: Bench, pair: Found): boolean {
  const a = machine.nets.get(bench.netOf(pair.a));
  const b = machine.nets.get(bench.netOf(pair.b));
  return (
    a !== undefined && b !== undefined && a.supply !== null && a.supply === b.supply && a.volts !== b.volts
  );
}

/** The two ends of each winding that this harness reaches: a short between them is a dead driver, not a coil. */
function windingPairs(machine: Machine, bench: Bench): readonly Found[] {
  const first = new Map<string, ProbeSpot>();
  for (const spot of bench.spots) if (!first.has(spot.pointId)) first.set(spot.pointId, spot);
  return machine.elements
    .filter(({ row }) => row.kind === "coil" || row.kind === "motor")
    .toSorted((a, b) => compareText(a.id, b.id))
    .flatMap((element): readonly Found[] => {
      const a = first.get(element.fromPointId);
      const b = first.get(element.toPointId);
      const landingId = machine.points.get(element.fromPointId)?.landingId ?? "";
      return a === undefined || b === undefined ? [] : [{ landingId, a, b }];
    });
}

interface Placed {
  readonly spot: ProbeSpot;
  readonly x: number;
  readonly y: number;
}

function neighbours(machine: Machine, landing: Landing, spots: readonly ProbeSpot[]): readonly Found[] {
  const first = new Map<string, ProbeSpot>();
  for (const spot of spots) if (!first.has(spot.pointId)) first.set(spot.pointId, spot);
  const placed = landing.pointIds.flatMap((pointId, i): readonly Placed[] => {
    const spot = first.get(pointId);
    const point = machine.points.get(pointId);
    if (spot === undefined || point === undefined) return [];
    if (point.pin !== null) {
      const { column, row } = wireEntryCell(machine, landing, point.pin);
      return [{ spot, x: column, y: row }];
    }
    const { xMm, yMm } = point.place;
    return [
      landing.pointIds.length > 1 && isPlaced(machine, landing)
        ? { spot, x: xMm, y: yMm }
        : { spot, x: i, y: 0 },
    ];
  });
  const pairs = landing.connector === null ? nearTerminals(placed) : nearCavities(placed);
  return pairs.map(([a, b]) => ({ landingId: landing.id, a: a.spot, b: b.spot }));
}

/** Whether the terminals of a device have places of their own; else they are taken in the order of the book. */
function isPlaced(machine: Machine, landing: Landing): boolean {
  const places = landing.pointIds.flatMap((id) => machine.points.get(id)?.place ?? []);
  return new Set(places.map((p) => `${p.xMm} ${p.yMm}`)).size === landing.pointIds.length;
}

/** The next loaded cavity along the row, past keys and spares, and the nearest one in the rows beside it. */
function nearCavities(cells: readonly Placed[]): readonly (readonly [Placed, Placed])[] {
  const pairs = new Map<string, readonly [Placed, Placed]>();
  const put = (p: Placed, q: Placed | undefined): void => {
    if (q === undefined) return;
    const [a, b] = cells.indexOf(p) < cells.indexOf(q) ? [p, q] : [q, p];
    pairs.set(`${a.spot.id} ${b.spot.id}`, [a, b]);
  };
  const nearest = (list: readonly Placed[], x: number): Placed | undefined =>
    list.toSorted((a, b) => Math.abs(a.x - x) - Math.abs(b.x - x) || a.x - b.x)[0];
  for (const p of cells) {
    const right = cells.filter((q) => q.y === p.y && q.x > p.x);
    put(p, nearest(right, p.x));
    for (const row of [p.y - 1, p.y + 1]) {
      put(
        p,
        nearest(
          cells.filter((q) => q.y === row),
          p.x,
        ),
      );
    }
  }
  return [...pairs.values()];
}

/** Relative neighbours: two terminals with no third one that is nearer to both of them than they are to each other. */
function nearTerminals(list: readonly Placed[]): readonly (readonly [Placed, Placed])[] {
  const far = (p: Placed, q: Placed): number => Math.hypot(p.x - q.x, p.y - q.y);
  return list.flatMap((p, i) =>
    list.slice(i + 1).flatMap((q): readonly (readonly [Placed, Placed])[] => {
      const apart = far(p, q);
      const between = list.some((r) => Math.max(far(p, r), far(q, r)) < apart - 1e-6);
      return between ? [] : [[p, q]];
    }),
  );
}
