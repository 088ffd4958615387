/** How the endings of column names are read: `x_mm` is a length in mm. */
const UNITS: Readonly<Record<string, string>> = {
  mm: "mm",
  mm2: "mm²",
  m: "m",
  deg: "°",
  a: "A",
  v: "V",
  ms: "ms",
  s: "s",
  pct: "%",
  mohm: "mΩ",
  a2s: "A²s",
  j: "J",
  w: "W",
  min: "min",
  nm: "N·m",
  g: "g",
  days: "d",
  hours: "h",
  minutes: "min",
  years: "a",
  c: "°C",
};

/** Columns whose whole name is a unit, or that have one without saying so. */
const WHOLE: Readonly<Record<string, string>> = {
  ohm: "Ω",
  mh: "mH",
  uf: "µF",
  volt: "V",
  volts: "V",
  amp: "A",
  amps: "A",
  minutes: "min",
  newton: "N",
  awg: "AWG",
  baud: "Bd",
  twists_per_m: "1/m",
  hours: "h",
  hours_day: "h/d",
  most_per_day: "1/d",
  fails_per_year: "1/a",
};

/** Columns of text that end like a unit but hold words. */
const WORDS: ReadonlySet<string> = new Set(["crimp_height_mm"]);

/** The unit of a column of numbers; empty when it has none. */
export function unitOf(column: string): string {
  const whole = WHOLE[column];
  if (whole !== undefined) return whole;
  if (WORDS.has(column)) return "mm";
  const end = column.lastIndexOf("_");
  return end < 0 ? "" : (UNITS[column.slice(end + 1)] ?? "");
}
