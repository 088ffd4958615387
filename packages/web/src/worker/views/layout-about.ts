import {
  aboutId,
  type Finding,
  type Item,
  type LineResult,
  type Machine,
  type WireAbout,
} from "@pinwright/engine";
import { view } from "./view.ts";

/** A wire as it is told of beside the drawing. */
interface AboutWire {
  readonly id: string;
  readonly label: string;
  readonly colour: string;
  readonly areaMm2: number;
  readonly lengthMm: number;
  readonly netId: string;
  /** The end that is further off: its point, and the item that it belongs to. */
  readonly otherPoint: string;
  readonly otherItem: string | null;
  readonly otherLabel: string;
  readonly otherLabelZh: string;
}

interface AboutPoint {
  readonly id: string;
  readonly localId: string;
  readonly label: string;
  readonly use: "live" | "spare" | "key";
  readonly netId: string | null;
  readonly wires: readonly AboutWire[];
}

interface PanelSide {
  readonly panelId: string;
  readonly side: "top" | "under";
}

/** Everything that the panel beside the drawing says of one id. */
export interface LayoutAbout {
  readonly kind: string;
  /** What kind of item it is; null when it is none. */
  readonly itemKind: Item["kind"] | null;
  readonly id: string;
  readonly label: string;
  readonly labelZh: string;
  /** Place by which to find it: its own, or that of one of its contacts. */
  readonly panelId: string | null;
  readonly side: "top" | "under";
  readonly typeId: string | null;
  readonly typeLabel: string;
  readonly typeLabelZh: string;
  /** Extents of its type in its own x and y, and its height; blank where it has none. */
  readonly sizeMm: readonly number[];
  /** Service number of a device. */
  readonly number: number | null;
  readonly parentId: string | null;
  readonly children: readonly string[];
  readonly holds: string | null;
  readonly points: readonly AboutPoint[];
  readonly wires: readonly AboutWire[];
  /** Panel sides that its wires run along, in the order of the machine's panels. */
  readonly runsOn: readonly PanelSide[];
  readonly harnesses: readonly {
    readonly id: string;
    readonly number: number;
    readonly label: string;
    readonly labelZh: string;
  }[];
  readonly findings: readonly Finding[];
}

function sizeOf(item: Item): readonly number[] {
  switch (item.kind) {
    case "device":
    case "board":
    case "mechanism":
      return [item.type.width_mm, item.type.depth_mm, item.type.height_mm];
    case "fastener":
      return [item.type.diameter_mm, item.type.length_mm];
    case "inline":
      return [];
  }
}

function aboutWire({ machine }: LineResult, { wire, harness }: WireAbout, from: string): AboutWire {
  const other = wire.a === from ? wire.b : wire.a;
  const item = machine.items.get(machine.points.get(other)?.itemId ?? "");
  return {
    id: wire.id,
    label: `${harness.harness.number}-${wire.number}`,
    colour: wire.colour,
    areaMm2: wire.wireType.area_mm2,
    lengthMm: wire.finishedMm,
    netId: wire.netId,
    otherPoint: other,
    otherItem: item?.id ?? null,
    otherLabel: item?.labels.en ?? "",
    otherLabelZh: item?.labels.zh ?? "",
  };
}

/** Panel sides that wires touch on their way. */
function sidesOf({ machine }: LineResult, wires: readonly WireAbout[]): readonly PanelSide[] {
  const touched = new Set<string>();
  for (const { wire, harness } of wires) {
    const path = new Set(wire.path);
    const places = new Map(harness.route.nodes.map((node) => [node.id, node.place]));
    for (const { id, a, b } of harness.branches)
      if (path.has(id))
        for (const place of [places.get(a), places.get(b)])
          if (place !== undefined) touched.add(`${place.side} ${place.panelId}`);
  }
  return [...machine.panels.keys()].flatMap((panelId) =>
    (["top", "under"] as const).flatMap((side) =>
      touched.has(`${side} ${panelId}`) ? [{ panelId, side }] : [],
    ),
  );
}

