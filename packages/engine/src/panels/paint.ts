import type { ShopRow } from "@pinwright/book";
import { compareText, roundTo } from "@pinwright/kernel";
import type { Machine, PaintBatch, PaintPlan } from "../model/index.ts";

/** What a paint plan is asked for. */
export interface PaintQuestion {
  /** How many cabinets. */
  readonly machines: number;
  readonly coats: readonly ShopRow<"coats">[];
  /** Cabinets that the rack holds at once. */
  readonly rackCabinets: number;
  /** Hours worked in a day, from its beginning; drying goes on at night. */
  readonly hoursDay: number;
  /** People who paint at once. */
  readonly people: number;
}

const DAY_HOURS = 24;
/** Hours are told to a minute. */
const MINUTE_HOURS = 1 / 60;

/**
 * Batches of cabinets on the paint rack so that the run is through on the earliest day that can be, in as few batches as
 * that allows: while one batch dries, another is
 * painted, and never are more cabinets on the rack than it holds. All batches but the last are alike; every size up to that
 * of the rack is tried. A coat of a batch is not interrupted by the night unless it takes longer than a day. A later coat
 * goes first, so that the rack gets free. Null: there are no
 * coats, no cabinets or no room.
 * @throws RangeError when hours or people are not positive, or numbers of cabinets no whole numbers
 */
export function paintPlan(question: PaintQuestion): PaintPlan | null {
  const { machines, rackCabinets, hoursDay, people } = question;
  if (!(hoursDay > 0 && hoursDay <= DAY_HOURS && people > 0))
    throw new RangeError(`hours ${hoursDay}, people ${people}`);
  if (!Number.isSafeInteger(machines) || machines < 0) throw new RangeError(`machines ${machines}`);
  const coats = [...question.coats].sort((a, b) => a.order - b.order || compareText(a.id, b.id));
  const room = Math.floor(rackCabinets);
  if (coats.length === 0 || machines === 0 || room < 1) return null;
  let best: readonly PaintBatch[] = [];
  let batchSize = 0;
  for (let size = Math.min(room, machines); size >= 1; size--) {
    const batches = schedule({ ...question, coats, rackCabinets: room }, size);
    if (best.length > 0 && dayOf(batches) >= dayOf(best)) continue;
    best = batches;
    batchSize = size;
  }
  return {
    batches: best,
    batchSize,
    rackCabinets: room,
    hoursDay,
    endHour: endOf(best),
    earliestEndHour: Math.min(endOf(best), round(earliestEnd({ ...question, coats, rackCabinets: room }))),
  };
}

/** The paint plan of a shop: its coats, its rack, and the hours and people of its paint benches. */
export function shopPaintPlan({ shop }: Pick<Machine, "shop">, machines: number): PaintPlan | null {
  const benches = shop.tables.benches.filter(({ kind }) => kind === "paint");
  return paintPlan({
    machines,
    coats: shop.tables.coats,
    rackCabinets: shop.numbers.rack_cabinets,
    hoursDay: Math.max(1, ...benches.map(({ hours_day }) => hours_day)),
    people: Math.max(
      1,
      benches.reduce((sum, { people }) => sum + people, 0),
    ),
  });
}

const round = (hours: number): number => roundTo(hours, MINUTE_HOURS);

/** Day on which the last cabinet leaves the rack. */
const dayOf = (batches: readonly PaintBatch[]): number => Math.ceil(endOf(batches) / DAY_HOURS - 1e-9);

const endOf = (batches: readonly PaintBatch[]): number =>
  Math.max(0, ...batches.map(({ coats }) => coats.at(-1)?.dryHour ?? 0));

/** A batch on its way. */
interface Going {
  readonly cabinets: number;
  coat: number;
  readyHour: number;
  readonly coats: PaintBatch["coats"][number][];
}

