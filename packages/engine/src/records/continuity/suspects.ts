import { compareText } from "@pinwright/kernel";
import type { BenchModel, HarnessFault, TestBench, TestPlace } from "./bench.ts";

/** Whether two places of one housing lie beside each other, corners included. */
export const areNeighbours = (a: TestPlace, b: TestPlace): boolean =>
  a.landingId === b.landingId &&
  a.landingId !== "" &&
  Math.abs(a.column - b.column) <= 1 &&
  Math.abs(a.row - b.row) <= 1;

/** How far apart two places are for somebody who mixes them up or bridges them: 0 neighbours, 1 one housing, 2 apart. */
const apart = (a: TestPlace, b: TestPlace): number =>
  areNeighbours(a, b) ? 0 : a.landingId === b.landingId ? 1 : 2;

/** Places of a short that are named for one pair of groups. */
const MOST_SHORTS = 12;

/**
 * For each pair of groups the nearest pairs of places: a short between them reads the same wherever it is, and is looked
 * for where they come closest.
 */
function shorts(
  model: BenchModel,
  cluster: readonly TestPlace[],
  expected: readonly number[],
): HarnessFault[] {
  const best = new Map<string, { apart: number; pairs: HarnessFault[] }>();
  cluster.forEach((a, i) => {
    for (const b of cluster.slice(i + 1)) {
      const [p, q] = [expected[model.placeIndex(a.id)] ?? -1, expected[model.placeIndex(b.id)] ?? -1];
      if (p === q) continue;
      const key = `${Math.min(p, q)} ${Math.max(p, q)}`;
      const known = best.get(key);
      const fault: HarnessFault = { kind: "short", a: a.id, b: b.id };
      if (known === undefined || apart(a, b) < known.apart)
        best.set(key, { apart: apart(a, b), pairs: [fault] });
      else if (apart(a, b) === known.apart && known.pairs.length < MOST_SHORTS) known.pairs.push(fault);
    }
  });
  return [...best.values()].flatMap(({ pairs }) => pairs);
}

/** Single faults that could have made the readings of a cluster of places, in an order of their own. */
export function suspects(
  model: BenchModel,
  cluster: readonly TestPlace[],
  expected: readonly number[],
): readonly HarnessFault[] {
  const { bench } = model;
  const wires = wiresOf(bench, cluster, expected, model);
  const filled = cluster.filter(({ wires: numbers }) => numbers.length > 0);
  const empty = cluster.filter(({ wires: numbers, loose }) => numbers.length === 0 && !loose);
  const found: HarnessFault[] = [];
  for (const wire of wires) {
    for (const at of [wire.a, wire.b]) found.push({ kind: "open", wireId: wire.id, at });
    found.push({ kind: "missing-wire", wireId: wire.id });
  }
  for (const place of filled) if (place.wires.length > 1) found.push({ kind: "contact-out", at: place.id });
  filled.forEach((a, i) => {
    for (const b of filled.slice(i + 1))
      if (!a.loose && !b.loose && a.landingId === b.landingId)
        found.push({ kind: "swapped", a: a.id, b: b.id });
    for (const b of empty)
      if (!a.loose && a.landingId === b.landingId)
        found.push({ kind: "wrong-cavity", contact: a.id, cavity: b.id });
  });
  return [...found, ...shorts(model, cluster, expected)];
}

function wiresOf(
  bench: TestBench,
  cluster: readonly TestPlace[],
  expected: readonly number[],
  model: BenchModel,
): TestBench["wires"] {
  const groups = new Set(cluster.map(({ id }) => expected[model.placeIndex(id)]));
  const groupOf = new Map(bench.places.map(({ id }, i) => [id, expected[i]]));
  // A wire between two splices is in the group of whatever place they lead to.
  const nets = new Set<string>();
  for (const wire of bench.wires)
    if (groups.has(groupOf.get(wire.a) ?? -1) || groups.has(groupOf.get(wire.b) ?? -1)) nets.add(wire.netId);
  return bench.wires
    .filter(
      (wire) =>
        nets.has(wire.netId) &&
        [wire.a, wire.b].every((end) => !groupOf.has(end) || groups.has(groupOf.get(end) ?? -1)),
    )
    .sort((a, b) => compareText(a.id, b.id));
}
