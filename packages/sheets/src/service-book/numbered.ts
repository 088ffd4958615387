import type { DeviceItem, ProgramPoint } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { bookTerm } from "@pinwright/words";
import { TEXT } from "../compose/draw.ts";
import { filledColumns } from "../compose/filled-columns.ts";
import { type Block, gap } from "../compose/flow.ts";
import { shortNumber } from "../compose/number.ts";
import type { TableColumn } from "../compose/table.ts";
import { itemName } from "../machine-facts.ts";
import { fuseName } from "../supply-schedule/fuses.ts";
import { type BookRow, bookTable, hazardBlocks, note, row, sectionHead } from "./blocks.ts";
import type { BookContext } from "./context.ts";
import { mapAnchor } from "./where.ts";
import { pointText, wireLines } from "./wire-texts.ts";

type Kind = "switches" | "sensors" | "lamps" | "coils" | "motors" | "speakers";

const CLASSES: Readonly<Record<Kind, readonly string[]>> = {
  switches: ["switch", "button"],
  sensors: ["sensor"],
  lamps: ["lamp"],
  coils: ["coil"],
  motors: ["motor"],
  speakers: ["speaker"],
};
const KINDS: readonly Kind[] = ["switches", "sensors", "lamps", "coils", "motors", "speakers"];

/** Devices of a kind: those with a number by it, then the others by name. */
export function devicesOf({ line, language }: BookContext, kind: Kind): readonly DeviceItem[] {
  const own = [...line.machine.items.values()].flatMap((item) =>
    item.kind === "device" && CLASSES[kind].includes(item.type.class) ? [item] : [],
  );
  const name = (item: DeviceItem): string => itemName(line, item.id, language);
  return own.sort(
    (a, b) =>
      (a.number ?? Number.POSITIVE_INFINITY) - (b.number ?? Number.POSITIVE_INFINITY) ||
      compareText(name(a), name(b)) ||
      compareText(a.id, b.id),
  );
}

/** Tables of what has a number on the display, and of what the mechanisms have. */
export function numberedBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { words } = context;
  const tables = KINDS.flatMap((kind): readonly Block[] => {
    const devices = devicesOf(context, kind);
    if (devices.length === 0) return [];
    const moves = kind === "coils" || kind === "motors";
    const hints = [
      words((w) => w.numbered.wiresHint),
      ...(moves ? [words((w) => w.numbered.ohmHint), words((w) => w.numbered.pulseHint)] : []),
    ];
    return [
      sectionHead(
        words((w) => w.numbered[kind]),
        `numbered:${kind}`,
        widthMm,
        45,
      ),
      ...(moves ? hazardBlocks(context, ["volts", "moving", "hot"], `numbered-${kind}`, widthMm) : []),
      { ...note(hints.join(" "), widthMm), keepMm: 25 },
      ...tableOf(context, kind, devices, widthMm),
      gap(2),
    ];
  });
  return tables.length === 0
    ? []
    : [
        note(
          words((w) => w.numbered.hint),
          widthMm,
        ),
        ...tables,
      ];
}

function tableOf(
  context: BookContext,
  kind: Kind,
  devices: readonly DeviceItem[],
  widthMm: number,
): readonly Block[] {
  const { words } = context;
  const right = { align: "end", whole: true } as const;
  const small = { heightMm: TEXT.small } as const;
  const moves = kind === "coils" || kind === "motors";
  const columns: readonly TableColumn[] = [
    { ...right, header: words((w) => w.numbered.no), weight: "bold" },
    { header: words((w) => w.numbered.what), detail: true, grow: true },
    { ...small, header: kind === "switches" ? words((w) => w.numbered.acts) : "" },
    { ...right, header: words((w) => w.numbered.ohm), weight: "bold" },
    { ...right, ...small, header: words((w) => w.numbered.volts) },
    { ...small, header: words((w) => w.numbered.fuse) },
    { ...small, header: words((w) => w.numbered.board) },
    { ...small, header: moves ? `${words((w) => w.numbered.pulse)}, ${words((w) => w.numbered.hold)}` : "" },
    { header: words((w) => w.numbered.wires), ...small, whole: true, weight: "bold" },
    { ...right, ...small, header: words((w) => w.numbered.map) },
  ];
  const rows = devices.flatMap((device, i): readonly BookRow[] => {
    const before = devices[i - 1];
    const turns = device.number === null && before !== undefined && before.number !== null;
    const own = row(cellsOf(context, kind, device), `item:${device.id}`, [
      ...new Array<undefined>(9).fill(undefined),
      context.linkTo(mapAnchor(context, device.id)),
    ]);
    return turns ? [{ kind: "group", text: words((w) => w.numbered.noNumber) }, own] : [own];
  });
  const filled = filledColumns(columns, rows);
  // Links go with their cells where columns are left out.
  const kept = columns.map((column) => filled.columns.includes(column));
  const linkedRows = rows.map((each): BookRow => {
    if (each.kind === "group") return each;
    return {
      ...each,
      cells: each.cells.filter((_, n) => kept[n]),
      links: (each.links ?? []).filter((_, n) => kept[n]),
    };
  });
  return bookTable(context, filled.columns, linkedRows, widthMm);
}

