import { type FuseChart, type FuseRating, fuseChart, type LineResult } from "@pinwright/engine";
import { type Named, namedElement } from "../electric/naming.ts";
import { electricOf } from "../electric/of-line.ts";
import { bothOf, findWire, printedNo } from "../wires/wires-at.ts";
import { view } from "./view.ts";

/** A fuse with what it carries and what it protects. */
export interface FuseLine extends Named {
  readonly rating: FuseRating;
  /** Part of what it carries all the time that its steady current is. */
  readonly share: number;
  /** Printed number of the wire that a short circuit harms first; null where none is behind it. */
  readonly weakest: string | null;
}

/** A fuse with its curve and all that is drawn into it. */
export interface FuseFigures extends FuseLine {
  readonly chart: FuseChart;
  readonly loads: readonly Named[];
}

function lineOf(line: LineResult, rating: FuseRating): FuseLine {
  const row = line.machine.book.tables.fuses.find((fuse) => fuse.id === rating.fuseId);
  const named = namedElement(line, rating.elementId);
  const weak = rating.weakest === null ? null : findWire(line, rating.weakest.wireId);
  return {
    ...named,
    label: row === undefined ? named.label : bothOf(row),
    rating,
    share: rating.ratedA > 0 ? rating.steadyA / rating.ratedA : Number.POSITIVE_INFINITY,
    weakest: weak === null ? null : printedNo(weak.harness, weak.wire),
  };
}

/** Every fuse that lies on a way to a load, the most loaded first. */
export const electricFuses = view<null, FuseLine>({
  uses: ({ line }) => [electricOf(line), line.machine.items, line.machine.book.tables.fuses],
  entries: ({ line }) =>
    new Map(
      [...electricOf(line).ratings.fuses.values()]
        .map((rating) => lineOf(line, rating))
        .sort((a, b) => b.share - a.share)
        .map((one) => [one.id, one]),
    ),
  restsInPreview: true,
});

/** One fuse by its element or its row; nothing when there is none. */
export const electricFuse = view<string, FuseFigures>({
  uses: ({ line }) => [electricOf(line), line.machine],
  entries: ({ line }, id) => {
    const rating = [...electricOf(line).ratings.fuses.values()].find(
      (one) => one.elementId === id || one.fuseId === id,
    );
    if (rating === undefined) return new Map();
    const chart = fuseChart(line.machine, line.harnesses, line.electric, rating);
    const loads = chart.loadIds.map((loadId) => namedElement(line, loadId));
    return new Map([["", { ...lineOf(line, rating), chart, loads }]]);
  },
  restsInPreview: true,
});
