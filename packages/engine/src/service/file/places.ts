import type { Ring } from "@pinwright/book";
import { wireEntryCell } from "../../lists/index.ts";
import { type Item, type Landing, labelsOf, type Machine, type PanelPoint } from "../../model/index.ts";
import type { FileItem, FileLabels, FileLanding, FilePanel, FilePoint } from "./fault-file.ts";

/** A tenth of a millimetre is more than a map shows. */
const round = (mm: number): number => Math.round(mm * 10) / 10;
const flat = (ring: Ring | readonly PanelPoint[]): readonly number[] =>
  ring.flatMap(({ xMm, yMm }) => [round(xMm), round(yMm)]);

export const fileLabels = (
  row: { readonly label: string; readonly label_zh?: string },
  id: string,
): FileLabels => {
  const { en, zh } = labelsOf({ label: row.label, label_zh: row.label_zh ?? "" }, id);
  return [en, zh];
};

/** Items, landings and points of a file under their indices, in the order in which they are first asked for. */
export class FilePlaces {
  readonly #machine: Machine;
  readonly #panels = new Map<string, number>();
  readonly #items = new Map<string, number>();
  readonly #landings = new Map<string, number>();
  readonly #points = new Map<string, number>();

  constructor(machine: Machine) {
    this.#machine = machine;
  }

  item(id: string): number {
    const item = this.#machine.items.get(id);
    if (item !== undefined) index(this.#panels, item.place.panelId);
    return index(this.#items, id);
  }

  /** Index of a point; -1: there is no such point. */
  point(id: string): number {
    const point = this.#machine.points.get(id);
    if (point === undefined) return -1;
    this.item(point.itemId);
    index(this.#landings, point.landingId);
    return index(this.#points, id);
  }

  panels(): readonly FilePanel[] {
    return [...this.#panels.keys()].map((id) => {
      const row = this.#machine.panels.get(id);
      const ring = this.#machine.panelOutlines.get(id)?.rings[0];
      const [width, height] = [row?.width_mm ?? 0, row?.height_mm ?? 0];
      return {
        id,
        labels: fileLabels(row ?? { label: id }, id),
        outline: ring === undefined ? [0, 0, width, 0, width, height, 0, height] : flat(ring),
      };
    });
  }

  items(): readonly FileItem[] {
    return [...this.#items.keys()].map((id) => {
      const item = this.#machine.items.get(id);
      if (item === undefined) throw new Error(`no item ${id}`);
      return {
        id,
        kind: item.kind,
        labels: [item.labels.en, item.labels.zh],
        number: item.kind === "device" ? item.number : null,
        ...(item.kind === "device" ? { class: item.type.class } : {}),
        type: typeLabels(item),
        panel: this.#panels.get(item.place.panelId) ?? -1,
        side: item.place.side,
        at: [round(item.place.xMm), round(item.place.yMm)],
        outline: flat(item.footprint),
      };
    });
  }

  landings(): readonly FileLanding[] {
    return [...this.#landings.keys()].map((id) => {
      const landing = this.#machine.landings.get(id);
      if (landing === undefined) throw new Error(`no landing ${id}`);
      return this.#landing(landing);
    });
  }

  points(): readonly FilePoint[] {
    return [...this.#points.keys()].map((id) => {
      const point = this.#machine.points.get(id);
      if (point === undefined) throw new Error(`no point ${id}`);
      return {
        id,
        landing: this.#landings.get(point.landingId) ?? -1,
        pin: point.pin,
        label: point.pin === null ? point.label || point.localId : point.label,
      };
    });
  }

  #landing(landing: Landing): FileLanding {
    const { connector, half, pointIds } = landing;
    const cells =
      connector === null
        ? []
        : pointIds.map((_, n) => {
            const { column, row } = wireEntryCell(this.#machine, landing, n + 1);
            return [column, row] as const;
          });
    const most = (side: 0 | 1): number => 1 + cells.reduce((n, cell) => Math.max(n, cell[side]), 0);
    return {
      id: landing.id,
      item: this.#items.get(landing.itemId) ?? -1,
      name: connector === null || half !== null ? "" : connector.name.toUpperCase(),
      label: connector?.label ?? "",
      half,
      grid: connector === null ? null : [most(0), most(1)],
      cells,
      keys: landing.keyPins,
      at: [round(landing.place.xMm), round(landing.place.yMm)],
    };
  }
}

/** Index of a name, a new one for a new name. */
function index(names: Map<string, number>, name: string): number {
  const known = names.get(name);
  if (known !== undefined) return known;
  names.set(name, names.size);
  return names.size - 1;
}

function typeLabels(item: Item): FileLabels {
  return item.kind === "inline"
    ? fileLabels({ label: item.type.label }, item.type.id)
    : fileLabels(item.type, item.type.id);
}