function cellsOf(context: BookContext, kind: Kind, device: DeviceItem): readonly string[] {
  const { line, language, facts, words } = context;
  const elements = (facts.elementsOf.get(device.id) ?? []).filter((e) => e.row.kind !== "diode");
  const points = facts.programOf.get(device.id) ?? [];
  const contacts = kind === "switches" ? elements.filter((e) => e.row.kind === "contact") : [];
  const windings = elements.filter((e) => ["coil", "motor", "speaker"].includes(e.row.kind));
  const ohms = windings.map((e) => {
    const name = windings.length > 1 ? `${bookTerm(language, e.row.control ?? "")} ` : "";
    return e.row.ohm === null ? "" : `${name}${shortNumber(e.row.ohm, 2)}`;
  });
  // What a contact switches is told with what it works.
  const fuses = (kind === "switches" ? [] : elements).flatMap((e) => {
    const fuse = facts.fuseOf.get(e.id);
    return fuse === undefined ? [] : [fuseName(line, fuse, language)];
  });
  const volts = points.flatMap((p) => (p.supplyV === null ? [] : [shortNumber(p.supplyV, 1)]));
  const page = context.pageOf(mapAnchor(context, device.id));
  return [
    device.number === null ? "" : String(device.number),
    `${itemName(line, device.id, language)}\n${device.id}`,
    unique(
      contacts.map((e) =>
        [
          bookTerm(language, e.row.control ?? ""),
          words((w) => (e.row.normally === "closed" ? w.numbered.closed : w.numbered.open)),
        ]
          .filter((t) => t !== "")
          .join(", "),
      ),
    ),
    unique(ohms),
    kind === "switches" || kind === "sensors" ? "" : unique(volts),
    unique(fuses),
    boardText(context, points),
    kind === "coils" || kind === "motors" ? unique(points.map((p) => timeText(context, p))) : "",
    wireLines(context, device.id).join("\n"),
    page,
  ];
}

const unique = (texts: readonly string[]): string => [...new Set(texts.filter((t) => t !== ""))].join("\n");

/** Where a device hangs: `Switch board j2.3`; in a matrix its column and row. */
function boardText(context: BookContext, points: readonly ProgramPoint[]): string {
  const { line, words, language } = context;
  const local = (p: ProgramPoint): string => pointText(context, p.pointId);
  const boards = (p: ProgramPoint): string => p.through.map((id) => itemName(line, id, language)).join(", ");
  const drives = points.filter((p) => p.kind === "driver");
  const reads = points.filter((p) => p.kind === "input");
  const [column, input] = [drives[0], reads[0]];
  if (column !== undefined && input !== undefined && points.length === 2)
    return words((w) => w.numbered.matrix(local(column), local(input)));
  return unique(
    points.map((p) =>
      p.through.length === 0 ? local(p) : `${local(p)} (${words((w) => w.numbered.through(boards(p)))})`,
    ),
  );
}

/** `40 ms, hold 100 %`: what the program may ask for. */
function timeText({ words }: BookContext, p: ProgramPoint): string {
  const ms = (value: number): string => words((w) => w.numbered.ms(shortNumber(value, 1)));
  const hold = [
    p.holdMs === null ? "" : ms(p.holdMs),
    p.holdDutyPct === null ? "" : `${shortNumber(p.holdDutyPct, 1)} %`,
  ].filter((t) => t !== "");
  return [
    p.pulseMs === null ? "" : ms(p.pulseMs),
    hold.length === 0 ? "" : `${words((w) => w.numbered.hold)} ${hold.join(", ")}`,
    p.timeoutMs === null ? "" : `${words((w) => w.numbered.off)} ${ms(p.timeoutMs)}`,
  ]
    .filter((t) => t !== "")
    .join("; ");
}
