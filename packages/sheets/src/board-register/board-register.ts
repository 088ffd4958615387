import type { BoardItem, BoardRegisterRow, LineResult, Side } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { panelSideName } from "../assembly/step-texts.ts";
import { boardName } from "../board-picture/board-texts.ts";
import { assemble, type SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { listingBodies } from "../compose/listing.ts";
import { shortMm } from "../compose/number.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { assemblyIdentity, assemblySheetName } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { mapBlocks } from "./board-map.ts";

/** A board with its number in the register and on the map. */
interface NumberedBoard {
  readonly number: number;
  readonly item: BoardItem;
}

/** A side of a panel with the boards on it. */
export interface BoardSide {
  readonly panelId: string;
  readonly side: Side;
  readonly boards: readonly NumberedBoard[];
}

/** The boards of the machine, panel side by panel side in code-point order, counted through from the top of each. */
function boardSides(line: LineResult): readonly BoardSide[] {
  const items = [...line.machine.items.values()].flatMap((item) => (item.kind === "board" ? [item] : []));
  const keyOf = (item: BoardItem): string => `${item.place.panelId} ${item.place.side}`;
  const keys = [...new Set(items.map(keyOf))].sort(compareText);
  let number = 0;
  return keys.flatMap((key) => {
    const own = items
      .filter((item) => keyOf(item) === key)
      .sort((a, b) => b.place.yMm - a.place.yMm || a.place.xMm - b.place.xMm || compareText(a.id, b.id));
    const [first] = own;
    if (first === undefined) return [];
    const { panelId, side } = first.place;
    return [{ panelId, side, boards: own.map((item) => ({ number: ++number, item })) }];
  });
}

/** Every board of the machine: the types, where each board is, and a map of each panel side. */
export function* composeBoardRegister(
  line: LineResult,
  options: SheetOptions,
): Generator<SheetDocument, void> {
  if (line.boards.register.length === 0) return;
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const { machine } = line.machine.book;
  const sides = boardSides(line);
  const identity = assemblyIdentity(line, { kind: "board-register", name: "", letters: "" }, options);
  const bodies = listingBodies({
    identity,
    language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: "",
      title: say(language, (w) => w.kinds["board-register"]),
      subtitle: label(language, { en: machine.label, zh: machine.label_zh }, machine.id),
      facts: [words((w) => w.boards.boards(sides.reduce((sum, side) => sum + side.boards.length, 0)))],
    },
    cautions: [],
    blocks: (widthMm) => [
      ...typeBlocks(line, sides, language, widthMm),
      gap(4),
      ...placeBlocks(line, sides, language, widthMm),
      gap(4),
      ...sides.flatMap((side) => mapBlocks(line, side, language, widthMm)),
    ],
  });
  yield assemble(identity, language, bodies, grids(line, sides, language));
}

/** Names of the sheets that `composeBoardRegister` makes. */
export const boardRegisterNames = (line: LineResult, language: SheetLanguage): readonly string[] =>
  line.boards.register.length === 0 ? [] : [assemblySheetName("board-register", "", language)];

/** Numbers of the boards of a type. */
const numbersOf = (sides: readonly BoardSide[], typeId: string): string =>
  sides
    .flatMap(({ boards }) => boards.filter(({ item }) => item.type.id === typeId).map(({ number }) => number))
    .join(" ");

