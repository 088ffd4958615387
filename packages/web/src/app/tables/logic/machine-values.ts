/** Keys of `machine.json` whose values are numbers. */
const NUMBERS: ReadonlySet<string> = new Set(["format", "slope_deg", "ball_mm"]);
/** Keys that must be there even when blank, so that the form says that they must be filled. */
const REQUIRED: ReadonlySet<string> = new Set(["format", "id", "label", "revision", "date"]);

/** A value of `machine.json` as a person reads it: a text without its quotes, anything else as it stands. */
export function textOfJson(json: string): string {
  try {
    const value: unknown = JSON.parse(json);
    return typeof value === "string" ? value : json;
  } catch {
    return json;
  }
}

/** What a person entered for a key as JSON; empty where the key is left out. */
export function jsonOf(key: string, text: string): string {
  const plain = text.trim();
  if (plain === "" && !REQUIRED.has(key)) return "";
  if (NUMBERS.has(key) && plain !== "" && Number.isFinite(Number(plain))) return String(Number(plain));
  return JSON.stringify(plain);
}
