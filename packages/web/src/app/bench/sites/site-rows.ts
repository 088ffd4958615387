import type { AnswerOf, FloorUnit } from "@pinwright/contract";
import { compareText } from "@pinwright/kernel";
import { stageOf } from "../floor/floor-board.ts";

export type CountedIn = AnswerOf<"floorNow">["countedIn"][number];

/** A stage of the shop with the sites that have a bench for it. */
export interface StageAtSites {
  readonly id: string;
  readonly kind: string;
  readonly sites: readonly string[];
}

/** Units at one site by stage, and what is coming. */
export interface SiteRow {
  /** Blank: nobody said where they are. */
  readonly site: string;
  readonly units: number;
  readonly byStage: ReadonlyMap<string, number>;
  readonly coming: number;
  /** When something was recorded of a unit there last; blank: never. */
  readonly lastAt: string;
}

/** Units that were sent together. */
export interface Transport {
  readonly transport: string;
  readonly to: string;
  /** When the first of them left. */
  readonly since: string;
  /** Still on the way: missing, once others of it were counted in. */
  readonly out: readonly FloorUnit[];
  readonly countedIn: readonly CountedIn[];
}

/** Work of one stage at a site. */
export interface StageWork {
  readonly stage: string;
  readonly waiting: readonly FloorUnit[];
  readonly coming: number;
}

const isLoose = (unit: FloorUnit): boolean => unit.within === null;

/** Where units are, sites in the order of the shop, what nobody knows last. */
export function siteRows(
  units: readonly FloorUnit[],
  sites: readonly string[],
  stages: readonly StageAtSites[],
): readonly SiteRow[] {
  const loose = units.filter(isLoose);
  const known = new Set([
    ...sites,
    ...loose.map(({ site }) => site),
    ...loose.flatMap(({ onTheWay }) => onTheWay?.to ?? []),
  ]);
  known.delete("");
  const rows = [...known].map((site) => rowOf(loose, site, stages));
  const unknown = rowOf(loose, "", stages);
  return unknown.units === 0 ? rows : [...rows, unknown];
}

function rowOf(loose: readonly FloorUnit[], site: string, stages: readonly StageAtSites[]): SiteRow {
  const here = loose.filter((unit) => unit.onTheWay === null && unit.site === site);
  const byStage = new Map<string, number>();
  for (const unit of here) {
    const stage = stageOf(unit, stages);
    byStage.set(stage, (byStage.get(stage) ?? 0) + 1);
  }
  return {
    ...{ site, units: here.length, byStage },
    coming: site === "" ? 0 : loose.filter(({ onTheWay }) => onTheWay?.to === site).length,
    lastAt:
      here
        .map(({ lastAt }) => lastAt)
        .sort(compareText)
        .at(-1) ?? "",
  };
}

/** What is on the way, the longest first. */
export function transportsOf(
  units: readonly FloorUnit[],
  countedIn: readonly CountedIn[],
): readonly Transport[] {
  const found = new Map<string, { to: string; since: string; out: FloorUnit[] }>();
  for (const unit of units) {
    if (unit.onTheWay === null) continue;
    const { transport, to, at } = unit.onTheWay;
    const known = found.get(transport) ?? { to, since: at, out: [] };
    known.out.push(unit);
    if (at < known.since) known.since = at;
    found.set(transport, known);
  }
  return [...found]
    .map(([transport, { to, since, out }]) => ({
      ...{ transport, to, since, out },
      countedIn: countedIn.filter((unit) => unit.transport === transport),
    }))
    .sort((a, b) => compareText(a.since, b.since) || compareText(a.transport, b.transport));
}

/** What waits for the stages of a site: units that were handed over to them and are there, or nobody knows where. */
export const workOfSite = (
  units: readonly FloorUnit[],
  site: string,
  stages: readonly StageAtSites[],
): readonly StageWork[] =>
  stages
    .filter(({ sites }) => sites.includes(site))
    .map(({ id }) => {
      const ofStage = units.filter((unit) => isLoose(unit) && stageOf(unit, stages) === id);
      return {
        stage: id,
        waiting: ofStage.filter((unit) => unit.onTheWay === null && (unit.site === site || unit.site === "")),
        coming: ofStage.filter(({ onTheWay }) => onTheWay?.to === site).length,
      };
    });
