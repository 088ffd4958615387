import type { ElectricSolution, LampBoardRating, LampRating, Machine } from "../../model/index.ts";
import type { Feed } from "../network/feeds.ts";
import { forwardVolts } from "../network/values.ts";
import { multiplexedA, seriesResistor } from "../physics/lamp.ts";

/**
 * Every LED with its resistor: current at the highest supply, heat of the resistor, and the resistor of the E24 series
 * that the book's mean current asks for. A lamp that `activity` gives a duty below 100 % is one line of a multiplex.
 */
export function rateLamps(
  machine: Machine,
  feeds: readonly Feed[],
  solution: Pick<ElectricSolution, "loads">,
): ReadonlyMap<string, LampRating> {
  const dutyOf = new Map(
    machine.book.tables.activity.map(({ item, duty_pct }) => [item, (duty_pct ?? 100) / 100]),
  );
  const rated = new Map<string, LampRating>();
  for (const { load, source } of feeds) {
    const { row, id, itemId } = load.element;
    const found = solution.loads.get(load.id);
    if (row.kind !== "led" || found === undefined) continue;
    const duty = dutyOf.get(itemId) ?? 1;
    const [amps, ohm] = [found.amps.most, row.ohm ?? 0];
    const forwardV = forwardVolts(row);
    const wanted = row.amp === null || ohm === 0 || duty === 0 ? null : multiplexedA(row.amp, duty);
    rated.set(id, {
      elementId: id,
      itemId,
      volts: source.volts,
      forwardV,
      ohm,
      amps,
      duty,
      ratedA: row.amp,
      peakA: row.peak_a,
      watts: amps ** 2 * ohm * duty,
      ratedW: row.rated_w,
      e24Ohm: wanted === null ? null : (seriesResistor(source.volts, forwardV, wanted)?.ohm ?? null),
    });
  }
  return rated;
}

/** What each board's lamps draw together when all are on. */
export function rateLampBoards(
  feeds: readonly Feed[],
  lamps: ReadonlyMap<string, LampRating>,
): ReadonlyMap<string, LampBoardRating> {
  const boards = new Map<string, LampBoardRating>();
  for (const { load, drivers } of feeds) {
    const lamp = lamps.get(load.element.id);
    const itemId = drivers[0]?.element.itemId;
    if (lamp === undefined || itemId === undefined) continue;
    const before = boards.get(itemId);
    boards.set(itemId, {
      itemId,
      lamps: (before?.lamps ?? 0) + 1,
      amps: (before?.amps ?? 0) + lamp.amps,
    });
  }
  return boards;
}
