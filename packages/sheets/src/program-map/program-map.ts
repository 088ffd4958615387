import { type LineResult, type ProgramPoint, programMap, programMapText } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { textHash } from "../compose/body-hash.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { filledColumns } from "../compose/filled-columns.ts";
import type { Grid } from "../compose/grid.ts";
import { shortNumber } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { itemName } from "../machine-facts.ts";
import { composeMachineListing } from "../machine-listing.ts";
import type { SheetOptions } from "../options.ts";

type Say = (choose: Parameters<typeof say>[1]) => string;

/** Digits of the hash that a map is called by. */
const VERSION_DIGITS = 12;

/** Points by the boards that they are on: by address, then id; a board's points by connector and cavity. */
function byBoard(points: readonly ProgramPoint[]): readonly (readonly [string, readonly ProgramPoint[]])[] {
  const boards = new Map<string, ProgramPoint[]>();
  for (const point of points) {
    const own = boards.get(point.boardId);
    if (own === undefined) boards.set(point.boardId, [point]);
    else own.push(point);
  }
  const address = (list: readonly ProgramPoint[]): number => list[0]?.address ?? Number.POSITIVE_INFINITY;
  return [...boards]
    .sort(([a, pointsA], [b, pointsB]) => {
      const [first, second] = [address(pointsA), address(pointsB)];
      return first === second ? compareText(a, b) : first - second;
    })
    .map(([id, own]) => [
      id,
      own.sort(
        (a, b) =>
          compareText(a.connector, b.connector) ||
          (a.pin ?? 0) - (b.pin ?? 0) ||
          compareText(a.elementId, b.elementId),
      ),
    ]);
}

/** The map for the game program as a sheet: by board address what each point drives or reads, and how. */
export function composeProgramMap(line: LineResult, options: SheetOptions): SheetDocument {
  const { language } = options;
  const words: Say = (choose) => say(language, choose);
  const points = programMap(line.machine);
  const version = textHash(programMapText(points)).slice(0, VERSION_DIGITS);
  const boards = byBoard(points);
  const rows = boards.flatMap(([boardId, own]): TableRow[] => [
    {
      kind: "group",
      text: `${addressText(own[0] ?? null, language)} · ${itemName(line, boardId, language)}`,
      detail: own.some((p) => p.terminated)
        ? `${boardId} · ${say(language, (w) => w.machine.map.terminated, " · ")}`
        : boardId,
    },
    ...own.map((point): TableRow => ({ kind: "row", cells: cellsOf(line, point, language) })),
  ]);
  return composeMachineListing(line, options, {
    kind: "program-map",
    paper: "a4-landscape",
    facts: [
      say(language, (w) => w.machine.map.version(version), " · "),
      say(language, (w) => w.machine.points(points.length), " · "),
    ],
    blocks: (widthMm) => {
      const filled = filledColumns(columnsOf(words), rows);
      return [
        paragraph(
          words((w) => `${w.machine.map.hint} ${w.machine.map.versionRule}`),
          widthMm,
          TEXT.small,
        ),
        ...table(
          filled.columns,
          filled.rows,
          widthMm,
          words((w) => w.common.continued),
        ),
      ];
    },
    grids: [mapGrid(line, version, boards, language)],
  });
}

function addressText(point: ProgramPoint | null, language: SheetLanguage): string {
  const address = point?.address ?? null;
  return say(
    language,
    (w) => (address === null ? w.machine.map.noAddress : w.machine.map.addressOf(String(address))),
    " · ",
  );
}

function columnsOf(words: Say): TableColumn[] {
  const right = { align: "end", whole: true } as const;
  return [
    { header: words((w) => w.machine.map.point), weight: "bold", whole: true },
    { header: words((w) => w.machine.map.control) },
    { header: words((w) => w.machine.map.kind), whole: true },
    { ...right, header: words((w) => w.machine.map.number), weight: "bold" },
    { header: words((w) => w.machine.map.device), grow: true },
    { header: words((w) => w.machine.map.id), heightMm: TEXT.small },
    { header: words((w) => w.machine.map.polarity), whole: true },
    { header: words((w) => w.machine.map.rest), whole: true },
    { ...right, header: words((w) => w.machine.map.pulse) },
    { ...right, header: words((w) => w.machine.map.repeat) },
    { ...right, header: words((w) => w.machine.map.hold) },
    { ...right, header: words((w) => w.machine.map.timeout) },
    { ...right, header: words((w) => w.machine.map.volts) },
  ];
}

const msText = (ms: number | null): string => (ms === null ? "" : shortNumber(ms, 1));

/** Where a point is on its board: `j4.7`. */
const localPoint = ({ connector, pin, pointId }: ProgramPoint): string =>
  connector === "" ? pointId.slice(pointId.indexOf(":") + 1) : `${connector}.${pin ?? ""}`;

function cellsOf(line: LineResult, point: ProgramPoint, language: SheetLanguage): readonly string[] {
  const rest = point.closedAtRest;
  const hold = [
    msText(point.holdMs),
    point.holdDutyPct === null ? "" : `${shortNumber(point.holdDutyPct, 1)} %`,
  ];
  const acts = point.acts === "" ? "" : `, ${point.acts}`;
  const through =
    point.through.length === 0
      ? ""
      : `; ${say(language, (w) => w.machine.map.through(point.through.join(", ")), " · ")}`;
  return [
    localPoint(point),
    point.control,
    say(language, (w) => w.machine.map.kinds[point.kind]),
    point.number === null ? "" : String(point.number),
    `${itemName(line, point.deviceId, language)}${acts}`,
    `${point.deviceId}${through}`,
    say(language, (w) => w.machine.map.polarities[point.polarity]),
    rest === null ? "" : say(language, (w) => (rest ? w.machine.map.closed : w.machine.map.open)),
    msText(point.pulseMs),
    msText(point.repeatMs),
    hold.filter((t) => t !== "").join(", "),
    msText(point.timeoutMs),
    point.supplyV === null ? "" : shortNumber(point.supplyV, 1),
  ];
}

function mapGrid(
  line: LineResult,
  version: string,
  boards: readonly (readonly [string, readonly ProgramPoint[]])[],
  language: SheetLanguage,
): Grid {
  const own = language === "both" ? "en" : language;
  const m = sheetWords(own).machine.map;
  return {
    name: `${m.version(version)}`,
    header: [
      m.address,
      m.board,
      m.point,
      m.control,
      m.kind,
      m.number,
      m.device,
      m.id,
      m.acts,
      m.polarity,
      m.rest,
      m.pulse,
      m.repeat,
      m.holdMs,
      m.holdPct,
      m.timeout,
      m.volts,
      m.throughBoards,
    ],
    rows: boards.flatMap(([boardId, points]) =>
      points.map((p) => [
        p.address ?? "",
        boardId,
        localPoint(p),
        p.control,
        m.kinds[p.kind],
        p.number ?? "",
        itemName(line, p.deviceId, own),
        p.elementId,
        p.acts,
        m.polarities[p.polarity],
        p.closedAtRest === null ? "" : p.closedAtRest ? m.closed : m.open,
        p.pulseMs ?? "",
        p.repeatMs ?? "",
        p.holdMs ?? "",
        p.holdDutyPct ?? "",
        p.timeoutMs ?? "",
        p.supplyV ?? "",
        p.through.join(" "),
      ]),
    ),
  };
}
