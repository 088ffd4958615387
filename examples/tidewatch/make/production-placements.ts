import type { BookRow } from "@pinwright/book";
import { rows } from "./author.ts";
import { families } from "./families.ts";

type Element = BookRow<"elements">;
type Placement = Partial<BookRow<"placements">>;

/** A part as it is stuffed: size, joints, and what marks its right way round. */
interface Stuffed {
  readonly letter: string;
  readonly part: string;
  readonly label: string;
  readonly labelZh: string;
  readonly size: readonly [width: number, depth: number, height: number];
  readonly joints: number;
  readonly polarity?: string;
  readonly afterWash?: boolean;
}

const CONTROLLER: Stuffed = {
  letter: "U",
  part: "el.controller",
  label: "Controller, 20 legs",
  labelZh: "控制器 20 脚",
  size: [10, 26, 5],
  joints: 20,
  polarity: "notch",
};
const TRANSCEIVER: Stuffed = {
  letter: "U",
  part: "el.transceiver",
  label: "Bus transceiver, 8 legs",
  labelZh: "总线收发器 8 脚",
  size: [10, 10, 5],
  joints: 8,
  polarity: "notch",
};
const POWER_FET: Stuffed = {
  letter: "Q",
  part: "el.fet-power",
  label: "Transistor, 100 V 30 A",
  labelZh: "功率晶体管 100 V 30 A",
  size: [5, 10, 17],
  joints: 3,
  polarity: "tab to the edge",
};
const SMALL_FET: Stuffed = {
  letter: "Q",
  part: "el.fet-small",
  label: "Transistor, 60 V 1 A",
  labelZh: "晶体管 60 V 1 A",
  size: [5, 5, 6],
  joints: 3,
  polarity: "flat side",
};
const RESISTOR: Stuffed = {
  letter: "R",
  part: "el.res-025",
  label: "Resistor 0.25 W",
  labelZh: "电阻 0.25 W",
  size: [8, 2.5, 2.5],
  joints: 2,
};
const DIODE: Stuffed = {
  letter: "D",
  part: "el.diode-clamp",
  label: "Diode 1 A, clamp",
  labelZh: "续流二极管 1 A",
  size: [8, 2.8, 2.8],
  joints: 2,
  polarity: "ring",
};
const LED: Stuffed = {
  letter: "D",
  part: "el.led-5",
  label: "LED 5 mm",
  labelZh: "发光二极管 5 mm",
  size: [5, 5, 9],
  joints: 2,
  polarity: "flat side",
};
const HOLDER: Stuffed = {
  letter: "F",
  part: "el.fuse-holder",
  label: "Fuse clips 5 × 20",
  labelZh: "保险丝夹 5 × 20",
  size: [22, 8, 12],
  joints: 4,
};
const RESETTABLE: Stuffed = {
  letter: "F",
  part: "el.fuse-reset",
  label: "Resettable fuse",
  labelZh: "自恢复保险丝",
  size: [8, 3.5, 11],
  joints: 2,
};
const REGULATOR: Stuffed = {
  letter: "U",
  part: "el.regulator",
  label: "Regulator module",
  labelZh: "稳压模块",
  size: [12, 9, 12],
  joints: 3,
  polarity: "bevel",
  afterWash: true,
};
const ELECTROLYTIC: Stuffed = {
  letter: "C",
  part: "el.cap-470",
  label: "Electrolytic 470 µF",
  labelZh: "电解电容 470 µF",
  size: [10, 10, 17],
  joints: 2,
  polarity: "minus stripe",
};
const CERAMIC: Stuffed = {
  letter: "C",
  part: "el.cap-100n",
  label: "Ceramic 100 nF",
  labelZh: "陶瓷电容 100 nF",
  size: [5, 2.5, 4],
  joints: 2,
};
const RELAY: Stuffed = {
  letter: "K",
  part: "el.relay",
  label: "Relay 48 V, 16 A",
  labelZh: "继电器 48 V 16 A",
  size: [29, 13, 26],
  joints: 8,
  polarity: "mark at leg 1",
  afterWash: true,
};

/** Everything that is stuffed besides headers, as parts. */
export const ELECTRONICS = [
  CONTROLLER,
  TRANSCEIVER,
  POWER_FET,
  SMALL_FET,
  RESISTOR,
  DIODE,
  LED,
  HOLDER,
  RESETTABLE,
  REGULATOR,
  ELECTROLYTIC,
  CERAMIC,
  RELAY,
];

const POWER_BOARDS: ReadonlySet<string> = new Set([
  "bt.coil8",
  "bt.coil4",
  "bt.flipper",
  "bt.bumper",
  "bt.sling",
  "bt.magnet",
  "bt.motor",
  "bt.beacon",
]);
const CARTRIDGES: ReadonlySet<string> = new Set([
  "bt.mains",
  "bt.dist48",
  "bt.dist12",
  "bt.distmotor",
  "bt.distlogic",
]);

/** The parts that an element of a board stands for. */
function partsOf(type: string, element: Element): readonly Stuffed[] {
  switch (element.kind) {
    case "driver":
      return POWER_BOARDS.has(type) ? [POWER_FET, DIODE, RESISTOR] : [SMALL_FET, RESISTOR];
    case "input":
      return [RESISTOR, CERAMIC];
    case "resistor":
      return [RESISTOR];
    case "diode":
      return [DIODE];
    case "led":
      return [LED];
    case "fuse":
      return [CARTRIDGES.has(type) ? HOLDER : RESETTABLE];
    case "source":
      return [REGULATOR, ELECTROLYTIC, CERAMIC];
    case "capacitor":
      return [ELECTROLYTIC];
    case "coil":
      return [RELAY];
    case "load":
      return [CERAMIC];
    default:
      return [];
  }
}

interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

const meet = (a: Box, b: Box): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;

/** Headers lie where the plugs go; a header is 6 mm deep for each row and a pitch longer than its pins. */
function headers(connectors: readonly BookRow<"connectors">[]): (Placement & { readonly box: Box })[] {
  return connectors.map((c) => {
    const family = families.tables.connector_families?.find((f) => f.id === c.family);
    const pitch = family?.pitch_mm ?? 2.5;
    const columns = Math.ceil(c.ways / c.rows);
    const along = columns * pitch;
    const across = 5 + c.rows * 2.5;
    const upright = Math.abs(c.rotation_deg) % 180 === 90;
    const middle = ((columns - 1) * pitch) / 2;
    const sign = c.rotation_deg % 360 === 180 || c.rotation_deg % 360 === 270 ? -1 : 1;
    const x = c.x_mm + (upright ? 0 : sign * middle);
    const y = c.y_mm + (upright ? sign * middle : 0);
    const [width, depth] = upright ? [across, along] : [along, across];
    return {
      reference: c.name.toUpperCase(),
      ...(c.mate_part === null ? {} : { part: c.mate_part }),
      x_mm: Math.round(x * 100) / 100,
      y_mm: Math.round(y * 100) / 100,
      rotation_deg: c.rotation_deg,
      width_mm: Math.round(along * 100) / 100,
      depth_mm: across,
      height_mm: 12,
      joints: c.ways,
      polarity: "locking wall to the edge",
      box: { minX: x - width / 2, minY: y - depth / 2, maxX: x + width / 2, maxY: y + depth / 2 },
    };
  });
}

const EDGE_MM = 2;
const GAP_MM = 0.8;
const HOLE_ROOM_MM = 8;

/** Puts parts row by row into the free places of a board; null when they do not all fit. */
function place(
  type: BookRow<"board_types">,
  parts: readonly Stuffed[],
  taken: readonly Box[],
): Placement[] | null {
  const corners = [0, 1].flatMap((right) =>
    [0, 1].map((up) => {
      const x = right * (type.width_mm - HOLE_ROOM_MM);
      const y = up * (type.depth_mm - HOLE_ROOM_MM);
      return { minX: x, minY: y, maxX: x + HOLE_ROOM_MM, maxY: y + HOLE_ROOM_MM };
    }),
  );
  const boxes: Box[] = [...taken, ...corners];
  const counts = new Map<string, number>();
  const placed: Placement[] = [];
  for (const part of parts) {
    const found = firstFree(type, part, boxes);
    if (found === null) return null;
    boxes.push(found);
    const number = (counts.get(part.letter) ?? 0) + 1;
    counts.set(part.letter, number);
    placed.push({
      reference: `${part.letter}${number}`,
      part: part.part,
      x_mm: Math.round(((found.minX + found.maxX) / 2) * 100) / 100,
      y_mm: Math.round(((found.minY + found.maxY) / 2) * 100) / 100,
      width_mm: part.size[0],
      depth_mm: part.size[1],
      height_mm: part.size[2],
      joints: part.joints,
      ...(part.polarity === undefined ? {} : { polarity: part.polarity }),
      ...(part.afterWash === true ? { after_wash: true } : {}),
    });
  }
  return placed;
}

function firstFree(type: BookRow<"board_types">, part: Stuffed, boxes: readonly Box[]): Box | null {
  const [width, depth] = [part.size[0] + GAP_MM, part.size[1] + GAP_MM];
  for (let y = EDGE_MM; y + depth <= type.depth_mm - EDGE_MM; y += 1) {
    for (let x = EDGE_MM; x + width <= type.width_mm - EDGE_MM; x += 1) {
      const box = { minX: x, minY: y, maxX: x + width, maxY: y + depth };
      if (boxes.every((other) => !meet(box, other))) return box;
    }
  }
  return null;
}

/** Boards that are stuffed in the workshop; the dot display and the main board come from the board maker. */
const BOUGHT_STUFFED: ReadonlySet<string> = new Set([
  "bt.dot",
  "bt.main",
  "bt.netmaster",
  "bt.audio",
  "bt.display",
]);

/**
 * Placements of the boards that the workshop stuffs: their headers where the connectors are, and what the
 * elements stand for: a transistor, clamp diode and resistor for each coil driver, and so on.
 */
export function placements(
  types: readonly BookRow<"board_types">[],
  connectors: readonly BookRow<"connectors">[],
  elements: readonly Element[],
): readonly BookRow<"placements">[] {
  return rows(
    "placements",
    types
      .filter((type) => !BOUGHT_STUFFED.has(type.id))
      .flatMap((type) => {
        const heads = headers(connectors.filter((c) => c.board_type === type.id));
        const own = elements.filter((e) => e.board_type === type.id);
        const thinks = own.filter((e) => e.kind === "driver" || e.kind === "input").length >= 3;
        const parts = [
          ...(thinks ? [CONTROLLER, TRANSCEIVER] : []),
          ...own.flatMap((e) => partsOf(type.id, e)),
        ];
        const large = parts.toSorted((a, b) => b.size[0] * b.size[1] - a.size[0] * a.size[1]);
        const rest = place(
          type,
          large,
          heads.map((h) => h.box),
        );
        if (rest === null) throw new Error(`The parts of ${type.id} do not fit on it.`);
        return [...heads.map(({ box: _, ...head }) => head), ...rest].map((row) => ({
          board_type: type.id,
          ...row,
        }));
      }),
  );
}
