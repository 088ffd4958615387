import type { TesterScan } from "@pinwright/engine";
import type { Instrument } from "./configured.ts";
import { ContinuityTester } from "./continuity-tester.ts";
import type { ConversationOptions } from "./conversation.ts";
import { InstrumentError } from "./instrument-error.ts";
import { ScpiInstrument } from "./scpi-instrument.ts";
import type { ScpiNumber } from "./scpi-number.ts";

/** Whoever comes when so many wait for one instrument is told that it is busy. */
const MOST_WAITING = 8;
/** A connection that nobody used for so long is given up: many instruments take only one at a time, ms. */
const IDLE_MS = 30_000;

/** A way to an instrument that is open or can be. */
interface Way {
  readonly instrument: Instrument;
  readonly device: ScpiInstrument | ContinuityTester;
  waiting: number;
  idle: NodeJS.Timeout | null;
}

/** What a tester said of a harness. */
export interface NamedScan {
  readonly tester: string;
  readonly scan: TesterScan;
}

/**
 * The instruments of the shop at work. Each is asked one thing at a time, whoever asks; different ones at once. When the shop
 * changes how one is reached, the old way is closed and the new one opened.
 */
export class InstrumentDesk {
  readonly #ways = new Map<string, Way>();

  /**
   * Puts one question whose answer is a number.
   * @throws InstrumentError
   */
  read(instrument: Instrument, query: string): Promise<ScpiNumber> {
    return this.#use(instrument, async (device) => {
      if (device instanceof ScpiInstrument) return device.measure(query);
      throw new InstrumentError("not-measured", instrument.id, "");
    });
  }

  /**
   * Has every point tried against all others.
   * @throws InstrumentError
   */
  scan(instrument: Instrument): Promise<NamedScan> {
    return this.#use(instrument, async (device) => {
      if (!(device instanceof ContinuityTester)) throw new InstrumentError("not-measured", instrument.id, "");
      return { tester: await device.identify(), scan: await device.scan() };
    });
  }

  /** Closes every way at once, whoever waits. */
  close(): void {
    for (const { device, idle } of this.#ways.values()) {
      if (idle !== null) clearTimeout(idle);
      device.hangUp();
    }
    this.#ways.clear();
  }

  async #use<T>(instrument: Instrument, task: (device: Way["device"]) => Promise<T>): Promise<T> {
    const way = this.#wayTo(instrument);
    if (way.waiting >= MOST_WAITING) throw new InstrumentError("busy", instrument.id, "");
    if (way.idle !== null) clearTimeout(way.idle);
    way.waiting++;
    try {
      return await task(way.device);
    } finally {
      way.waiting--;
      if (way.waiting === 0 && this.#ways.get(instrument.id) === way)
        way.idle = setTimeout(() => void this.#drop(instrument.id), IDLE_MS).unref();
    }
  }

  #wayTo(instrument: Instrument): Way {
    const known = this.#ways.get(instrument.id);
    if (known !== undefined && isSameWay(known.instrument, instrument)) return known;
    if (known !== undefined) void this.#drop(instrument.id);
    const { address, timeoutMs, kind } = instrument;
    if (address === null) throw new InstrumentError("not-reached", instrument.id, "no address in the shop");
    const options: ConversationOptions = { address, timeoutMs };
    const device = kind === "scpi" ? new ScpiInstrument(options) : new ContinuityTester(options);
    const way: Way = { instrument, device, waiting: 0, idle: null };
    this.#ways.set(instrument.id, way);
    return way;
  }

  async #drop(id: string): Promise<void> {
    const way = this.#ways.get(id);
    if (way === undefined) return;
    this.#ways.delete(id);
    if (way.idle !== null) clearTimeout(way.idle);
    await way.device.close();
  }
}

const isSameWay = (a: Instrument, b: Instrument): boolean =>
  a.kind === b.kind && a.timeoutMs === b.timeoutMs && JSON.stringify(a.address) === JSON.stringify(b.address);
