const KEY = "pinwright.floor.last";
const MOST = 6;

/** Units that were worked on last at this tablet, last first. */
export function keptLast(): readonly string[] {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? "null");
    return Array.isArray(found) ? found.filter((id) => typeof id === "string") : [];
  } catch {
    return [];
  }
}

export const keepLast = (unitIds: readonly string[]): void =>
  localStorage.setItem(
    KEY,
    JSON.stringify([...unitIds, ...keptLast().filter((id) => !unitIds.includes(id))].slice(0, MOST)),
  );
