import { type CellTables, rawBookOf, readRawBook } from "@pinwright/book";
import { type AnswerOf, type InstrumentTrouble, measureFor, SHOP_ID, type Wanted } from "@pinwright/contract";
import { formatScanFile } from "@pinwright/engine";
import type { Handlers } from "../http/bind.ts";
import { Refused } from "../http/problem.ts";
import {
  type Instrument,
  type InstrumentDesk,
  InstrumentError,
  instrumentsOf,
} from "../instruments/index.ts";
import type { ServerParts } from "./parts.ts";

type Names = "instruments" | "readInstrument" | "scanTester";

const TEST_TABLES = ["tests", "test_steps"];

/** What a test of a book measures, or a step of it. */
function wantedBy(tables: CellTables, test: string, step: number | undefined): Wanted {
  const own = new Map([...tables].filter(([name]) => TEST_TABLES.includes(name)));
  const { book } = readRawBook(rawBookOf(own).raw);
  const row =
    step === undefined
      ? book.tables.tests.find(({ id }) => id === test)
      : book.tables.test_steps.find((one) => one.test === test && one.no === step);
  if (row === undefined) throw new Refused("not-found", `There is no test ${test} in this book.`);
  return row;
}

const trouble = (of: InstrumentTrouble, says: string) => ({
  ...{ outcome: "trouble" as const, trouble: of, says: says.slice(0, 200) },
});

/** Instruments are asked here and nowhere else: what is asked, and where, stands in the shop's tables. */
export function instrumentHandlers(
  { shelf, deps }: ServerParts,
  desk: InstrumentDesk,
): Pick<Handlers, Names> {
  const all = async (): Promise<readonly Instrument[]> => instrumentsOf((await shelf.now(SHOP_ID)).tables);
  const find = async (id: string): Promise<Instrument> => {
    const found = (await all()).find((one) => one.id === id);
    if (found === undefined) throw new Refused("not-found", `The shop has no instrument ${id}.`);
    return found;
  };
  const isOverdue = ({ calibratedUntil }: Instrument): boolean =>
    calibratedUntil !== "" && calibratedUntil < new Date(deps.now()).toISOString().slice(0, 10);
  return {
    instruments: async () =>
      (await all()).map(({ address: _address, timeoutMs: _timeoutMs, measures, ...info }) => ({
        ...info,
        measures: measures.map(({ unit, min, max }) => ({ unit, min, max })),
      })),
    readInstrument: async ({ parts: { id }, body: { book, test, step } }) => {
      const instrument = await find(id);
      const measure = measureFor(instrument.measures, wantedBy((await shelf.now(book)).tables, test, step));
      if (measure === undefined) return trouble("not-measured", "");
      return orTrouble<"readInstrument">(async () => {
        const number = await desk.read(instrument, measure.query);
        if (number.kind !== "value") return trouble(number.kind, "");
        return {
          outcome: "read",
          value: scaled(number.value, measure.factor),
          unit: measure.unit,
          raw: number.value,
          isOverdue: isOverdue(instrument),
        };
      });
    },
    scanTester: async ({ parts: { id }, body: { unit = "" } }) => {
      const instrument = await find(id);
      return orTrouble<"scanTester">(async () => ({
        outcome: "scanned",
        scan: formatScanFile({ ...(await desk.scan(instrument)), unit }),
        isOverdue: isOverdue(instrument),
      }));
    },
  };
}

/** Digits of a reading that a factor keeps: a float of 64 bits has 15, and an instrument never gives more than 10. */
const DIGITS = 12;
const scaled = (value: number, factor: number): number => Number((value * factor).toPrecision(DIGITS));

/** What went wrong with an instrument is an answer: whoever measures reads it at the bench and types the value instead. */
async function orTrouble<N extends "readInstrument" | "scanTester">(
  ask: () => Promise<AnswerOf<N>>,
): Promise<AnswerOf<N> | ReturnType<typeof trouble>> {
  try {
    return await ask();
  } catch (error) {
    if (error instanceof InstrumentError) return trouble(error.trouble, error.says);
    // A query that is no question: the shop's table calls it a fault.
    if (error instanceof RangeError) return trouble("not-measured", error.message);
    throw error;
  }
}
