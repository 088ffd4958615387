import { compareText } from "@pinwright/kernel";
import type {
  Finding,
  HarnessResult,
  Item,
  Languages,
  LineResult,
  Place,
  Point,
  SizedWire,
} from "../model/index.ts";

/** A wire as seen from one of its ends. */
export interface WireAbout {
  readonly wire: SizedWire;
  readonly harness: HarnessResult;
}

/** A point with its net and the wires that land on it. */
export interface PointAbout {
  readonly point: Point;
  readonly netId: string | null;
  readonly wires: readonly WireAbout[];
}

/** Everything that one id touches. */
export interface About {
  readonly kind: "item" | "point" | "landing" | "net" | "wire" | "harness" | "lane" | "panel";
  readonly id: string;
  readonly labels: Languages | null;
  readonly place: Place | null;
  /** The item that it is, or belongs to. */
  readonly item: Item | null;
  /** Items within it: children of a mechanism. */
  readonly children: readonly string[];
  readonly points: readonly PointAbout[];
  /** Wires that it concerns and that are not already under a point. */
  readonly wires: readonly WireAbout[];
  /** Ids of the harnesses whose sheets it stands on. */
  readonly harnessIds: readonly string[];
  readonly findings: readonly Finding[];
}

/** A wire by its id, or by the label printed on it: harness number, a dash, wire number. */
function findWire(result: LineResult, id: string): WireAbout | null {
  const printed = /^(\d+)-(\d+)$/.exec(id);
  for (const harness of result.harnesses.values()) {
    if (printed !== null && harness.harness.number !== Number(printed[1])) continue;
    const wire = harness.wires.find((w) =>
      printed === null ? w.id === id : w.number === Number(printed[2]),
    );
    if (wire !== undefined) return { wire, harness };
  }
  return null;
}

/** Ids that may be asked about, for finding the nearest when one is not known. */
export function knownIds(result: LineResult): readonly string[] {
  const { machine } = result;
  return [
    ...machine.items.keys(),
    ...machine.nets.keys(),
    ...machine.harnesses.keys(),
    ...machine.panels.keys(),
    ...machine.book.tables.lanes.map((lane) => lane.id),
    ...machine.landings.keys(),
    ...machine.points.keys(),
  ];
}

/** What is known of an item, point, landing, net, wire, harness, lane or panel; null when there is no such id. */
export function aboutId(result: LineResult, id: string): About | null {
  const { machine } = result;
  const netOf = new Map(machine.ends.map((end) => [end.point, end.net]));
  const all = [...result.harnesses.values()].flatMap((harness) =>
    harness.wires.map((wire) => ({ wire, harness })),
  );
  const at = (pointId: string): readonly WireAbout[] =>
    all.filter((w) => w.wire.a === pointId || w.wire.b === pointId);
  const points = (ids: readonly string[]): readonly PointAbout[] =>
    ids.flatMap((pointId) => {
      const point = machine.points.get(pointId);
      return point === undefined ? [] : [{ point, netId: netOf.get(pointId) ?? null, wires: at(pointId) }];
    });
  const made = (
    kind: About["kind"],
    parts: Partial<Pick<About, "labels" | "place" | "item" | "children" | "points" | "wires">>,
    harnessIds: readonly string[] = [],
  ): About => {
    const touched = [...(parts.points ?? []).flatMap((p) => p.wires), ...(parts.wires ?? [])];
    const harnesses = new Set([...harnessIds, ...touched.map((w) => w.harness.harness.id)]);
    return {
      kind,
      id,
      labels: null,
      place: null,
      item: null,
      children: [],
      points: [],
      wires: [],
      ...parts,
      harnessIds: [...harnesses].sort(compareText),
      findings: result.findings.filter((finding) => finding.subjects.includes(id)),
    };
  };

  const item = machine.items.get(id);
  if (item !== undefined) {
    const ids = [...machine.landings.values()].filter((l) => l.itemId === id).flatMap((l) => l.pointIds);
    const children = [...machine.items.values()].filter((i) => i.parentId === id).map((i) => i.id);
    const childPoints = [...machine.landings.values()]
      .filter((l) => children.includes(l.itemId))
      .flatMap((l) => l.pointIds);
    return made("item", {
      labels: item.labels,
      place: item.place,
      item,
      children,
      points: points([...ids, ...childPoints]),
    });
  }
  const landing = machine.landings.get(id);
  if (landing !== undefined)
    return made("landing", {
      place: landing.place,
      item: machine.items.get(landing.itemId) ?? null,
      points: points(landing.pointIds),
    });
  const point = machine.points.get(id);
  if (point !== undefined)
    return made("point", {
      place: point.place,
      item: machine.items.get(point.itemId) ?? null,
      points: points([id]),
    });
  const net = machine.nets.get(id);
  if (net !== undefined) {
    const ends = machine.ends.filter((end) => end.net === id);
    return made("net", {
      labels: { en: net.label || id, zh: net.label_zh || net.label || id },
      points: points(ends.map((end) => end.point)),
      wires: all.filter((w) => w.wire.netId === id),
    });
  }
  const harness = result.harnesses.get(id);
  if (harness !== undefined)
    return made(
      "harness",
      { labels: harness.labels, wires: harness.wires.map((wire) => ({ wire, harness })) },
      [id],
    );
  const branched = all.filter((w) => w.wire.path.includes(id));
  if (machine.book.tables.lanes.some((lane) => lane.id === id) || branched.length > 0)
    return made("lane", { wires: branched });
  const panel = machine.panels.get(id);
  if (panel !== undefined) {
    const children = [...machine.items.values()].filter((i) => i.place.panelId === id && i.parentId === null);
    return made("panel", {
      labels: { en: panel.label || id, zh: panel.label_zh || panel.label || id },
      children: children.map((i) => i.id),
    });
  }
  const wire = findWire(result, id);
  return wire === null ? null : made("wire", { wires: [wire], points: points([wire.wire.a, wire.wire.b]) });
}
