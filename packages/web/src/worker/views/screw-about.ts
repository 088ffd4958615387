import type {
  DriverReach,
  FastenerFit,
  FastenerItem,
  FastenerMoment,
  Finding,
  Side,
} from "@pinwright/engine";
import type { Model } from "../model.ts";
import { type NamedId, namedItem, namedTool, namedType } from "../steps/named.ts";
import { turnsOf } from "./screw-marks.ts";
import { view } from "./view.ts";

/** What stands in the way of tool and hand, by name. */
interface ScrewReach {
  readonly driver: NamedId | null;
  readonly inWay: readonly NamedId[];
  readonly nutDriver: NamedId | null;
  readonly nutInWay: readonly NamedId[];
  readonly ownInWay: boolean;
  readonly comesOff: readonly NamedId[];
}

/** Everything that is known of one fastener. */
export interface ScrewAbout {
  readonly id: string;
  readonly label: string;
  readonly labelZh: string;
  readonly typeId: string;
  readonly panelId: string;
  readonly side: Side;
  readonly xMm: number;
  readonly yMm: number;
  /** Of the panel. */
  readonly thicknessMm: number;
  readonly parentId: string | null;
  readonly holds: NamedId | null;
  readonly purpose: string;
  readonly moments: readonly FastenerMoment[];
  readonly washer: NamedId | null;
  readonly nut: NamedId | null;
  readonly flangeMm: number;
  readonly lengthMm: number;
  readonly threadlocker: boolean;
  readonly stepId: string | null;
  readonly stepNumber: number;
  readonly turn: number;
  readonly fit: FastenerFit | null;
  readonly reach: ScrewReach | null;
  readonly findings: readonly Finding[];
}

function reachOf(model: Model, reach: DriverReach): ScrewReach {
  const names = (ids: readonly string[]): readonly NamedId[] => ids.map((id) => namedItem(model, id));
  const tool = (id: string | null): NamedId | null => (id === null ? null : namedTool(model, id));
  return {
    driver: tool(reach.driverId),
    inWay: names(reach.inWay),
    nutDriver: tool(reach.nutDriverId),
    nutInWay: names(reach.nutInWay),
    ownInWay: reach.ownInWay,
    comesOff: names(reach.comesOff),
  };
}

function about(model: Model, item: FastenerItem): ScrewAbout {
  const { machine, fastening, findings } = model.line;
  const { stepId = null, stepNumber = 0, turn = 0 } = turnsOf(model).get(item.id) ?? {};
  const reach = fastening.reaches.get(item.id);
  return {
    id: item.id,
    label: item.labels.en,
    labelZh: item.labels.zh,
    typeId: item.type.id,
    panelId: item.place.panelId,
    side: item.place.side,
    xMm: item.place.xMm,
    yMm: item.place.yMm,
    thicknessMm: machine.panels.get(item.place.panelId)?.thickness_mm ?? 0,
    parentId: item.parentId,
    holds: item.holds === null ? null : namedItem(model, item.holds),
    purpose: item.purpose,
    moments: item.moments,
    washer: item.washer === null ? null : namedType(item.washer),
    nut: item.nut === null ? null : namedType(item.nut),
    flangeMm: item.flangeMm,
    lengthMm: item.type.length_mm,
    threadlocker: item.type.threadlocker,
    stepId,
    stepNumber,
    turn,
    fit: fastening.fits.get(item.id) ?? null,
    reach: reach === undefined ? null : reachOf(model, reach),
    findings: findings.filter((finding) => finding.subjects.includes(item.id)),
  };
}

/** What is known of one fastener; no entry when there is none of this id. */
export const screwAbout = view<{ readonly id: string }, ScrewAbout>({
  uses: ({ line }) => [line],
  entries: (model, { id }) => {
    const item = model.line.machine.items.get(id);
    return new Map(item?.kind === "fastener" ? [["", about(model, item)]] : []);
  },
  restsInPreview: true,
});
