import type { StuffingStage } from "@pinwright/engine";
import { type BoardPicture, boardScaleText, drawBoard } from "../board-picture/board-picture.ts";
import { markText, partName } from "../board-picture/board-texts.ts";
import { group, TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import { shortMm } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { type TableColumn, type TableRow, TICK, table } from "../compose/table.ts";
import type { Guide } from "./stuffing-guide.ts";

interface Room {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A picture takes what the lists leave of its page, but no more than this; with less than the least it goes overleaf. */
const PICTURE_MM = { least: 40, most: 150 } as const;
/** Share of the scale that a page of its own allows, below which a picture goes overleaf. */
const LEAST_SHARE = 0.65;
/** White below a picture. */
const BELOW_MM = 2;

const heightOf = (blocks: readonly Block[]): number => blocks.reduce((sum, block) => sum + block.heightMm, 0);

/**
 * The picture of a stage, or of the whole board, in the room that is left for it with its caption; when that is little,
 * at its least height on the next page.
 */
function pictureBlocks(
  guide: Guide,
  stage: StuffingStage | null,
  widthMm: number,
  roomMm: number,
): readonly Block[] {
  const { line, plan, options } = guide;
  const { language } = options;
  const captionOf = (scale: string): Block => {
    const text = say(language, (w) =>
      stage === null ? w.boards.guide.doneHint(scale) : w.boards.guide.picture(scale),
    );
    return paragraph(text, widthMm, TEXT.small);
  };
  const leftMm = roomMm - captionOf("1.25:1").heightMm - BELOW_MM - 0.1;
  const drawn = (heightMm: number): BoardPicture | null =>
    drawBoard(line.machine, plan, stage?.number ?? null, { widthMm, heightMm });
  const full = drawn(PICTURE_MM.most);
  const here = leftMm < PICTURE_MM.least ? null : drawn(Math.min(PICTURE_MM.most, leftMm));
  const picture = here !== null && here.scale >= LEAST_SHARE * (full?.scale ?? 0) ? here : full;
  if (picture === null) return [];
  const left = Math.max(0, (widthMm - picture.widthMm) / 2);
  const told = picture.balloons.map((b) => `(${b.number}) ${b.lines.map((l) => l.text).join(" ")}`);
  const noRoom = say(language, (w) => w.boards.guide.noRoom, " · ");
  return [
    { ...captionOf(boardScaleText(picture.scale)), keepMm: picture.heightMm },
    { heightMm: picture.heightMm, marks: [group(picture.marks, left, 0)] },
    ...(told.length === 0 ? [] : [paragraph(`${noRoom}: ${told.join(", ")}`, widthMm, TEXT.small)]),
    gap(BELOW_MM),
  ];
}

/** First page: the stages with their benches, what is masked for the bath, and the board when it is done. */
export function overviewBlocks(guide: Guide, { widthMm, heightMm }: Room): readonly Block[] {
  const { plan, options } = guide;
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const columns: readonly TableColumn[] = [
    { header: "", weight: "bold", heightMm: TEXT.large, whole: true },
    { header: words((w) => w.boards.guide.bench), align: "end", whole: true },
    { header: words((w) => w.boards.guide.stages), grow: true, detail: true },
    { header: words((w) => w.boards.guide.count), align: "end", whole: true },
    { header: words((w) => w.boards.guide.seconds), align: "end", whole: true },
  ];
  const rows = plan.stages.map(
    (stage): TableRow => ({
      kind: "row",
      cells: [
        String(stage.number),
        String(stage.bench),
        stageText(guide, stage, "\n"),
        String(stage.references.length),
        stage.seconds.toFixed(0),
      ],
    }),
  );
  const stages = [
    ...table(
      columns,
      rows,
      widthMm,
      words((w) => w.common.continued),
    ),
    gap(3),
    ...bathBlocks(guide, widthMm),
  ];
  const title = {
    ...paragraph(
      words((w) => w.boards.guide.done),
      widthMm,
      TEXT.large,
      true,
    ),
    keepMm: 0,
  };
  const picture = pictureBlocks(guide, null, widthMm, heightMm - heightOf(stages) - title.heightMm);
  return [...stages, title, ...picture];
}

function stageText({ plan, options }: Guide, { when, upToMm }: StuffingStage, joint = " · "): string {
  return say(
    options.language,
    ({ boards: { guide } }) => {
      const height = upToMm === null ? guide.any : guide.upTo(shortMm(upToMm));
      if (when === "after-wash") return `${guide.whenLate}: ${height}`;
      return plan.way === "bath" ? `${guide.whenBath}: ${height}` : height;
    },
    joint,
  );
}

/** What is masked before the bath, and what is looked at from the side after it. */
function bathBlocks({ plan, placements, options }: Guide, widthMm: number): readonly Block[] {
  if (plan.way !== "bath") return [];
  const { language } = options;
  const rows = plan.order.flatMap((reference) => placements.get(reference) ?? []);
  const masked = rows.filter((row) => row.masks > 0);
  const hidden = rows.filter((row) => row.hidden && !row.after_wash).map((row) => row.reference);
  const masks = masked.map((row) => `${row.reference} × ${row.masks}`);
  const list = (title: string, texts: readonly string[]): readonly Block[] =>
    texts.length === 0 ? [] : [paragraph(`${title}: ${texts.join(", ")}`, widthMm, TEXT.normal, true)];
  return [
    ...list(
      say(language, (w) => w.boards.guide.masks, " · "),
      masks,
    ),
    ...list(
      say(language, (w) => w.boards.guide.hidden, " · "),
      hidden,
    ),
    gap(1),
  ];
}

/** A page of a stage: its picture, its parts box by box, and what follows. */
export function stageBlocks(
  guide: Guide,
  stage: StuffingStage,
  { widthMm, heightMm }: Room,
): readonly Block[] {
  const rest = [...partBlocks(guide, stage, widthMm), gap(2), ...nextBlocks(guide, stage, widthMm)];
  const note = paragraph(stageText(guide, stage), widthMm, TEXT.large, true);
  const picture = pictureBlocks(guide, stage, widthMm, heightMm - heightOf(rest) - note.heightMm);
  return [note, ...picture, ...rest];
}

/** The parts of a stage, those of one box and one way round in a line, in the order in which they go in. */
function partBlocks(guide: Guide, { references }: StuffingStage, widthMm: number): readonly Block[] {
  const { plan, placements, parts, options } = guide;
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const groups: { readonly part: string; readonly mark: string; readonly references: string[] }[] = [];
  for (const reference of references) {
    const row = placements.get(reference);
    if (row === undefined) continue;
    const mark = markText(row, language);
    const open = groups.at(-1);
    if (open !== undefined && open.part === row.part && open.mark === mark) open.references.push(reference);
    else groups.push({ part: row.part, mark, references: [reference] });
  }
  const columns: readonly TableColumn[] = [
    { header: words((w) => w.common.done), align: "middle", whole: true },
    { header: words((w) => w.boards.guide.box), heightMm: TEXT.head, weight: "bold", whole: true },
    {
      header: words((w) => w.boards.guide.count),
      heightMm: TEXT.head,
      weight: "bold",
      align: "end",
      whole: true,
    },
    { header: words((w) => w.boards.guide.part), grow: true },
    { header: words((w) => w.boards.guide.value) },
    { header: words((w) => w.boards.guide.references), weight: "bold", grow: true },
    { header: words((w) => w.boards.guide.mark) },
  ];
  const rows = groups.map(
    ({ part, mark, references: own }): TableRow => ({
      kind: "row",
      cells: [
        TICK,
        String(plan.boxes.indexOf(part) + 1),
        String(own.length),
        partName(parts, part, language),
        parts.get(part)?.value ?? "",
        own.join(" "),
        mark,
      ],
    }),
  );
  return table(
    columns,
    rows,
    widthMm,
    words((w) => w.common.continued),
  );
}

/** What is done with the board after a stage. */
function nextBlocks(guide: Guide, stage: StuffingStage, widthMm: number): readonly Block[] {
  const { plan, options } = guide;
  const last = plan.stages.findLast((s) => s.when === "before-bath");
  const isBath = plan.way === "bath" && stage.when === "before-bath";
  const name = isBath ? (stage === last ? "lastBath" : "toBath") : "byHand";
  const text = say(options.language, (w) => w.boards.guide[name]);
  const late = stage.when === "after-wash" ? [say(options.language, (w) => w.boards.guide.afterWash)] : [];
  return [
    ...late.map((t) => paragraph(t, widthMm, TEXT.normal, true)),
    paragraph(text, widthMm, TEXT.normal, true),
    ...(stage === last ? bathBlocks(guide, widthMm) : []),
  ];
}
