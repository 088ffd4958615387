/**
 * Packs 1 to 91 equal circles, circles of radii 1 to n, and mixtures of wires, with both efforts, and writes the
 * diameters with their bounds and the best known to `results/packing.csv`, the centres to `results/packing-centres.csv`.
 *
 *     npx tsx prove/packing.ts
 */
import { readFileSync } from "node:fs";
import { type Packing, packCircles, seededRandom } from "@pinwright/kernel";
import { cells, percent, writeResults } from "./write-results.ts";

interface Instance {
  readonly name: string;
  readonly diameters: readonly number[];
  readonly bestKnown: number | null;
}

/** Diameters over the insulation of common hook-up wire and small cables. */
const WIRES_MM = [1.2, 1.3, 1.4, 1.6, 1.8, 2.05, 2.35, 2.8, 3.5, 4, 7.2];

const bestKnown = (): ReadonlyMap<string, number> => {
  const file = new URL("../packages/kernel/src/packing/testing/best-known.csv", import.meta.url);
  return new Map(
    cells(readFileSync(file, "utf8")).map(([set = "", n = "", radius = ""]) => [
      `${set} ${n}`,
      Number(radius),
    ]),
  );
};

const instances = (): Instance[] => {
  const known = bestKnown();
  const list: Instance[] = [];
  for (let n = 1; n <= 91; n++) {
    list.push({
      name: `equal ${n}`,
      diameters: new Array<number>(n).fill(1),
      bestKnown: known.get(`equal ${n}`) ?? null,
    });
  }
  for (const [name, radius] of known) {
    if (!name.startsWith("radii-1-to-n ")) continue;
    const n = Number(name.split(" ")[1]);
    list.push({ name, diameters: Array.from({ length: n }, (_, i) => i + 1), bestKnown: radius });
  }
  const random = seededRandom(7);
  for (let k = 0; k < 30; k++) {
    const sizes = Array.from(
      { length: 2 + (k % 3) },
      () => WIRES_MM[Math.floor(random() * WIRES_MM.length)] ?? 1,
    );
    const n = 5 + Math.floor((k * 55) / 29);
    const diameters = Array.from({ length: n }, () => sizes[Math.floor(random() * sizes.length)] ?? 1);
    list.push({ name: `wires-${k + 1} ${n}`, diameters: diameters.sort((a, b) => b - a), bestKnown: null });
  }
  return list;
};

const certificate = (instance: Instance, packing: Packing): string =>
  [
    instance.name,
    instance.diameters.join(" "),
    packing.diameterMm.toPrecision(15),
    packing.centres.map((c) => `${c.xMm.toPrecision(13)} ${c.yMm.toPrecision(13)}`).join(" "),
  ].join(",");

const rows: string[] = [];
const centres: string[] = [];
for (const instance of instances()) {
  const quick = packCircles(instance.diameters, "quick");
  const found = packCircles(instance.diameters, "thorough");
  const best = instance.bestKnown ?? Math.min(quick.diameterMm, found.diameterMm);
  const row = [
    instance.name,
    instance.diameters.length,
    found.lowerBoundMm.toFixed(6),
    quick.diameterMm.toFixed(6),
    found.diameterMm.toFixed(6),
    instance.bestKnown?.toFixed(6) ?? "",
    percent(quick.diameterMm, best),
    percent(found.diameterMm, best),
    percent(found.diameterMm, found.lowerBoundMm),
  ].join(",");
  process.stdout.write(`${row}\n`);
  rows.push(row);
  centres.push(certificate(instance, found.diameterMm <= quick.diameterMm ? found : quick));
}
writeResults(
  "packing.csv",
  "instance,circles,lower_bound,quick,thorough,best_known,quick_gap_pct,thorough_gap_pct,thorough_over_bound_pct",
  rows,
);
writeResults("packing-centres.csv", "instance,diameters,enclosing_diameter,centres", centres);
