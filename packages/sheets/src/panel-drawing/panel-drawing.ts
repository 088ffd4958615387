import type { LineResult, PanelCut } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { fittingScale, scaleText } from "../assembly/panel-view.ts";
import { stepSlug } from "../assembly/step-facts.ts";
import { panelSideName } from "../assembly/step-texts.ts";
import { bodyHash } from "../compose/body-hash.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing, type Heading, headingBlock, roomOf } from "../compose/listing.ts";
import { shortNumber } from "../compose/number.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { type TableRow, table } from "../compose/table.ts";
import { panelName, sizeMm } from "../cutting-plan/panel-facts.ts";
import { composeRoll } from "../drawing/roll.ts";
import { assemblyIdentity, assemblySheetName } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { blankView, layerOf, type MadeCut, type MadeSide, madeSides } from "./made-cuts.ts";
import { SCENE_ROOM_MM, sideScene } from "./side-scene.ts";

/** A drawing lower than this is better on a page of its own. */
const LEAST_DRAWING_MM = 110;
/** The scale under a drawing, with white. */
const CAPTION_MM = 6;

/** For each sawn panel: its sides with their holes and slots, and the same at true size for the router. */
export function* composePanelDrawings(
  line: LineResult,
  options: SheetOptions,
): Generator<SheetDocument, void> {
  for (const cut of line.panels.cuts) {
    const sides = madeSides(line, cut);
    if (sides.length === 0) continue;
    yield composeDrawing(line, cut, sides, options);
    for (const side of sides) yield composeTrue(line, side, options);
  }
}

/** Names of the sheets that `composePanelDrawings` makes. */
export function panelDrawingNames(line: LineResult, language: SheetLanguage): readonly string[] {
  return line.panels.cuts.flatMap((cut) => {
    const sides = madeSides(line, cut);
    const slug = stepSlug(cut.panelId);
    return sides.length === 0
      ? []
      : [
          assemblySheetName("panel-drawing", slug, language),
          ...sides.map(({ side }) => assemblySheetName("panel-drawing", `${slug}-${side}-true`, language)),
        ];
  });
}

type Words = (choose: Parameters<typeof say>[1]) => string;
const wordsOf =
  (language: SheetLanguage): Words =>
  (choose) =>
    say(language, choose, " · ");

const blankText = ({ widthMm, heightMm, thicknessMm }: PanelCut, words: Words): string =>
  `${words((w) => w.panels.drawing.blank)} ${words((w) => w.panels.drawing.size(sizeMm(widthMm), sizeMm(heightMm), shortNumber(thicknessMm, 2)))}`;

/** What has to be known before the first hole. */
function notesOf(line: LineResult, cut: PanelCut, words: Words, widthMm: number): readonly Block[] {
  const edge = line.machine.panels.get(cut.panelId)?.edge ?? "";
  const { drawnWidthMm, drawnHeightMm } = cut;
  const follows = drawnWidthMm !== cut.widthMm || drawnHeightMm !== cut.heightMm;
  return [
    paragraph(blankText(cut, words), widthMm, TEXT.normal, true),
    ...(follows
      ? [
          paragraph(
            words((w) => w.panels.drawing.drawn(sizeMm(drawnWidthMm), sizeMm(drawnHeightMm))),
            widthMm,
            TEXT.small,
          ),
        ]
      : []),
    ...(edge === ""
      ? []
      : [paragraph(`${words((w) => w.panels.drawing.edge)}: ${edge}`, widthMm, TEXT.normal)]),
  ];
}

