import { boardRows, boardTypes, SEGMENTS } from "./electrics-boards.ts";
import { INLINES } from "./wiring-inlines.ts";
import type { Wiring } from "./wiring-kit.ts";

interface Segment {
  readonly name: keyof typeof SEGMENTS;
  readonly label: string;
  readonly labelZh: string;
  /** Port that feeds the segment. */
  readonly port: string;
  /** Harness of the hops. */
  readonly harness: string;
  /** In-line connector on the way, with the harness on its near side. */
  readonly via?: readonly [inline: string, harness: string];
}

const SEGMENT_LIST: readonly Segment[] = [
  { name: "cabinet", label: "cabinet bus", labelZh: "机柜总线", port: "bd.hub:j3", harness: "hs.trunk-data" },
  {
    name: "backbox",
    label: "backbox bus",
    labelZh: "背箱总线",
    port: "bd.hub:j6",
    harness: "hs.backbox-data",
    via: ["il.bb-data", "hs.trunk-data"],
  },
  {
    name: "lower",
    label: "lower playfield bus",
    labelZh: "台面下总线",
    port: "bd.hub:j4",
    harness: "hs.bus-lower",
    via: ["il.pf-bus-lower", "hs.trunk-data"],
  },
  {
    name: "upper",
    label: "upper playfield bus",
    labelZh: "台面上总线",
    port: "bd.hub:j5",
    harness: "hs.bus-upper",
    via: ["il.pf-bus-upper", "hs.trunk-data"],
  },
];

interface At {
  readonly x: number;
  readonly y: number;
}

const middle = (id: string): At => {
  const row = boardRows.find((b) => b.id === id);
  const type = boardTypes.find((t) => `bt.${t.name}` === row?.type);
  if (row === undefined || type === undefined) throw new Error(`Board ${id} is not there.`);
  const [w, d] = type.sizeMm;
  return row.rotation_deg === 90
    ? { x: row.x_mm - d / 2, y: row.y_mm + w / 2 }
    : { x: row.x_mm + w / 2, y: row.y_mm + d / 2 };
};

/** Boards in the order of a short way from a start: the nearest next, then stretches turned while that gains. */
function shortWay(start: At, boards: readonly string[]): readonly string[] {
  const places = new Map(boards.map((id) => [id, middle(id)]));
  const place = (id: string): At => places.get(id) ?? start;
  const far = (a: At, b: At): number => Math.hypot(a.x - b.x, a.y - b.y);
  const left = [...boards].sort((a, b) => (a < b ? -1 : 1));
  let way: string[] = [];
  for (let here = start; left.length > 0; ) {
    const next = left.reduce((best, id) =>
      far(here, place(id)) < far(here, place(best)) - 1e-9 ? id : best,
    );
    left.splice(left.indexOf(next), 1);
    way.push(next);
    here = place(next);
  }
  const length = (list: readonly string[]): number =>
    list.reduce((sum, id, i) => sum + far(i === 0 ? start : place(list[i - 1] ?? id), place(id)), 0);
  for (let better = true; better; ) {
    better = false;
    for (let i = 0; i < way.length - 1; i += 1) {
      for (let j = i + 1; j < way.length; j += 1) {
        const turned = [...way.slice(0, i), ...way.slice(i, j + 1).toReversed(), ...way.slice(j + 1)];
        if (length(turned) >= length(way) - 1e-6) continue;
        way = turned;
        better = true;
      }
    }
  }
  return way;
}

const LINES = [
  { key: "v", pin: 1, cls: "logic", label: "12 V", labelZh: "12 V" },
  { key: "0", pin: 2, cls: "logic", label: "0 V", labelZh: "0 V" },
  { key: "dp", pin: 4, cls: "data", label: "D+", labelZh: "D+" },
  { key: "dn", pin: 5, cls: "data", label: "D−", labelZh: "D−" },
] as const;

export interface Hop {
  readonly harness: string;
  readonly from: string;
  readonly to: string;
  readonly segment: string;
}

/** Wires the bus: each segment from its port from board to board; the last board has the termination. */
export function wireBus(w: Wiring): {
  readonly hops: readonly Hop[];
  readonly terminated: ReadonlySet<string>;
} {
  const hops: Hop[] = [];
  const terminated = new Set<string>();
  for (const s of SEGMENT_LIST) {
    const [portItem = ""] = s.port.split(":");
    const inline = INLINES.find((i) => i.id === s.via?.[0]);
    const start = inline === undefined ? middle(portItem) : { x: inline.place.x_mm, y: inline.place.y_mm };
    const way = shortWay(start, SEGMENTS[s.name]);
    const last = way.at(-1) ?? "";
    terminated.add(last);
    for (const line of LINES) {
      const net = w.net(
        `bus.${s.name}.${line.key}`,
        line.cls,
        `${s.label} ${line.label}`,
        `${s.labelZh} ${line.labelZh}`,
        {
          supply: line.cls === "data" ? null : "sup.bus",
          volts: line.key === "v" ? 12 : line.key === "0" ? 0 : 5,
          amps: line.cls === "logic" ? 0.06 * way.length : 0.05,
          shape: "chain",
          source: `${s.port}.${line.pin}`,
          wire_type: line.cls === "logic" ? "hu-22" : "hu-24",
          // The boards make their own 3.3 V from anything above 8 V.
          max_drop_pct: line.cls === "logic" ? 10 : null,
        },
      );
      const points: string[] = [];
      if (s.via === undefined) {
        w.end(net, s.harness, `${s.port}.${line.pin}`);
        points.push(`${s.port}.${line.pin}`);
      } else {
        w.end(net, s.via[1], `${s.port}.${line.pin}`);
        points.push(w.through(s.via[0], net, s.via[1], s.harness)[1]);
      }
      for (const board of way) {
        points.push(`${board}:j1.${line.pin}`);
        if (board === last) w.spare(`${board}:j2.${line.pin}`, "last board of its bus segment");
        else points.push(`${board}:j2.${line.pin}`);
      }
      w.end(net, s.harness, ...points.slice(1));
      w.order(net, s.harness, points, "Supply and data run together from board to board.");
    }
    if (s.via !== undefined) hops.push({ harness: s.via[1], from: portItem, to: s.via[0], segment: s.name });
    [s.via?.[0] ?? portItem, ...way].forEach((from, i) => {
      const to = way[i];
      if (to !== undefined) hops.push({ harness: s.harness, from, to, segment: s.name });
    });
  }
  for (const [key, pin, label] of [
    ["dp", 2, "D+"],
    ["dn", 3, "D−"],
  ] as const) {
    const net = w.net(`link.hub.${key}`, "data", `master to hub ${label}`, `主控至集线板 ${label}`, {
      volts: 5,
      amps: 0.05,
      source: `bd.netmaster:j3.${pin}`,
      wire_type: "hu-24",
    });
    w.end(net, "hs.backbox-data", `bd.netmaster:j3.${pin}`);
    w.through("il.bb-data", net, "hs.trunk-data", "hs.backbox-data");
    w.end(net, "hs.trunk-data", `bd.hub:j1.${pin}`);
  }
  hops.push({ harness: "hs.backbox-data", from: "bd.netmaster", to: "il.bb-data", segment: "hub" });
  hops.push({ harness: "hs.trunk-data", from: "il.bb-data", to: "bd.hub", segment: "hub" });
  return { hops, terminated };
}
