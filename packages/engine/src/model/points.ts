import { normaliseDeg, rotatePoint } from "@pinwright/kernel";
import { cavityAt, cavityGrid, gridMiddle } from "./cavities.ts";
import { faceX, placed } from "./frames.ts";
import type { ConnectorKit, Kit } from "./kits.ts";
import type { Item, Landing, PanelPoint, Place, PlacedElement, Point } from "./machine.ts";

/** Landings and points that one item brings into the machine. */
export interface ItemContacts {
  readonly landings: readonly Landing[];
  readonly points: readonly Point[];
}

/** Middle of the own frame, about which a face that looks down is turned over. */
function middleMm(item: Item): number {
  return item.kind === "board" ? item.type.width_mm / 2 : 0;
}

function onFace(item: Item, xMm: number, yMm: number, rotationDeg: number): Place {
  const at = placed(item.place, faceX(item.place.side, xMm, middleMm(item)), yMm);
  const own = item.place.side === "top" ? rotationDeg : 180 - rotationDeg;
  return { ...item.place, ...at, rotationDeg: normaliseDeg(item.place.rotationDeg + own) };
}

/** Cavities of a connector as points of an item; `localName` is `j1`, or the half `a` or `b` of an in-line connector. */
function housing(item: Item, kit: ConnectorKit, localName: string, half: "a" | "b" | null): ItemContacts {
  const { connector, family } = kit;
  const grid = cavityGrid(connector, family);
  const middle = gridMiddle(grid);
  const landingId = `${item.id}:${localName}`;
  const at = (cavity: PanelPoint): Place => {
    const turned = rotatePoint(cavity, connector.rotation_deg);
    return onFace(item, connector.x_mm + turned.xMm, connector.y_mm + turned.yMm, connector.rotation_deg);
  };
  const said = new Map(kit.pins.map((pin) => [pin.pin, pin]));
  const points: Point[] = [];
  for (let pin = 1; pin <= connector.ways; pin++) {
    const cavity = cavityAt(grid, pin);
    const localId = `${localName}.${pin}`;
    points.push({
      id: `${item.id}:${localId}`,
      itemId: item.id,
      landingId,
      pin,
      localId,
      label: said.get(pin)?.label ?? "",
      use: said.get(pin)?.use ?? "live",
      family,
      place: half === null ? at(cavity) : item.place,
    });
  }
  const landing: Landing = {
    id: landingId,
    itemId: item.id,
    connector,
    half,
    place: half === null ? at(middle) : item.place,
    pointIds: points.map((p) => p.id),
    keyPins: points.flatMap((p) => (p.use === "key" && p.pin !== null ? [p.pin] : [])),
  };
  return { landings: [landing], points };
}

function terminals(item: Item, kit: Kit): ItemContacts {
  if (kit.terminals.length === 0) return { landings: [], points: [] };
  const points = kit.terminals.map(
    ({ terminal, family }): Point => ({
      id: `${item.id}:${terminal.terminal}`,
      itemId: item.id,
      landingId: item.id,
      pin: null,
      localId: terminal.terminal,
      label: terminal.label,
      use: "live",
      family,
      place: onFace(item, terminal.x_mm, terminal.y_mm, 0),
    }),
  );
  const landing: Landing = {
    id: item.id,
    itemId: item.id,
    connector: null,
    half: null,
    place: item.place,
    pointIds: points.map((p) => p.id),
    keyPins: [],
  };
  return { landings: [landing], points };
}

/**
 * The contacts that an item brings: a landing and its points for each connector, one landing for all bare
 * terminals, and both halves of an in-line connector.
 */
export function itemContacts(item: Item, kit: Kit): ItemContacts {
  const parts =
    item.kind === "inline"
      ? kit.connectors.flatMap((c) => [housing(item, c, "a", "a"), housing(item, c, "b", "b")])
      : [...kit.connectors.map((c) => housing(item, c, c.connector.name, null)), terminals(item, kit)];
  return { landings: parts.flatMap((p) => p.landings), points: parts.flatMap((p) => p.points) };
}

/** The elements of an item's type, set into the item. A mechanism's elements join terminals of its children. */
export function itemElements({ id, kind }: Pick<Item, "id" | "kind">, kit: Kit): readonly PlacedElement[] {
  const joint = kind === "mechanism" ? "/" : ":";
  return kit.elements.map((row) => ({
    id: `${id}:${row.id}`,
    itemId: id,
    fromPointId: `${id}${joint}${row.from}`,
    toPointId: `${id}${joint}${row.to}`,
    row,
  }));
}
