import { compareText } from "@pinwright/kernel";
import {
  type Finding,
  type HarnessWires,
  type Machine,
  makeFinding,
  type Optimum,
  type RouteCourse,
} from "../model/index.ts";
import { optimum } from "../wire/index.ts";
import { colourBound, paletteSize } from "./bound.ts";
import { fixedColours } from "./fixed.ts";
import { checkMainsColours } from "./mains-colour.ts";
import { type ColourProblem, colourProblem, isEarth } from "./problem.ts";
import { ColourSearch } from "./search.ts";

export interface HarnessColours {
  readonly harnessId: string;
  /** IEC 60757 code of each wire, by wire id. */
  readonly colours: ReadonlyMap<string, string>;
  /** Colour that most wires of each net wear: what the next harness should go on with. */
  readonly netColours: ReadonlyMap<string, string>;
  /** Alike pairs in housings and at breakouts, plus reels, against what no colouring can beat. */
  readonly optimum: Optimum;
  readonly alike: number;
  readonly reels: number;
  readonly findings: readonly Finding[];
}

/**
 * Colours the wires of a harness from what is stocked. No two wires of a housing are alike (two wires in one
 * contact, and earth wires, may be); a net keeps one colour where that allows it; then as few alike as possible
 * among the wires that leave at one breakout; then as few reels as possible. Earth wears green-and-yellow, and
 * nothing else does (IEC 60445, IEC 60757). What is pinned or kept stays.
 * @param breakouts for each place where wires leave the bundle, the ids of those wires: see `breakoutGroups`
 * @param known colours of nets in harnesses that are coloured already
 */
export function colourHarness(
  machine: Machine,
  harness: Pick<HarnessWires, "harnessId" | "wires">,
  breakouts: readonly (readonly string[])[] = [],
  known: ReadonlyMap<string, string> = new Map(),
): HarnessColours {
  const wires = [...harness.wires].sort((a, b) => compareText(a.id, b.id));
  const problem = colourProblem(machine, wires, breakouts);
  const fixed = fixedColours(machine, problem);
  const search = new ColourSearch(problem, fixed.colours, known);
  const worn = search.run();
  const counts = countAlike(problem, worn);
  const colours = new Map(wires.map((wire, i) => [wire.id, worn[i] ?? ""]));
  return {
    harnessId: harness.harnessId,
    colours,
    netColours: search.netColours(),
    optimum: optimum(counts.alike + counts.reels, colourBound(problem)),
    ...counts,
    findings: [
      ...fixed.findings,
      ...findingsOf(problem, worn),
      ...checkMainsColours(machine, wires, colours),
    ],
  };
}

function countAlike(
  problem: ColourProblem,
  worn: readonly string[],
): { readonly alike: number; readonly reels: number } {
  let twice = 0;
  problem.wires.forEach(({ hard, same, soft }, i) => {
    for (const j of new Set([...hard, ...same, ...soft])) if (worn[i] === worn[j]) twice++;
  });
  const reels = new Set(problem.wires.map(({ wire }, i) => `${wire.wireType.id}|${worn[i]}`));
  return { alike: twice / 2, reels: reels.size };
}

/**
 * `housing-short-of-colours`: a housing has more wires than there are colours for it. `colour-alike`: wires of a
 * housing that look alike all the same. `wire-type-colourless`: a wire type is to be had in no colour.
 */
function findingsOf(problem: ColourProblem, worn: readonly string[]): readonly Finding[] {
  const found: Finding[] = [];
  for (const [landingId, list] of [...problem.landings].sort((a, b) => compareText(a[0], b[0]))) {
    const own = list.filter(({ wire }) => {
      const w = problem.wires[wire]?.wire;
      return w !== undefined && !isEarth(w);
    });
    const points = Math.min(new Set(own.map((o) => o.pointId)).size, new Set(own.map((o) => o.wire)).size);
    const palette = paletteSize(
      problem,
      own.map((o) => o.wire),
    );
    if (points > palette) {
      found.push(
        makeFinding("housing-short-of-colours", "warning", [landingId], { wires: points, colours: palette }),
      );
    }
    const byColour = new Map<string, typeof own>();
    for (const o of own) {
      const colour = worn[o.wire] ?? "";
      byColour.set(colour, [...(byColour.get(colour) ?? []), o]);
    }
    for (const [colour, alike] of [...byColour].sort((a, b) => compareText(a[0], b[0]))) {
      if (new Set(alike.map((o) => o.pointId)).size < 2 || new Set(alike.map((o) => o.wire)).size < 2)
        continue;
      const ids = alike.flatMap((o) => problem.wires[o.wire]?.wire.id ?? []).sort(compareText);
      const nets = new Set(alike.map((o) => problem.wires[o.wire]?.wire.netId));
      found.push(
        makeFinding("colour-alike", nets.size > 1 ? "warning" : "note", [landingId, ...new Set(ids)], {
          colour,
          wires: alike.length,
        }),
      );
    }
  }
  const bare = problem.wires.filter((w) => w.palette.length === 0).map((w) => w.wire.wireType.id);
  for (const type of [...new Set(bare)].sort(compareText)) {
    found.push(makeFinding("wire-type-colourless", "error", [type]));
  }
  return found;
}

/** For each node of a harness tree, the wires that leave the bundle there towards a landing. */
export function breakoutGroups(route: RouteCourse): readonly (readonly string[])[] {
  const tails = new Map(
    route.branches
      .filter((branch) => branch.kind === "tail")
      .map((branch) => [branch.id, branch.a.startsWith("landing:") ? branch.b : branch.a]),
  );
  const groups = new Map<string, string[]>();
  for (const [wireId, path] of route.paths) {
    for (const branchId of path) {
      const node = tails.get(branchId);
      if (node === undefined) continue;
      const list = groups.get(node);
      if (list === undefined) groups.set(node, [wireId]);
      else list.push(wireId);
    }
  }
  return [...groups].sort((a, b) => compareText(a[0], b[0])).map(([, ids]) => ids.sort(compareText));
}
