import {
  choice,
  id,
  int,
  intOr,
  labels,
  maybeInt,
  maybeNum,
  maybeText,
  numOr,
  ref,
  text,
} from "../column.ts";
import { shopTable, table } from "../table.ts";

export const test_steps = table(
  "test_steps",
  "boards",
  "A step of a test that is a sequence, in the order in which they are done.",
  ["test", "no"],
  {
    test: ref("tests", "Test, of the kind `sequence`."),
    no: int("Order.", { min: 1, max: 1000 }),
    ...labels(),
    unit: maybeText("Unit of the reading; blank: it is only looked at."),
    nominal: maybeNum("Value expected.", { min: -1e9, max: 1e9 }),
    min: maybeNum("Lower limit, from the design.", { min: -1e9, max: 1e9 }),
    max: maybeNum("Upper limit, from the design.", { min: -1e9, max: 1e9 }),
  },
);

export const instruments = shopTable(
  "instruments",
  "A measuring instrument or continuity tester that the server can ask.",
  ["id"],
  {
    id: id("Instrument; each reading names it."),
    ...labels(),
    kind: choice(
      ["scpi", "continuity"],
      "What it speaks: SCPI, or the line protocol of `docs/tester-protocol.md`.",
    ),
    station: maybeText("Station of a machine's book at which it stands; blank: it is used at every station."),
    host: maybeText("Name or address on the network; blank: it hangs on a serial port."),
    port: maybeInt("TCP port.", { min: 1, max: 65535 }),
    device: maybeText("Device file of the serial port, on the computer that the server runs on."),
    baud: maybeInt("Bits per second of the serial port; blank: as the port is set.", { min: 50, max: 4e6 }),
    wait_s: intOr(5, "Longest wait for an answer.", { min: 1, max: 120 }),
    calibrated_until: maybeText("Last day of its calibration, as year-month-day; blank: it needs none."),
  },
);

export const instrument_measures = shopTable(
  "instrument_measures",
  "What an instrument measures, and the question that makes it.",
  ["instrument", "measure"],
  {
    instrument: ref("instruments", "Instrument that speaks SCPI."),
    measure: text("Name of it: `volts-dc`."),
    unit: text("Unit of its readings, written as in the tests: `V`, `mA`, `Ω`."),
    query: text("One question in SCPI, such as `MEAS:VOLT:DC?`."),
    factor: numOr(1, "What the answer is multiplied by, so that it is in this unit.", {
      min: 1e-12,
      max: 1e12,
    }),
    min: maybeNum("Least value that it may be used for, in this unit.", { min: -1e12, max: 1e12 }),
    max: maybeNum("Greatest value that it may be used for, in this unit.", { min: -1e12, max: 1e12 }),
  },
);