function schedule(question: PaintQuestion, size: number): readonly PaintBatch[] {
  const { machines, coats, rackCabinets } = question;
  const batches: Going[] = [];
  for (let left = machines; left > 0; left -= size)
    batches.push({ cabinets: Math.min(size, left), coat: 0, readyHour: 0, coats: [] });
  // Batches enter in their order; those that have left the rack are skipped for good.
  let firstOn = 0;
  let waiting = 0;
  let now = 0;
  for (;;) {
    while (firstOn < waiting && hasLeft(batches[firstOn], coats.length, now)) firstOn++;
    const rack = batches.slice(firstOn, waiting);
    const next = waiting < batches.length ? batches[waiting] : undefined;
    const enters = next === undefined ? null : entersAt(rack, next.cabinets, rackCabinets, coats.length);
    const going = rack.filter((batch) => batch.coat < coats.length);
    if (going.length === 0 && next === undefined) break;
    const options = going.map((batch) => ({ batch, at: Math.max(now, batch.readyHour) }));
    if (next !== undefined && enters !== null) options.push({ batch: next, at: Math.max(now, enters) });
    const started = options.map(({ batch, at }) => ({
      batch,
      at: workStart(at, hoursOf(question, batch), question.hoursDay),
    }));
    started.sort((a, b) => a.at - b.at || b.batch.coat - a.batch.coat);
    const chosen = started[0];
    if (chosen === undefined) break;
    const { batch, at } = chosen;
    if (batch === next) waiting++;
    now = paint(question, batch, at);
  }
  return batches.map(({ cabinets, coats: own }, i) => ({ number: i + 1, cabinets, coats: own }));
}

const hasLeft = (batch: Going | undefined, coats: number, hour: number): boolean =>
  batch === undefined || (batch.coat >= coats && batch.readyHour <= hour);

/** When so many places of the rack are free; null: not before a batch on it has got a further coat. */
function entersAt(
  rack: readonly Going[],
  cabinets: number,
  rackCabinets: number,
  coats: number,
): number | null {
  let used = rack.reduce((sum, batch) => sum + batch.cabinets, 0);
  if (used + cabinets <= rackCabinets) return 0;
  const leaving = rack.filter((batch) => batch.coat >= coats).sort((a, b) => a.readyHour - b.readyHour);
  for (const batch of leaving) {
    used -= batch.cabinets;
    if (used + cabinets <= rackCabinets) return batch.readyHour;
  }
  return null;
}

const hoursOf = ({ coats, people }: PaintQuestion, { coat, cabinets }: Going): number =>
  ((coats[coat]?.minutes ?? 0) * cabinets) / 60 / people;

/** When work of so many hours can begin: at once if the day is long enough for the rest of it, else the next morning. */
function workStart(hour: number, workHours: number, hoursDay: number): number {
  const day = Math.floor(hour / DAY_HOURS + 1e-9);
  const worked = hour - day * DAY_HOURS;
  const fits = worked + Math.min(workHours, hoursDay) <= hoursDay + 1e-9;
  return fits ? hour : (day + 1) * DAY_HOURS;
}

/** When work of so many hours that begins then is done, nights left out. */
function workEnd(hour: number, workHours: number, hoursDay: number): number {
  let at = hour;
  let left = workHours;
  for (;;) {
    const day = Math.floor(at / DAY_HOURS + 1e-9);
    const today = day * DAY_HOURS + hoursDay - at;
    if (left <= today + 1e-9) return at + left;
    left -= Math.max(0, today);
    at = (day + 1) * DAY_HOURS;
  }
}

/** Paints the next coat of a batch; when the painters are free again. */
function paint(question: PaintQuestion, batch: Going, startHour: number): number {
  const coat = question.coats[batch.coat];
  const end = workEnd(startHour, hoursOf(question, batch), question.hoursDay);
  batch.readyHour = end + (coat?.dry_hours ?? 0);
  batch.coat++;
  batch.coats.push({
    coatId: coat?.id ?? "",
    startHour: round(startHour),
    workEndHour: round(end),
    dryHour: round(batch.readyHour),
  });
  return end;
}

/**
 * No earlier end is possible: all the painting has to be done in hours of work and the last coat has to dry; and each
 * cabinet has a place of the rack for its coats and their drying.
 */
function earliestEnd({ machines, coats, rackCabinets, hoursDay, people }: PaintQuestion): number {
  const perCabinet = coats.reduce((sum, { minutes }) => sum + minutes / 60 / people, 0);
  const dry = coats.reduce((sum, { dry_hours }) => sum + dry_hours, 0);
  const byWork = workEnd(0, machines * perCabinet, hoursDay) + (coats.at(-1)?.dry_hours ?? 0);
  return Math.max(byWork, Math.ceil(machines / rackCabinets) * (perCabinet + dry));
}
