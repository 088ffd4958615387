import type { BookRow } from "@pinwright/book";
import type { CoilRating, DiodeRating, ElectricSolution, LoadVolts, Machine } from "../../model/index.ts";
import type { Feed } from "../network/feeds.ts";
import type { Part } from "../network/parts.ts";
import { type Usage, usageOf } from "../network/usage.ts";
import { forwardVolts } from "../network/values.ts";
import { allowedDuty, coilHeatW, insulationClassC, kelvinPerWatt, stuckOnS } from "../physics/coil-heat.ts";
import { decayOf, storedJ } from "../physics/coil-switching.ts";
import { gapForceN, windingOf } from "../physics/winding.ts";
import { copperFactor } from "../physics/wire-resistance.ts";
import type { Protection, ProtectionNet } from "../protection/protect.ts";
import { sourceId } from "../protection/short.ts";

type Row = BookRow<"windings">;

interface Task {
  readonly machine: Machine;
  readonly feeds: readonly Feed[];
  readonly net: Pick<ProtectionNet, "diodeOf">;
  readonly solution: Pick<ElectricSolution, "loads">;
  readonly protection: Protection;
}

/** Every coil and motor that something feeds: its winding, heat, time stuck on, fuse and diode. */
export function rateCoils(task: Task): ReadonlyMap<string, CoilRating> {
  const { machine, feeds } = task;
  const activity = new Map(machine.book.tables.activity.map((row) => [row.item, row]));
  const windings = new Map(machine.book.tables.windings.map((row) => [row.element, row]));
  const coils = feeds.filter(({ load }) => isWound(load.element.row.kind));
  const holder = holders(coils);
  const rated = new Map<string, CoilRating>();
  for (const feed of coils) {
    const { load } = feed;
    const volts = task.solution.loads.get(load.id);
    const use = activity.get(load.element.itemId) ?? null;
    const winding = windings.get(load.element.row.id) ?? null;
    if (volts === undefined) continue;
    rated.set(
      load.id,
      rateCoil(task, feed, volts, { use, winding, holds: holder(feed), diode: task.net.diodeOf(feed) }),
    );
  }
  return rated;
}

const isWound = (kind: BookRow<"elements">["kind"]): boolean => kind === "coil" || kind === "motor";

/** Of several windings of one item the one with the highest resistance holds. */
function holders(coils: readonly Feed[]): (feed: Feed) => boolean {
  const most = new Map<string, number>();
  for (const { load } of coils)
    most.set(load.element.itemId, Math.max(most.get(load.element.itemId) ?? 0, load.element.row.ohm ?? 0));
  return ({ load }) => (load.element.row.ohm ?? 0) === most.get(load.element.itemId);
}

interface Facts {
  readonly use: BookRow<"activity"> | null;
  readonly winding: Row | null;
  readonly holds: boolean;
  readonly diode: Part | null;
}

/** Share of the time at full voltage that heats as much: in hold the winding has its duty's share of the current. */
const heatDuty = ({ pulseShare, holdShare, holdDuty }: Usage, holds: boolean): number =>
  pulseShare + (holds ? holdShare * holdDuty ** 2 : 0);

