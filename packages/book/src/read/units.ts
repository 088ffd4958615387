/** A unit that a cell may name although its column already has one. */
interface Unit {
  readonly dimension: string;
  /** Size in the dimension's base unit. */
  readonly factor: number;
}

const unit = (dimension: string, factor: number): Unit => ({ dimension, factor });

/** Inch, foot, mil: international yard and pound agreement of 1959, 1 in = 25.4 mm exactly. */
const UNITS: Readonly<Record<string, Unit>> = {
  mm: unit("length", 1),
  cm: unit("length", 10),
  dm: unit("length", 100),
  m: unit("length", 1000),
  um: unit("length", 0.001),
  µm: unit("length", 0.001),
  in: unit("length", 25.4),
  inch: unit("length", 25.4),
  inches: unit("length", 25.4),
  '"': unit("length", 25.4),
  "″": unit("length", 25.4),
  ft: unit("length", 304.8),
  mil: unit("length", 0.0254),
  thou: unit("length", 0.0254),
  mm2: unit("area", 1),
  "mm²": unit("area", 1),
  cm2: unit("area", 100),
  us: unit("time", 0.001),
  µs: unit("time", 0.001),
  ms: unit("time", 1),
  s: unit("time", 1000),
  sec: unit("time", 1000),
  min: unit("time", 60_000),
  h: unit("time", 3_600_000),
  day: unit("time", 86_400_000),
  days: unit("time", 86_400_000),
  deg: unit("angle", 1),
  "°": unit("angle", 1),
  rad: unit("angle", 180 / Math.PI),
  ma: unit("current", 0.001),
  a: unit("current", 1),
  amp: unit("current", 1),
  mv: unit("voltage", 0.001),
  v: unit("voltage", 1),
  volt: unit("voltage", 1),
  volts: unit("voltage", 1),
  kv: unit("voltage", 1000),
  mohm: unit("resistance", 0.001),
  mω: unit("resistance", 0.001),
  ohm: unit("resistance", 1),
  ω: unit("resistance", 1),
  kohm: unit("resistance", 1000),
  kω: unit("resistance", 1000),
  uh: unit("inductance", 0.001),
  mh: unit("inductance", 1),
  nf: unit("capacitance", 0.001),
  uf: unit("capacitance", 1),
  µf: unit("capacitance", 1),
  g: unit("mass", 1),
  kg: unit("mass", 1000),
  lb: unit("mass", 453.59237),
  nm: unit("torque", 1),
  ncm: unit("torque", 0.01),
  n: unit("force", 1),
  newton: unit("force", 1),
  c: unit("temperature", 1),
  "°c": unit("temperature", 1),
  pct: unit("share", 1),
  "%": unit("share", 1),
  j: unit("energy", 1),
  w: unit("power", 1),
};

/** Units that end a column's name, as the documentation spells them. */
const SPELLED: Readonly<Record<string, string>> = {
  mm: "mm",
  m: "m",
  mm2: "mm²",
  ms: "ms",
  min: "minutes",
  minutes: "minutes",
  days: "days",
  hours: "hours",
  deg: "degrees",
  a: "A",
  amp: "A",
  amps: "A",
  v: "V",
  volt: "V",
  volts: "V",
  mohm: "mΩ",
  ohm: "Ω",
  mh: "mH",
  uf: "µF",
  g: "g",
  nm: "N·m",
  newton: "N",
  c: "°C",
  pct: "%",
  j: "J",
  a2s: "A²s",
  w: "W",
};

const lastWord = (column: string): string => column.slice(column.lastIndexOf("_") + 1);

/** Unit that a column's name ends with, spelled for a reader, or null. */
export const columnUnit = (column: string): string | null => SPELLED[lastWord(column)] ?? null;

/** `x_mm` and `mm` give `x`: the name without its unit, or null when the name has no unit. */
export function columnStem(column: string): string | null {
  const at = column.lastIndexOf("_");
  if (at <= 0) return null;
  const word = column.slice(at + 1).toLowerCase();
  return Object.hasOwn(UNITS, word) || Object.hasOwn(SPELLED, word) ? column.slice(0, at) : null;
}

const SAME_AS: Readonly<Record<string, string>> = { minutes: "min", hours: "h", amps: "a", c: "c" };

/**
 * A value with its unit as written in a cell, in the unit of the column; null when the unit is not known or is
 * not of the column's dimension. Rounded to twelve digits so that `1 in` is `25.4`.
 */
export function convertToColumn(value: number, written: string, column: string): number | null {
  const word = lastWord(column);
  const target = UNITS[SAME_AS[word] ?? word];
  const source = UNITS[written.toLowerCase()];
  if (target === undefined || source === undefined || target.dimension !== source.dimension) return null;
  return Number(((value * source.factor) / target.factor).toPrecision(12));
}

/** Whether a word is a unit that a cell or a heading may name. */
export const isUnit = (word: string): boolean => Object.hasOwn(UNITS, word.toLowerCase());

/** How a value in some unit becomes one in the unit of a column. */
export interface Conversion {
  /** The units are the same. */
  readonly isSame: boolean;
  /** The factor is a decimal with an end, so that nothing is rounded: inch to mm, not radian to degree. */
  readonly isExact: boolean;
}

/** The conversion from a unit to that of a column, or null when there is none. */
export function conversionTo(written: string, column: string): Conversion | null {
  if (!isUnit(written)) return null;
  const word = lastWord(column);
  const target = UNITS[SAME_AS[word] ?? word];
  const source = UNITS[written.toLowerCase()];
  const factor = convertToColumn(1, written, column);
  if (factor === null || source === undefined || target === undefined) return null;
  const error = Math.abs(factor - source.factor / target.factor);
  return { isSame: factor === 1, isExact: error <= factor * 1e-15 };
}
