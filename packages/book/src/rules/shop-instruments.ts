import { plainDecimal } from "../read/plain-decimal.ts";
import { type ShopRule, shopRule } from "./shop-rule.ts";

/**
 * One question to an instrument: a header with its question mark, parameters behind it. A semicolon would begin a second
 * command, and a text without a question mark would set something instead of asking (IEEE 488.2, 7.6.1).
 */
const QUESTION = /^[*:A-Za-z][A-Za-z0-9:*_]*\?(?: [ -:<-~]{1,200})?$/;

const reached = shopRule(
  "instruments",
  "An instrument has a host and a port, or else a device file.",
  ["host", "port", "device"],
  () =>
    ({ host, port, device }) => {
      const fault = (column: string, value: string, expected: string) => ({
        column,
        value,
        expected,
        nearest: null,
      });
      if (host !== "" && device !== "") return fault("device", device, "blank, because it has a host");
      if (host !== "" && port === null) return fault("port", "", "the TCP port at the host");
      if (host === "" && port !== null)
        return fault("port", String(port), "blank, because it has no host; or give the host");
      return host === "" && device === "" ? fault("host", "", "a host, or a device file in `device`") : null;
    },
);

const questions = shopRule(
  "instrument_measures",
  "A query is one question, with a question mark and no semicolon.",
  ["query"],
  () =>
    ({ query }) =>
      QUESTION.test(query)
        ? null
        : {
            column: "query",
            value: query,
            expected: "one question such as `MEAS:VOLT:DC?`, without a semicolon",
            nearest: null,
          },
);

const range = shopRule(
  "instrument_measures",
  "The least value is at most the greatest.",
  ["min", "max"],
  () =>
    ({ min, max }) =>
      min === null || max === null || min <= max
        ? null
        : {
            column: "max",
            value: plainDecimal(max),
            expected: `${plainDecimal(min)} or more, the least value`,
            nearest: null,
          },
);

const scpiOnly = shopRule(
  "instrument_measures",
  "Only an instrument that speaks SCPI measures.",
  ["instrument"],
  ({ instruments }) => {
    const kinds = new Map(instruments.map(({ id, kind }) => [id, kind]));
    return ({ instrument }) =>
      kinds.get(instrument) === "continuity"
        ? {
            column: "instrument",
            value: instrument,
            expected: "an instrument of the kind `scpi`; this one is a continuity tester",
            nearest: null,
          }
        : null;
  },
);

/** Rules of instruments and what they measure. */
export const SHOP_INSTRUMENTS: readonly ShopRule[] = [reached, questions, range, scpiOnly];