function rateCoil(task: Task, feed: Feed, found: LoadVolts, facts: Facts): CoilRating {
  const { machine, protection } = task;
  const { ambient_c: airC, cold_c: coldC } = machine.shop.numbers;
  const { element } = feed.load;
  const { use, winding, holds } = facts;
  const isMotor = element.row.kind === "motor";
  const volts = found.aloneV.most;
  const ohm20C = element.row.ohm ?? 0;
  const limitC = winding === null ? null : insulationClassC(winding.class);
  const rise = winding?.heat_w == null || limitC === null ? null : kelvinPerWatt(limitC, winding.heat_w);
  const usage = use === null ? null : usageOf(use);
  const duty = usage === null ? 1 : heatDuty(usage, holds);
  const meanW = isMotor ? 0 : duty * coilHeatW(volts, ohm20C, limitC ?? airC);
  const startC = rise === null || limitC === null ? airC : Math.min(limitC, airC + meanW * rise);
  const warm =
    isMotor || rise === null || limitC === null || winding?.warm_min == null
      ? null
      : { ohm20C, limitC, kelvinPerWatt: rise, timeConstantS: winding.warm_min * 60 };
  const leastA = found.aloneV.least / (ohm20C * copperFactor(limitC ?? airC));
  const fuses = protection.fusesOfLoad.get(feed.load.id) ?? [];
  const fuse = fuses.toSorted((a, b) => a.opensWithinS(leastA) - b.opensWithinS(leastA))[0] ?? null;
  const holdDuty = usage?.holdDuty ?? 1;
  const mostA = isMotor ? found.amps.most : volts / (ohm20C * copperFactor(coldC));
  return {
    elementId: element.id,
    itemId: element.itemId,
    supplyId: sourceId(feed.source),
    volts,
    ohm20C,
    windingOhm: windingOhm(winding),
    mostA,
    leastA: isMotor ? found.amps.least : leastA,
    ampereTurns: winding?.turns == null ? null : winding.turns * leastA,
    forceN: forceOf(winding, leastA),
    storedJ: element.row.mh === null ? null : storedJ(element.row.mh / 1000, mostA),
    duty,
    allowedDuty:
      isMotor || rise === null || limitC === null
        ? null
        : allowedDuty({ ohm20C, limitC, kelvinPerWatt: rise }, volts, airC),
    limitC,
    kelvinPerWatt: rise,
    meanW,
    holdS: warm === null || !holds ? null : stuckOnS(warm, volts * holdDuty, airC, startC),
    askedHoldS: holds ? (use?.hold_ms ?? 0) / 1000 : 0,
    stuckS: warm === null ? null : stuckOnS(warm, volts, airC, startC),
    fuseS: fuse?.opensWithinS(leastA) ?? null,
    fuseElementId: fuse?.part.id ?? null,
    fuseRatedA: fuse?.ratedA ?? null,
    timeoutS: use?.timeout_ms == null ? null : use.timeout_ms / 1000,
    // A bridge takes the field back through its own diodes; what nothing switches never goes off.
    needsDiode: feed.drivers.length === 1 || (feed.drivers.length === 0 && feed.contacts.length > 0),
    diode: facts.diode === null ? null : rateDiode(facts, element.row, mostA, volts),
  };
}

/** Resistance that a winding's turns, wire and bobbin make; null where one of them is not told. */
function windingOhm(row: Row | null): number | null {
  if (row === null) return null;
  const { turns, wire_mm, enamel_mm, bore_mm, window_mm } = row;
  if (turns === null || wire_mm === null || enamel_mm === null || bore_mm === null || window_mm === null)
    return null;
  if (window_mm < enamel_mm) return null;
  const bobbin = { turns, wireMm: wire_mm, overEnamelMm: enamel_mm, boreMm: bore_mm, windowMm: window_mm };
  return windingOf(bobbin).ohm20C;
}

function forceOf(row: Row | null, amps: number): number | null {
  if (row?.turns == null || row.pole_mm2 === null || row.gap_mm === null) return null;
  return gapForceN(row.turns * amps, row.pole_mm2, row.gap_mm);
}

function rateDiode(
  { diode, use }: Facts,
  coil: BookRow<"elements">,
  peakA: number,
  volts: number,
): DiodeRating | null {
  if (diode?.kind !== "element") return null;
  const { row, id } = diode.element;
  const decay =
    coil.mh === null || coil.ohm === null || coil.ohm === 0
      ? null
      : decayOf({ ohm: coil.ohm, henry: coil.mh / 1000 }, peakA, forwardVolts(row));
  const everyS = use?.repeat_ms == null ? null : use.repeat_ms / 1000;
  return {
    elementId: id,
    peakA,
    ratedPeakA: row.peak_a,
    meanA: decay === null || everyS === null || everyS === 0 ? null : decay.charge / everyS,
    ratedA: row.amp,
    volts,
    blockV: row.block_v,
    decayMs: decay === null ? null : decay.seconds * 1000,
  };
}
