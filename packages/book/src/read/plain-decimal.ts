/** The shortest plain decimal (no exponent, no plus sign) that reads back as the same number; -0 is `0`. */
export function plainDecimal(value: number): string {
  const shortest = String(value === 0 ? 0 : value);
  const e = shortest.indexOf("e");
  if (e < 0) return shortest;
  const exponent = Number(shortest.slice(e + 1));
  const sign = shortest.startsWith("-") ? "-" : "";
  const [whole = "", fraction = ""] = shortest.slice(sign.length, e).split(".");
  const digits = whole + fraction;
  const point = whole.length + exponent;
  if (point <= 0) return `${sign}0.${"0".repeat(-point)}${digits}`;
  return `${sign}${digits.padEnd(point, "0")}`;
}
