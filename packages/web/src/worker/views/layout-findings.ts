import type { Finding, Machine, Place } from "@pinwright/engine";
import type { Model } from "../model.ts";
import { view } from "./view.ts";

/** A finding and where on the panel it is. */
export interface LayoutFinding {
  readonly finding: Finding;
  readonly side: "top" | "under";
  readonly xMm: number;
  readonly yMm: number;
}

type PlaceOf = (subject: string) => Place | null;

/** Where anything that a finding may be about is. */
function placesOf({ items, landings, points, book }: Machine): PlaceOf {
  const waypoints = new Map(book.tables.waypoints.map((row) => [row.id, row]));
  const waypoint = (id: string): Place | null => {
    const row = waypoints.get(id);
    if (row === undefined) return null;
    return {
      panelId: row.panel,
      side: row.side,
      xMm: row.x_mm,
      yMm: row.y_mm,
      rotationDeg: 0,
      zMm: 0,
    };
  };
  const ways = new Map([...book.tables.lanes, ...book.tables.crossings].map((row) => [row.id, row] as const));
  return (subject) => {
    const id = subject.startsWith("tail:") ? subject.slice(5) : subject;
    const thing = items.get(id) ?? landings.get(id) ?? points.get(id);
    if (thing !== undefined) return thing.place;
    const way = ways.get(id);
    if (way === undefined) return waypoint(id);
    const a = waypoint(way.from);
    const b = waypoint(way.to);
    if (a === null || b === null || a.panelId !== b.panelId || a.side !== b.side) return a;
    return { ...a, xMm: (a.xMm + b.xMm) / 2, yMm: (a.yMm + b.yMm) / 2 };
  };
}

/** Name under which a finding stays the same while its numbers change. */
export const findingKey = ({ rule, subjects }: Pick<Finding, "rule" | "subjects">): string =>
  `${rule} ${subjects.join(" ")}`;

const inputs = ({ line, book }: Model): readonly unknown[] => [
  line.findings,
  book.tables.waypoints,
  book.tables.lanes,
];

/** Findings whose first placed subject is on one panel; they follow what is dragged. */
export const layoutFindings = view<{ readonly panelId: string }, LayoutFinding>({
  uses: inputs,
  entries: ({ line }, { panelId }) => {
    const placeOf = placesOf(line.machine);
    return new Map(
      line.findings.flatMap((finding) => {
        const place = finding.subjects.map(placeOf).find((at) => at !== null);
        if (place == null || place.panelId !== panelId) return [];
        const { side, xMm, yMm } = place;
        return [[findingKey(finding), { finding, side, xMm, yMm }] as const];
      }),
    );
  },
});
