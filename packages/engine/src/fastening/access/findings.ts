import { compareText, roundTo } from "@pinwright/kernel";
import { type DriverReach, type Finding, makeFinding } from "../../model/index.ts";
import type { LiesOver } from "./lies-over.ts";
import type { Meeting } from "./probe.ts";
import type { Reached } from "./reach.ts";

type AllReached = ReadonlyMap<string, Reached>;
type Reaches = ReadonlyMap<string, DriverReach>;

/** Quantum of lengths in findings, mm. */
const STEP_MM = 0.1;

/** Everything that is wrong with how fasteners are reached. */
export function findAccess(
  reached: AllReached,
  reaches: Reaches,
  over: LiesOver,
  mostOff: number,
): readonly Finding[] {
  return [
    ...findMissing(reached),
    ...[...reached].flatMap(([id, { reach }]) => [
      ...findBlocked(false, id, reach.unitId, reach.drive, over),
      ...findBlocked(true, id, reach.unitId, reach.nut, over),
    ]),
    ...findDeep(reached, reaches, mostOff),
  ];
}

/** One for each fastener type or nut that no tool of the shop fits. */
function findMissing(reached: AllReached): readonly Finding[] {
  const byType = new Map<string, { drive: string; ids: string[] }>();
  const note = (type: { readonly id: string; readonly drive: string }, fastenerId: string): void => {
    const own = byType.get(type.id) ?? { drive: type.drive, ids: [] };
    own.ids.push(fastenerId);
    byType.set(type.id, own);
  };
  for (const [id, { fastener, reach }] of reached) {
    if (reach.missing) note(fastener.type, id);
    if (reach.nutMissing && fastener.nut !== null) note(fastener.nut, id);
  }
  return [...byType].map(([typeId, { drive, ids }]) => {
    const first = ids.sort(compareText).slice(0, 1);
    return makeFinding("driver-missing", "warning", [typeId, ...first], { drive, fasteners: ids.length });
  });
}

/**
 * A tool that can never be set on: what the fastener holds stands over it, or what is in its way has to be there
 * before, because what it holds goes over that.
 */
function findBlocked(
  isNut: boolean,
  fastenerId: string,
  unitId: string,
  met: Meeting | null,
  over: LiesOver,
): readonly Finding[] {
  if (met === null) return [];
  const beneath = blockersBeneath(met, unitId, over);
  if (!met.own && beneath.length === 0) return [];
  const { tool, clearTipMm } = met;
  const subjects = [fastenerId, ...(met.own ? [unitId] : beneath)];
  const because = met.own ? (clearTipMm === null ? "own-tip" : "own-grip") : "beneath";
  return [
    makeFinding(isNut ? "nut-blocked" : "driver-blocked", "error", subjects, {
      tool: tool.id ?? "-",
      kind: tool.kind,
      because,
      tip_mm: roundTo(tool.tipLengthMm, STEP_MM),
      clear_tip_mm: met.own && clearTipMm !== null ? roundTo(clearTipMm, STEP_MM) : "-",
    }),
  ];
}

/** What stands in a tool's way and lies beneath the fastener's own item, which it therefore comes before. */
export function blockersBeneath(
  { unitIds }: Pick<Meeting, "unitIds">,
  unitId: string,
  over: LiesOver,
): readonly string[] {
  return unitIds.filter((other) => liesAbove(unitId, other, over));
}

/** Whether one item lies over another, or over one that lies over it. */
function liesAbove(upperId: string, lowerId: string, over: LiesOver): boolean {
  const seen = new Set<string>();
  const open = [lowerId];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    for (const next of over.get(id) ?? []) {
      if (next === upperId) return true;
      if (seen.has(next)) continue;
      seen.add(next);
      open.push(next);
    }
  }
  return false;
}

/** One for each item of which the deepest fastener asks for more to come off than the shop allows. */
function findDeep(reached: AllReached, reaches: Reaches, mostOff: number): readonly Finding[] {
  const deepest = new Map<string, DriverReach>();
  for (const [id, { reach }] of reached) {
    const own = reaches.get(id);
    if (own === undefined || own.comesOff.length <= mostOff) continue;
    const unitId = reach.carriedId ?? reach.unitId;
    const known = deepest.get(unitId);
    const deeper = known === undefined ? -1 : known.comesOff.length - own.comesOff.length;
    if (deeper < 0 || (deeper === 0 && known !== undefined && compareText(id, known.fastenerId) < 0))
      deepest.set(unitId, own);
  }
  return [...deepest].map(([unitId, { fastenerId, comesOff }]) =>
    makeFinding("service-deep", "warning", [unitId, fastenerId, ...comesOff.filter((id) => id !== unitId)], {
      off: comesOff.length,
      most: mostOff,
    }),
  );
}