function typeBlocks(
  line: LineResult,
  sides: readonly BoardSide[],
  language: SheetLanguage,
  widthMm: number,
): readonly Block[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const columns: readonly TableColumn[] = [
    { header: words((w) => w.boards.type), grow: true, detail: true, weight: "bold" },
    { header: words((w) => w.boards.revision), whole: true },
    { header: words((w) => w.boards.register.purpose), heightMm: TEXT.small, grow: true },
    { header: words((w) => w.boards.register.count), align: "end", weight: "bold", whole: true },
    { header: words((w) => w.boards.register.number) },
    { header: words((w) => w.boards.register.parts), align: "end", whole: true },
    { header: words((w) => w.boards.register.joints), align: "end", whole: true },
    { header: words((w) => w.boards.register.comes), heightMm: TEXT.small },
  ];
  const rows = line.boards.register.map(
    (row): TableRow => ({
      kind: "row",
      cells: [
        `${boardName(row, language, " · ")}\n${row.typeId}`,
        row.revision,
        label(language, row.purposes, ""),
        String(row.boardIds.length),
        row.boardIds.length === 0 ? words((w) => w.boards.register.none) : numbersOf(sides, row.typeId),
        countText(row, row.placements),
        countText(row, row.joints),
        words((w) => w.boards.register.comesAs[row.comes]),
      ],
    }),
  );
  const title = words((w) => w.boards.register.types);
  const hint = say(language, (w) => w.boards.register.hint);
  return [
    { ...paragraph(title, widthMm, TEXT.large, true), keepMm: 12 },
    { ...paragraph(hint, widthMm, TEXT.small), keepMm: 12 },
    ...table(
      columns,
      rows,
      widthMm,
      words((w) => w.common.continued),
    ),
  ];
}

/** Parts and joints are known of what is stuffed here. */
const countText = ({ comes }: BoardRegisterRow, count: number): string =>
  comes === "stuffed" ? String(count) : "—";

function placeBlocks(
  line: LineResult,
  sides: readonly BoardSide[],
  language: SheetLanguage,
  widthMm: number,
): readonly Block[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const columns: readonly TableColumn[] = [
    { header: words((w) => w.boards.register.number), heightMm: TEXT.large, weight: "bold", whole: true },
    { header: words((w) => w.boards.register.board), grow: true, detail: true },
    { header: words((w) => w.boards.type) },
    { header: words((w) => w.boards.register.address), align: "end", whole: true },
    { header: words((w) => w.boards.register.place), align: "end", whole: true },
  ];
  const rows = sides.flatMap((side): readonly TableRow[] => [
    { kind: "group", text: panelSideName(line, side.panelId, side.side, language) },
    ...side.boards.map(
      ({ number, item }): TableRow => ({
        kind: "row",
        cells: [
          String(number),
          `${label(language, item.labels, item.id, " · ")}\n${item.id}`,
          item.type.id,
          item.address === null ? "" : String(item.address),
          `${shortMm(item.place.xMm)}, ${shortMm(item.place.yMm)}`,
        ],
      }),
    ),
  ]);
  const title = words((w) => w.boards.register.places);
  return [
    { ...paragraph(title, widthMm, TEXT.large, true), keepMm: 12 },
    ...table(
      columns,
      rows,
      widthMm,
      words((w) => w.common.continued),
    ),
  ];
}

function grids(line: LineResult, sides: readonly BoardSide[], language: SheetLanguage): readonly Grid[] {
  const own = language === "both" ? "en" : language;
  const { register: w, type, revision } = sheetWords(own).boards;
  return [
    {
      name: w.types,
      header: ["id", type, revision, w.purpose, w.count, w.number, w.parts, w.joints, w.comes],
      rows: line.boards.register.map((row) => [
        row.typeId,
        boardName(row, own),
        row.revision,
        label(own, row.purposes, ""),
        row.boardIds.length,
        numbersOf(sides, row.typeId),
        row.placements,
        row.joints,
        w.comesAs[row.comes],
      ]),
    },
    {
      name: w.places,
      header: [w.number, "id", w.board, type, w.panel, w.address, "x mm", "y mm"],
      rows: sides.flatMap((side) =>
        side.boards.map(({ number, item }) => [
          number,
          item.id,
          label(own, item.labels, item.id),
          item.type.id,
          panelSideName(line, side.panelId, side.side, own),
          item.address ?? "",
          item.place.xMm,
          item.place.yMm,
        ]),
      ),
    },
  ];
}
