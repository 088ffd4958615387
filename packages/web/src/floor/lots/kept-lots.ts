const LAST = "pinwright.floor.last-lots";
const draftKey = (list: string): string => `pinwright.floor.lots.${list}`;
const MOST_LAST = 500;

/** Lots by what they are of: a part, or a part in a colour. */
export type Lots = ReadonlyMap<string, string>;

function read(storage: Storage, key: string): Lots {
  try {
    const found: unknown = JSON.parse(storage.getItem(key) ?? "{}");
    if (typeof found !== "object" || found === null) return new Map();
    return new Map(
      Object.entries(found).flatMap(([of, lot]) => (typeof lot === "string" ? [[of, lot] as const] : [])),
    );
  } catch {
    return new Map();
  }
}

const write = (storage: Storage, key: string, lots: Lots): void =>
  storage.setItem(key, JSON.stringify(Object.fromEntries(lots)));

/** Lots that were used last at this tablet: the next batch most likely takes from the same bag. */
export const lastLots = (): Lots => read(localStorage, LAST);

export function keepLast(of: string, lot: string): void {
  const lots = [...lastLots()].filter(([known]) => known !== of);
  write(localStorage, LAST, new Map([...lots, [of, lot] as const].slice(-MOST_LAST)));
}

/** Lots that were said for a list and are recorded when it is done. */
export const draftLots = (list: string): Lots => read(sessionStorage, draftKey(list));
export const keepDraft = (list: string, lots: Lots): void => write(sessionStorage, draftKey(list), lots);
export const forgetDraft = (list: string): void => sessionStorage.removeItem(draftKey(list));