function composeDrawing(
  line: LineResult,
  cut: PanelCut,
  sides: readonly MadeSide[],
  options: SheetOptions,
): SheetDocument {
  const { language } = options;
  const words = wordsOf(language);
  const title = panelName(line, cut.panelId, language);
  const slug = stepSlug(cut.panelId);
  const heading: Heading = {
    badge: "",
    title: say(language, (w) => w.kinds["panel-drawing"]),
    subtitle: title,
    facts: [cut.panelId],
  };
  const paper = PAPERS[cut.heightMm > cut.widthMm ? "a3-portrait" : "a3-landscape"];
  const room = roomOf(paper, 0);
  const headMm = headingBlock(heading, room.widthMm).heightMm;
  const bodyMm = room.heightMm - headMm;
  const notes = notesOf(line, cut, words, room.widthMm);
  return composeListing({
    identity: assemblyIdentity(
      line,
      { kind: "panel-drawing", name: slug, letters: slug.toUpperCase(), title },
      options,
    ),
    language,
    paper,
    heading,
    cautions: [say(language, (w) => w.panels.caution.rout)],
    blocks: (widthMm) =>
      sides.flatMap((side, i) =>
        sideBlocks(line, side, i === 0 ? notes : [], { widthMm, heightMm: bodyMm }, options),
      ),
    grids: [gridOf(sides, language)],
  });
}

function sideBlocks(
  line: LineResult,
  made: MadeSide,
  notes: readonly Block[],
  room: { readonly widthMm: number; readonly heightMm: number },
  options: SheetOptions,
): readonly Block[] {
  const { language } = options;
  const words = wordsOf(language);
  const rows = cutTable(line, made, language, room.widthMm);
  const heads = [
    ...notes,
    paragraph(
      panelSideName(line, made.cut.panelId, made.side, language, " · "),
      room.widthMm,
      TEXT.large,
      true,
    ),
    paragraph(
      [
        ...(made.side === "under" ? [words((w) => w.panels.drawing.under)] : []),
        made.cuts.length === 0
          ? words((w) => w.panels.drawing.nothing)
          : words((w) => w.panels.drawing.corner),
        words((w) => w.panels.drawing.screwHoles),
      ].join(" "),
      room.widthMm,
      TEXT.normal,
    ),
  ];
  const height = (blocks: readonly Block[]): number => blocks.reduce((sum, b) => sum + b.heightMm, 0);
  const whole = room.heightMm - height(heads) - CAPTION_MM;
  const besides = whole - height(rows);
  const drawMm = besides >= LEAST_DRAWING_MM ? besides : whole;
  const extent = made.view.panelMm;
  const scale = fittingScale(extent, {
    widthMm: room.widthMm - SCENE_ROOM_MM.widthMm,
    heightMm: drawMm - SCENE_ROOM_MM.heightMm,
  });
  const view = blankView(line, made.cut, made.side, scale);
  if (view === null) return heads;
  const scene = sideScene(line, made, view, options, { edge: "BORDER", own: false });
  const caption = paragraph(
    words((w) => w.panels.plan.scale(scaleText(scale))),
    room.widthMm,
    TEXT.small,
  );
  // Heads and drawing are kept together.
  const drawing: Block = { heightMm: scene.heightMm, marks: scene.marks };
  return [
    ...heads.map((head) => ({ ...head, keepMm: scene.heightMm })),
    drawing,
    { ...caption, heightMm: CAPTION_MM - 1 },
    ...rows,
  ];
}

const turnText = (deg: number): string => (deg === 0 ? "" : `${shortNumber(deg, 1)}°`);

function cutRow(line: LineResult, made: MadeSide, cut: MadeCut, language: SheetLanguage): readonly string[] {
  const words = wordsOf(language);
  const { row } = cut;
  const takes = row.takes === null ? "" : panelName(line, row.takes, language, " · ");
  const purpose = words((w) => w.panels.drawing.purposes[row.purpose]);
  const turn = made.side === "under" ? -row.rotation_deg : row.rotation_deg;
  return [
    String(cut.number),
    takes === "" ? purpose : `${purpose}, ${words((w) => w.panels.drawing.takes(takes))}`,
    shortNumber(cut.xMm, 2),
    shortNumber(cut.yMm, 2),
    row.width_mm === null
      ? row.shape
      : `${row.shape === "circle" ? "Ø " : ""}${shortNumber(row.width_mm, 2)}`,
    row.height_mm === null ? "" : shortNumber(row.height_mm, 2),
    row.depth_mm === null ? words((w) => w.panels.drawing.through) : shortNumber(row.depth_mm, 2),
    row.shape === "circle" ? "" : turnText(turn),
    row.id,
  ];
}

