import { compareText } from "@pinwright/kernel";
import type { ChangedSheet, Comparison, HarnessEffect, ToolEffect } from "./change.ts";
import type { MachineFacts, SheetFact } from "./facts.ts";
import { groupedBy } from "./grouped.ts";
import { subjectOf } from "./subjects.ts";
import { changedWires, type WirePair } from "./wires.ts";

/** Sheets that say something else, in the order of the revision after, those that are gone last. */
export function changedSheets(before: MachineFacts, after: MachineFacts): readonly ChangedSheet[] {
  const old = new Map(before.sheets.map((sheet) => [sheet.id, sheet]));
  const now = new Set(after.sheets.map(({ id }) => id));
  const about = ({ id, kind, of, title, number }: SheetFact) => ({ id, kind, of, title, number });
  return [
    ...after.sheets.flatMap((sheet): ChangedSheet[] => {
      const was = old.get(sheet.id);
      if (was?.bodyHash === sheet.bodyHash) return [];
      const pages = sheet.pageHashes.flatMap((hash, i) => (was?.pageHashes[i] === hash ? [] : [i + 1]));
      return [{ ...about(sheet), what: was === undefined ? "new" : "changed", pages }];
    }),
    ...before.sheets.flatMap((sheet): ChangedSheet[] =>
      now.has(sheet.id) ? [] : [{ ...about(sheet), what: "gone", pages: [] }],
    ),
  ];
}

/** Share of its wires beyond which a harness is not reworked. Common practice, no source. */
const SCRAP_SHARE = 0.5;

/** What becomes of harnesses that were built before, in the order of their numbers. */
export function harnessEffects(before: MachineFacts, after: MachineFacts): readonly HarnessEffect[] {
  const byHarness = groupedBy(
    changedWires(before, after).filter(
      ({ from, to }) => from === null || to === null || isOther({ from, to }),
    ),
    ({ from, to }) => (from ?? to)?.harness ?? "",
  );
  return [...byHarness]
    .map(([harness, pairs]) => effectOf(before, after, harness, pairs))
    .sort((p, q) => Number(p.number) - Number(q.number) || compareText(p.harness, q.harness));
}

const lengthBy = ({ from, to }: Pick<WirePair, "from" | "to">): number =>
  from === null || to === null ? 0 : to.finishedMm - from.finishedMm;

/** More than its length is another. */
const isRemade = ({ from, to }: Pick<WirePair, "from" | "to">): boolean =>
  from !== null &&
  to !== null &&
  (from.colour !== to.colour ||
    from.type !== to.type ||
    from.a.point !== to.a.point ||
    from.b.point !== to.b.point ||
    from.a.part !== to.a.part ||
    from.b.part !== to.b.part);

const isOther = (pair: Pick<WirePair, "from" | "to">): boolean => isRemade(pair) || lengthBy(pair) !== 0;

function effectOf(
  before: MachineFacts,
  after: MachineFacts,
  harness: string,
  pairs: readonly WirePair[],
): HarnessEffect {
  const { labels, number } = subjectOf(before, after, { table: "harnesses", id: harness });
  const count = (is: (pair: WirePair) => boolean): number => pairs.filter(is).length;
  const wires = {
    longer: count((pair) => lengthBy(pair) > 0),
    shorter: count((pair) => lengthBy(pair) < 0),
    other: count(isRemade),
    added: count(({ from }) => from === null),
    gone: count(({ to }) => to === null),
  };
  const all = Object.values(before.wires).filter((wire) => wire.harness === harness).length;
  const touched = count(
    (pair) => lengthBy(pair) > 0 || isRemade(pair) || pair.from === null || pair.to === null,
  );
  const isGone = after.rows.harnesses?.[harness] === undefined;
  const does = isGone
    ? "gone"
    : all > 0 && touched / all > SCRAP_SHARE
      ? "scrap"
      : wires.other + wires.added + wires.gone > 0
        ? "rework"
        : wires.longer > 0
          ? "longer-tails"
          : "fits";
  return { harness, number, labels, does, wires, mostMm: Math.max(0, ...pairs.map(lengthBy)) };
}

/** Sheets that something is made from which stands in the shop. */
const JIGS: ReadonlySet<string> = new Set(["pinboard", "pilot-template", "screw-tray", "panel-drawing"]);