/** A waypoint, cutout or crossing stands in no harness, but findings may name it. */
function aboutPlace({ machine, findings }: LineResult, id: string): LayoutAbout | null {
  const place = placeOfRow(machine, id);
  if (place === null) return null;
  return {
    ...BLANK,
    ...place,
    id,
    findings: findings.filter((finding) => finding.subjects.includes(id)),
  };
}

function placeOfRow({ book }: Machine, id: string): Pick<LayoutAbout, "kind" | "panelId" | "side"> | null {
  const { waypoints, cutouts, crossings, lanes } = book.tables;
  const waypoint = waypoints.find((row) => row.id === id);
  if (waypoint !== undefined) return { kind: "waypoint", panelId: waypoint.panel, side: waypoint.side };
  const cutout = cutouts.find((row) => row.id === id);
  if (cutout !== undefined) return { kind: "cutout", panelId: cutout.panel, side: cutout.side };
  const way = [...crossings, ...lanes].find((row) => row.id === id);
  const at = waypoints.find((row) => row.id === way?.from);
  return at === undefined ? null : { kind: "way", panelId: at.panel, side: at.side };
}

const BLANK: Omit<LayoutAbout, "id" | "kind" | "panelId" | "side"> = {
  itemKind: null,
  label: "",
  labelZh: "",
  typeId: null,
  typeLabel: "",
  typeLabelZh: "",
  sizeMm: [],
  number: null,
  parentId: null,
  children: [],
  holds: null,
  points: [],
  wires: [],
  runsOn: [],
  harnesses: [],
  findings: [],
};

/** What is known of one id, by the engine's own account. Null when there is no such id. */
function aboutFor(line: LineResult, id: string): LayoutAbout | null {
  const about = aboutId(line, id);
  if (about === null) return aboutPlace(line, id);
  const { machine, harnesses } = line;
  const { item } = about;
  const first = about.place ?? about.points[0]?.point.place ?? null;
  const row = placeOfRow(machine, id);
  const panel = about.kind === "panel" ? id : null;
  const wires = about.wires.length > 0 ? about.wires : about.points.flatMap((point) => point.wires);
  const [own] = about.wires;
  const printed = about.kind !== "wire" || own === undefined ? "" : aboutWire(line, own, own.wire.a).label;
  const type = item === null || item.kind === "inline" ? null : item.type;
  return {
    ...BLANK,
    kind: about.kind,
    itemKind: item?.kind ?? null,
    id,
    label: about.labels?.en ?? printed,
    labelZh: about.labels?.zh ?? printed,
    panelId: panel ?? first?.panelId ?? row?.panelId ?? null,
    side: first?.side ?? row?.side ?? "top",
    typeId: item?.type.id ?? null,
    typeLabel: type?.label ?? "",
    typeLabelZh: type?.label_zh ?? "",
    sizeMm: item === null ? [] : sizeOf(item),
    number: item?.kind === "device" ? item.number : null,
    parentId: item?.parentId ?? null,
    children: about.children,
    holds: item?.kind === "fastener" ? item.holds : null,
    points: about.points.map(({ point, netId, wires }) => ({
      id: point.id,
      localId: point.id.slice(id.length + 1) || point.localId,
      label: point.label,
      use: point.use,
      netId,
      wires: wires.map((wire) => aboutWire(line, wire, point.id)),
    })),
    wires: about.wires.map((wire) => aboutWire(line, wire, wire.wire.a)),
    runsOn: sidesOf(line, wires),
    harnesses: about.harnessIds.flatMap((harnessId) => {
      const result = harnesses.get(harnessId);
      if (result === undefined) return [];
      const { en, zh } = result.labels;
      return [{ id: harnessId, number: result.harness.number, label: en, labelZh: zh }];
    }),
    findings: about.findings,
  };
}

/** What is known of one id; no entry when there is no such id. */
export const layoutAbout = view<{ readonly id: string }, LayoutAbout>({
  uses: ({ line }) => [line],
  entries: ({ line }, { id }) => {
    const about = id === "" ? null : aboutFor(line, id);
    return new Map(about === null ? [] : [["", about]]);
  },
  restsInPreview: true,
});