function cutTable(
  line: LineResult,
  made: MadeSide,
  language: SheetLanguage,
  widthMm: number,
): readonly Block[] {
  if (made.cuts.length === 0) return [];
  const words = wordsOf(language);
  const right = { align: "end", whole: true } as const;
  return table(
    [
      { ...right, header: words((w) => w.panels.drawing.number) },
      { header: words((w) => w.panels.drawing.what), grow: true },
      { ...right, header: "x", weight: "bold" },
      { ...right, header: "y", weight: "bold" },
      { ...right, header: words((w) => w.panels.drawing.width) },
      { ...right, header: words((w) => w.panels.drawing.height) },
      { header: words((w) => w.panels.drawing.depth), align: "end" },
      { ...right, header: words((w) => w.panels.drawing.turn) },
      { header: "", heightMm: TEXT.small },
    ],
    made.cuts.map((cut): TableRow => ({ kind: "row", cells: [...cutRow(line, made, cut, language)] })),
    widthMm,
    words((w) => w.common.continued),
  );
}

function composeTrue(line: LineResult, made: MadeSide, options: SheetOptions): SheetDocument {
  const { language } = options;
  const words = wordsOf(language);
  const slug = `${stepSlug(made.cut.panelId)}-${made.side}-true`;
  const title = panelSideName(line, made.cut.panelId, made.side, language, "\n");
  const scene = sideScene(line, made, made.view, options, {
    edge: made.side === "top" ? "CUT" : "LOCATE",
    own: true,
  });
  const { widthMm, heightMm, marks, origin } = scene;
  return composeRoll({
    identity: assemblyIdentity(
      line,
      {
        kind: "panel-drawing",
        name: slug,
        letters: slug.toUpperCase(),
        type: (w) => w.panels.drawing.trueSize,
        title,
        scale: "1:1",
      },
      options,
    ),
    language,
    drawing: { widthMm, heightMm, marks, hash: bodyHash([{ widthMm, heightMm, marks }]) },
    origin,
    heading: {
      badge: "",
      title: say(language, (w) => w.panels.drawing.trueSize),
      subtitle: title,
      facts: [made.cut.panelId],
    },
    cautions: [say(language, (w) => w.panels.caution.rout)],
    texts: (columnMm) => [
      ...notesOf(line, made.cut, words, columnMm),
      ...(made.side === "under"
        ? [
            paragraph(
              words((w) => w.panels.drawing.under),
              columnMm,
              TEXT.normal,
              true,
            ),
          ]
        : []),
      paragraph(
        say(language, (w) => w.panels.drawing.layers),
        columnMm,
        TEXT.small,
      ),
    ],
  });
}

function gridOf(sides: readonly MadeSide[], language: SheetLanguage): Grid {
  const own = language === "both" ? "en" : language;
  return {
    name: sheetWords(own).kinds["panel-drawing"],
    header: ["side", "number", "purpose", "x_mm", "y_mm", "width_mm", "height_mm", "depth_mm", "layer", "id"],
    rows: sides.flatMap(({ side, cuts }) =>
      cuts.map(({ number, row, xMm, yMm }) => [
        side,
        number,
        row.purpose,
        Number(xMm.toFixed(3)),
        Number(yMm.toFixed(3)),
        row.width_mm ?? "",
        row.height_mm ?? "",
        row.depth_mm ?? sheetWords(own).panels.drawing.through,
        layerOf(row),
        row.id,
      ]),
    ),
  };
}
