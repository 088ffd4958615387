import type { Fact, UnitSummary } from "@pinwright/contract";

/** Name of a transport: its day and a few signs, short enough to be read out over the telephone. */
export function transportId(now: Date, random: (bytes: number) => Uint8Array): string {
  const day = now.toISOString().slice(2, 10).replaceAll("-", "");
  const signs = Array.from(random(4), (byte) => (byte % 36).toString(36)).join("");
  return `tr-${day}-${signs}`;
}

/** Units of a type that stand at a site by themselves and could go on a transport. */
export interface Stack {
  readonly what: UnitSummary["what"];
  readonly type: string;
  readonly unitIds: readonly string[];
}

/** What could go on a transport from a site, kind by kind. A unit of which nobody said where it is is here too. */
export function stacksAt(units: readonly UnitSummary[], site: string): readonly Stack[] {
  const stacks = new Map<string, { what: UnitSummary["what"]; type: string; unitIds: string[] }>();
  for (const { unit, what, type, site: at, within, onTheWay } of units) {
    if (within !== null || onTheWay !== null || (at !== site && at !== "")) continue;
    const key = `${what} ${type}`;
    const stack = stacks.get(key) ?? { what, type, unitIds: [] };
    stack.unitIds.push(unit);
    stacks.set(key, stack);
  }
  return [...stacks.values()];
}

/** A transport that is on its way to a site, or that was counted in here in part. */
export interface Coming {
  readonly transport: string;
  readonly unitIds: readonly string[];
}

/** Transports on their way to a site, in the order of their names, as the server last told. */
export function comingTo(units: readonly UnitSummary[], site: string): readonly Coming[] {
  const coming = new Map<string, string[]>();
  for (const { unit, onTheWay } of units)
    if (onTheWay !== null && (site === "" || onTheWay.to === site))
      coming.set(onTheWay.transport, [...(coming.get(onTheWay.transport) ?? []), unit]);
  return [...coming]
    .map(([transport, unitIds]) => ({ transport, unitIds }))
    .sort((a, b) => (a.transport < b.transport ? -1 : 1));
}

/** What was counted in from a transport on this device. */
export const countedIn = (own: readonly Fact[], transport: string): ReadonlySet<string> =>
  new Set(
    own.flatMap(({ body }) => (body.kind === "arrived" && body.transport === transport ? [body.unit] : [])),
  );

/**
 * A transport as it is counted in. What this device has counted is no longer on its way at the server: it is put back to
 * what was announced, so that the count goes up and never starts anew.
 * @param announced units that are on the way still
 * @param expectedBefore units that were announced when the count began
 */
export function count(
  announced: readonly string[],
  expectedBefore: readonly string[],
  counted: ReadonlySet<string>,
): {
  readonly missing: readonly string[];
  readonly there: readonly string[];
  readonly extra: readonly string[];
} {
  const expected = new Set([...expectedBefore, ...announced]);
  return {
    missing: [...expected].filter((unit) => !counted.has(unit)),
    there: [...counted].filter((unit) => expected.has(unit)),
    extra: [...counted].filter((unit) => !expected.has(unit)),
  };
}
