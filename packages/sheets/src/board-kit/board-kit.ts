import { type BoardKit, type BoardRegisterRow, boardKit, type LineResult } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { boardCount, boardName, boardSlug, stuffedTypes } from "../board-picture/board-texts.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { shortNumber } from "../compose/number.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { type TableColumn, type TableRow, TICK, table } from "../compose/table.ts";
import { assemblyIdentity, assemblySheetName } from "../identity.ts";
import type { SheetOptions } from "../options.ts";

/** What is laid out for the boards of each type that so many machines have, box by box. */
export function* composeBoardKits(line: LineResult, options: SheetOptions): Generator<SheetDocument, void> {
  for (const row of stuffedTypes(line)) yield composeKit(line, row, options);
}

/** Names of the sheets that `composeBoardKits` makes. */
export const boardKitNames = (line: LineResult, language: SheetLanguage): readonly string[] =>
  stuffedTypes(line).map((row) => assemblySheetName("board-kit", boardSlug(row.typeId), language));

function composeKit(line: LineResult, row: BoardRegisterRow, options: SheetOptions): SheetDocument {
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const kit = boardKit(line.machine, row.typeId, boardCount(row, options.machines));
  const title = boardName(row, language);
  return composeListing({
    identity: assemblyIdentity(
      line,
      {
        kind: "board-kit",
        name: boardSlug(row.typeId),
        letters: boardSlug(row.typeId).toUpperCase(),
        title,
      },
      options,
    ),
    language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: "",
      title: say(language, (w) => w.kinds["board-kit"]),
      subtitle: `${boardName(row, language, " · ")} · ${row.typeId}`,
      facts: [
        words((w) => w.boards.kit.batch(kit.boards)),
        words((w) => w.boards.forMachines(options.machines)),
        `${words((w) => w.boards.revision)} ${row.revision}`,
      ],
    },
    cautions: [],
    blocks: (widthMm) => kitBlocks(kit, language, widthMm),
    grids: [kitGrid(kit, language)],
  });
}

type Line = BoardKit["lines"][number];

const boxText = ({ box }: Line): string => (box === 0 ? "" : String(box));

function packText({ pack }: Line, language: SheetLanguage): string {
  return say(
    language,
    ({ boards: { kit } }) => (pack === null ? kit.noPack : kit.pack(pack.packs, shortNumber(pack.size, 3))),
    " · ",
  );
}

function kitBlocks(kit: BoardKit, language: SheetLanguage, widthMm: number): readonly Block[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const big = { heightMm: TEXT.head, weight: "bold", whole: true } as const;
  const columns: readonly TableColumn[] = [
    { header: words((w) => w.common.done), align: "middle", whole: true },
    { header: words((w) => w.boards.guide.box), ...big },
    { header: words((w) => w.boards.kit.lay), align: "end", ...big },
    { header: words((w) => w.boards.guide.part), grow: true, detail: true },
    { header: words((w) => w.boards.guide.value) },
    { header: words((w) => w.boards.kit.perBoard), align: "end", whole: true },
    { header: words((w) => w.boards.kit.needed), align: "end", whole: true },
    { header: words((w) => w.boards.kit.extra), align: "end", whole: true },
    { header: words((w) => w.boards.kit.packs), align: "end" },
  ];
  const rows = kit.lines.map(
    (line): TableRow => ({
      kind: "row",
      cells: [
        TICK,
        boxText(line),
        String(line.total),
        `${label(language, line.labels, line.partId, " · ")}\n${line.partId}`,
        line.value,
        String(line.perBoard),
        String(line.needed),
        String(line.extra),
        packText(line, language),
      ],
    }),
  );
  return [
    paragraph(
      say(language, (w) => w.boards.kit.hint),
      widthMm,
      TEXT.small,
    ),
    gap(1),
    ...table(
      columns,
      rows,
      widthMm,
      words((w) => w.common.continued),
    ),
  ];
}

function kitGrid(kit: BoardKit, language: SheetLanguage): Grid {
  const own = language === "both" ? "en" : language;
  const { kit: words, guide } = sheetWords(own).boards;
  return {
    name: words.lay,
    header: [
      guide.box,
      "id",
      guide.part,
      guide.value,
      guide.references,
      words.perBoard,
      words.needed,
      words.extra,
      words.lay,
      words.packs,
    ],
    rows: kit.lines.map((line) => [
      line.box,
      line.partId,
      label(own, line.labels, line.partId),
      line.value,
      line.references.join(" "),
      line.perBoard,
      line.needed,
      line.extra,
      line.total,
      packText(line, own),
    ]),
  };
}
