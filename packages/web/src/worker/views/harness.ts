import type { HarnessResult, LineResult, Optimum } from "@pinwright/engine";
import { cutList } from "@pinwright/engine";
import { findingsOf } from "../wires/findings-of.ts";
import { type HarnessLine, harnessLine } from "./harnesses.ts";
import { view } from "./view.ts";

/** A branch with its bundle, as the builder ties it. */
interface BundleLine {
  readonly id: string;
  readonly kind: "lane" | "crossing" | "tail";
  readonly lengthMm: number;
  readonly wires: number;
  readonly laidMm: number;
  readonly packedMm: number;
  readonly ruleMm: number;
  readonly ties: number;
  readonly tieId: string | null;
  readonly sleeveId: string | null;
}

/** One harness in figures. */
export interface HarnessFigures extends HarnessLine {
  /** Work of laying, and what no route can beat that keeps what is kept: minutes, with wire counted as minutes. */
  readonly work: Optimum;
  /** Its way is kept from before or pinned, so that the bound says nothing of other ways. */
  readonly isKept: boolean;
  /** Wire along its way in the machine, m: what the work counts. */
  readonly routeMetres: number;
  readonly breakouts: number;
  readonly insertions: number;
  readonly splices: number;
  readonly ties: number;
  /** Reels that are put on the cutting bench, cutting minutes by the shop's times. */
  readonly reels: number;
  readonly cutMinutes: number;
  readonly board: {
    readonly widthMm: number;
    readonly heightMm: number;
    readonly kind: "planar" | "unfolded";
    readonly side: "top" | "under";
    readonly crossings: number;
    readonly overlaps: number;
    /** Area in m² against what these holders and branches take at least. */
    readonly area: Optimum;
  };
  /** Pairs of plugs of which one is of this harness and that could be exchanged. */
  readonly swaps: number;
  readonly bundles: readonly BundleLine[];
  readonly landings: number;
  readonly unreached: readonly string[];
}

const SWAP_RULES: ReadonlySet<string> = new Set(["plug-swap", "plugs-alike"]);

function bundlesOf(harness: HarnessResult): readonly BundleLine[] {
  const ties = new Map(harness.pinboard.branches.map((branch) => [branch.id, branch.tiesMm.length]));
  return harness.branches
    .map(
      ({ id, kind, lengthMm, wireIds, bundle }): BundleLine => ({
        id,
        kind,
        lengthMm,
        wires: wireIds.length,
        laidMm: bundle.laidMm,
        packedMm: bundle.packedMm,
        ruleMm: bundle.ruleMm,
        ties: ties.get(id) ?? 0,
        tieId: bundle.tieId,
        sleeveId: bundle.sleeveId,
      }),
    )
    .sort((a, b) => b.laidMm - a.laidMm || (a.id < b.id ? -1 : 1));
}

function figuresOf(line: LineResult, harness: HarnessResult): HarnessFigures {
  const { work } = harness.route;
  const { pinboard } = harness;
  const cuts = cutList(line.machine, harness);
  const squareMetres = (value: number): number => value / 1e6;
  return {
    ...harnessLine(harness, line.findings),
    work: work.total,
    isKept: line.machine.choices.get("trunk")?.has(harness.harness.id) ?? false,
    routeMetres: work.metres,
    breakouts: work.breakouts,
    insertions: work.insertions,
    splices: harness.splices.length,
    ties: pinboard.branches.reduce((sum, branch) => sum + branch.tiesMm.length, 0),
    reels: cuts.reelChanges.value,
    cutMinutes: cuts.minutes,
    board: {
      widthMm: pinboard.widthMm,
      heightMm: pinboard.heightMm,
      kind: pinboard.kind,
      side: pinboard.side,
      crossings: pinboard.crossings,
      overlaps: pinboard.overlaps,
      area: {
        value: squareMetres(pinboard.area.value),
        lowerBound: squareMetres(pinboard.area.lowerBound),
        gap: pinboard.area.gap,
      },
    },
    swaps: findingsOf(line.findings, harness).filter(({ rule }) => SWAP_RULES.has(rule)).length,
    bundles: bundlesOf(harness),
    landings: harness.landingIds.length,
    unreached: harness.route.unreached,
  };
}

/** One harness in figures; nothing when there is none of this id. */
export const harness = view<string, HarnessFigures>({
  uses: ({ line }, id) => [line.harnesses.get(id), line.findings, line.machine.choices.get("trunk")],
  entries: ({ line }, id) => {
    const found = line.harnesses.get(id);
    return new Map(found === undefined ? [] : [["", figuresOf(line, found)]]);
  },
  restsInPreview: true,
});