/** Jigs that are no longer what their drawing says, and tools of contacts that become needed or needless. */
export function toolEffects(
  before: MachineFacts,
  after: MachineFacts,
  sheets: readonly ChangedSheet[],
): readonly ToolEffect[] {
  const jigs = new Map<string, ToolEffect>();
  for (const { kind, of, id, title, what } of sheets) {
    if (!JIGS.has(kind)) continue;
    // A pinboard is one board however many sheets show it.
    const key = kind === "pinboard" ? of : id;
    if (!jigs.has(`${kind} ${key}`)) jigs.set(`${kind} ${key}`, { kind, id: key, title, what });
  }
  const [old, now] = [crimpTools(before), crimpTools(after)];
  const tools = [...new Set([...old, ...now])]
    .sort(compareText)
    .flatMap((tool): ToolEffect[] =>
      old.has(tool) === now.has(tool)
        ? []
        : [{ kind: "crimp-tool", id: tool, title: tool, what: now.has(tool) ? "new" : "gone" }],
    );
  return [...jigs.values(), ...tools];
}

/** Tools of the connector families that wires end in. */
function crimpTools({ rows, wires }: MachineFacts): ReadonlySet<string> {
  const parts = new Set(Object.values(wires).flatMap(({ a, b }) => [a.part, b.part]));
  return new Set(
    Object.values(rows.connector_families ?? {}).flatMap(
      ({ tool = "", contact_part = "", mate_contact_part = "" }) =>
        tool !== "" && (parts.has(contact_part) || parts.has(mate_contact_part)) ? [tool] : [],
    ),
  );
}

const TYPE_ROWS: Readonly<Record<string, readonly string[]>> = {
  board: ["board_types", "connectors", "pins", "placements", "elements", "windings"],
  mechanism: ["mechanism_types", "mechanism_devices", "mechanism_fasteners", "mechanism_steps", "elements"],
};

/** Types of boards and mechanisms that are made otherwise than before. */
export function changedTypes(groups: Comparison["groups"]): Comparison["types"] {
  return groups.flatMap(({ subject, changes }): Comparison["types"] => {
    const what =
      subject.table === "board_types" ? "board" : subject.table === "mechanism_types" ? "mechanism" : null;
    if (what === null) return [];
    const isMade = changes.some(({ what: kind, values }) => {
      if (kind === "named" || kind === "symbol") return false;
      const table = String(values.table ?? `${what}_types`);
      return TYPE_ROWS[what]?.includes(table) === true;
    });
    return isMade ? [{ what, type: subject.id }] : [];
  });
}

/** A unit as the records have it. */
export interface StandingUnit {
  readonly unit: string;
  readonly what: "machine" | "board" | "harness" | "mechanism";
  readonly type: string;
  readonly revision: string;
  /** Unit that it is fitted in; blank: none. */
  readonly within: string;
  readonly isReleased: boolean;
}

/** Units that a change concerns. */
export interface Affected {
  readonly what: StandingUnit["what"];
  readonly type: string;
  /** In stock or in work, in no machine: these can be reworked or used up. */
  readonly loose: readonly string[];
  /** In a machine, or machines themselves: these keep the old. */
  readonly keep: readonly string[];
}

/**
 * Units of before that a comparison concerns: machines, harnesses with other wires, boards and mechanisms that are made
 * otherwise. Units of the revision after are what it says.
 */
export function effectsOn(
  { harnesses, types, groups }: Comparison,
  after: string | null,
  units: readonly StandingUnit[],
): readonly Affected[] {
  const touched = new Set([
    ...harnesses.map(({ harness }) => `harness ${harness}`),
    ...types.map(({ what, type }) => `${what} ${type}`),
  ]);
  const found = new Map<string, { loose: string[]; keep: string[] }>();
  for (const { unit, what, type, revision, within } of units) {
    const isConcerned = what === "machine" ? groups.length > 0 : touched.has(`${what} ${type}`);
    if (!isConcerned || revision === after) continue;
    const key = `${what} ${type}`;
    const lists = found.get(key) ?? { loose: [], keep: [] };
    found.set(key, lists);
    (what === "machine" || within !== "" ? lists.keep : lists.loose).push(unit);
  }
  return [...found]
    .map(([key, { loose, keep }]) => {
      const [what = "machine", type = ""] = key.split(" ");
      return {
        what: what as StandingUnit["what"],
        type,
        loose: loose.sort(compareText),
        keep: keep.sort(compareText),
      };
    })
    .sort((p, q) => compareText(p.what, q.what) || compareText(p.type, q.type));
}
