import type { Coming } from "./load.ts";

const KEY = "pinwright.floor.counting";
const MOST = 12;

function isComing(one: unknown): one is Coming {
  if (typeof one !== "object" || one === null) return false;
  const { transport, unitIds }: { transport?: unknown; unitIds?: unknown } = one;
  return (
    typeof transport === "string" && Array.isArray(unitIds) && unitIds.every((id) => typeof id === "string")
  );
}

/** Transports that were begun to be counted in on this tablet, with what was announced of them; the last first. */
export function keptBegun(): readonly Coming[] {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? "null");
    return Array.isArray(found) ? found.filter(isComing) : [];
  } catch {
    return [];
  }
}

export const keepBegun = (coming: Coming): void =>
  localStorage.setItem(
    KEY,
    JSON.stringify(
      [coming, ...keptBegun().filter(({ transport }) => transport !== coming.transport)].slice(0, MOST),
    ),
  );
