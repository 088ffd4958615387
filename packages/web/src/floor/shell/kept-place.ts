/** Where this tablet stands: machine, station and workshop; blank station: all; blank workshop: nobody said. */
export interface KeptPlace {
  readonly book: string;
  readonly station: string;
  readonly site: string;
}

const KEY = "pinwright.floor.place";
const NAMES = "pinwright.floor.names";
const MOST_NAMES = 12;

function kept(key: string): unknown {
  try {
    return JSON.parse(localStorage.getItem(key) ?? "null");
  } catch {
    return null;
  }
}

/** The place that was chosen on this tablet; null before that. */
export function keptPlace(): KeptPlace | null {
  const found = kept(KEY);
  if (typeof found !== "object" || found === null) return null;
  const { book, station, site }: { book?: unknown; station?: unknown; site?: unknown } = found;
  return typeof book === "string" && typeof station === "string"
    ? { book, station, site: typeof site === "string" ? site : "" }
    : null;
}

export const keepPlace = (place: KeptPlace): void => localStorage.setItem(KEY, JSON.stringify(place));

/** Names of those who worked at this tablet, last first. */
export function keptNames(): readonly string[] {
  const found = kept(NAMES);
  return Array.isArray(found) ? found.filter((name) => typeof name === "string") : [];
}

export const keepName = (name: string): void =>
  localStorage.setItem(
    NAMES,
    JSON.stringify([name, ...keptNames().filter((one) => one !== name)].slice(0, MOST_NAMES)),
  );
