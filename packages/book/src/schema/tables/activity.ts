import {
  choice,
  id,
  int,
  item,
  items,
  labels,
  maybeNum,
  maybePoint,
  maybeRef,
  maybeText,
  num,
  numOr,
  point,
} from "../column.ts";
import { table } from "../table.ts";

export const activity = table(
  "activity",
  "activity",
  "How a coil, motor, lamp or board is used in play.",
  ["item"],
  {
    item: item("Item."),
    pulse_ms: maybeNum("Length of a pulse.", { min: 0, max: 1e6 }),
    repeat_ms: maybeNum("Shortest time from pulse to pulse.", { min: 0, max: 1e7 }),
    hold_ms: maybeNum("Longest hold after the pulse; blank: none.", { min: 0, max: 1e8 }),
    hold_duty_pct: maybeNum("Duty while held.", { min: 0, max: 100 }),
    duty_pct: maybeNum("Duty over a minute of hard play.", { min: 0, max: 100 }),
    timeout_ms: maybeNum("Time after which the driver board switches it off by itself; blank: never.", {
      min: 0,
      max: 1e8,
    }),
  },
);

export const groups = table("groups", "activity", "Items of which only so many can be on together.", ["id"], {
  id: id("Group."),
  ...labels(),
  most_on: int("Most that can be on together.", { min: 0, max: 10000 }),
  items: items("Members."),
});

export const fuses = table("fuses", "activity", "A fuse in the machine.", ["id"], {
  id: id("Fuse."),
  ...labels(),
  from: point("Point on its supply side."),
  to: point("Point on its load side."),
  rated_a: num("Rated current.", { min: 0.01, max: 100 }),
  speed: choice(["ff", "f", "m", "t", "tt"], "Characteristic of IEC 60127: very quick to long time-lag."),
  melting_a2s: maybeNum("Nominal melting I²t.", { min: 0, max: 1e7 }),
  breaking_a: maybeNum("Breaking capacity.", { min: 1, max: 100000 }),
  rated_v: maybeNum("Rated voltage.", { min: 1, max: 10000 }),
  size: maybeText("Size, for the holder and the spare."),
  part: maybeRef("parts", "Part."),
});

export const supplies = table(
  "supplies",
  "activity",
  "A source of power: mains, a supply unit's output, a regulator.",
  ["id"],
  {
    id: id("Supply."),
    ...labels(),
    volts: num("Nominal voltage.", { min: 0, max: 1000 }),
    tolerance_pct: numOr(5, "Tolerance of the voltage.", { min: 0, max: 50 }),
    positive: maybePoint("Positive point, or line."),
    negative: maybePoint("Return point, or neutral."),
    rated_a: num("Continuous current.", { min: 0, max: 1000 }),
    limit_mode: choice(["none", "constant", "fold-back", "hiccup", "latch"], "What it does on overload."),
    limit_a: maybeNum("Current at which it limits.", { min: 0, max: 10000 }),
    short_a: maybeNum(
      "Current into a short circuit, of a supply that folds back; blank: not known, taken as none.",
      {
        min: 0,
        max: 10000,
      },
    ),
    burst_ms: maybeNum(
      "How long a supply that hiccups or latches gives its limit current before it shuts off; blank: not known, taken as none.",
      { min: 0, max: 100000 },
    ),
    stored_j: maybeNum("Energy in its output capacitors.", { min: 0, max: 10000 }),
  },
);
