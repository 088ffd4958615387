import type { LineResult, WorkStep } from "@pinwright/engine";
import { SideStates } from "../assembly/side-state.ts";
import { stepCautions } from "../assembly/step-cautions.ts";
import { pictureSides, stepFasteners, stepSlug } from "../assembly/step-facts.ts";
import { panelSideName, stepBadge, stepTitle } from "../assembly/step-texts.ts";
import { cautionBlock } from "../compose/caution.ts";
import { assemble, type PageBody, type SheetDocument } from "../compose/document.ts";
import { box, group, TEXT } from "../compose/draw.ts";
import { type Block, beside, flow, gap } from "../compose/flow.ts";
import { headingBlock, roomOf } from "../compose/listing.ts";
import type { Box, Mark } from "../compose/mark.ts";
import { shortNumber } from "../compose/number.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { type AssemblySheet, assemblyIdentity } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { benchBlocks, doneBlock, factBlocks, partBlocks, screwBlocks, wiringBlocks } from "./card-blocks.ts";
import { type Picture, pictureBlock, regionAspect } from "./picture.ts";

const PAPER = PAPERS["a4-portrait"];
/** Least and most height of the pictures of a card together; they take what the rest leaves of the page. */
const PICTURE_MM = { least: 70, most: 150 } as const;

/** A picture this much higher than wide stands beside the lists, which then have the rest of the width. */
const HIGH = 1.25;
const BESIDE_MM = 92;
const GUTTER_MM = 4;

const CARDS: AssemblySheet = { kind: "step-cards", name: "", letters: "" };

/** All steps as a booklet, a page a step; a step that says more goes on on the next. */
export function composeStepCards(line: LineResult, options: SheetOptions): SheetDocument {
  return cards(line, line.steps.steps, CARDS, options);
}

/** One step as its card prints. */
export function composeStepCard(line: LineResult, step: WorkStep, options: SheetOptions): SheetDocument {
  const sheet: AssemblySheet = {
    kind: "step-cards",
    name: stepSlug(step.id),
    letters: `S${step.number}`,
    title: stepTitle(step, options.language),
  };
  return cards(line, [step], sheet, options);
}

function cards(
  line: LineResult,
  steps: readonly WorkStep[],
  sheet: AssemblySheet,
  options: SheetOptions,
): SheetDocument {
  const states = new SideStates(line);
  const bodies: PageBody[] = [];
  for (const step of steps)
    bodies.push(
      ...pagesOf(line, step, states, options, bodies.length).map((marks) => ({ paper: PAPER, marks })),
    );
  return assemble(assemblyIdentity(line, sheet, options), options.language, bodies, []);
}

function headingOf(line: LineResult, step: WorkStep, options: SheetOptions, widthMm: number): Block {
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const place =
    step.kind === "bench" || step.panelId === null
      ? words((w) => (step.kind === "bench" ? w.steps.card.bench : ""))
      : panelSideName(line, step.panelId, step.side, language);
  const count = stepFasteners(line, step).length;
  return headingBlock(
    {
      badge: stepBadge(step),
      title: stepTitle(step, language),
      subtitle: place,
      facts: [
        words((w) => w.steps.card.minutes(shortNumber(step.seconds / 60, 1))),
        ...(count === 0 ? [] : [words((w) => w.steps.screws(count))]),
        ...(step.times > 1 ? [`× ${step.times}`] : []),
      ],
    },
    widthMm,
  );
}

function pagesOf(
  line: LineResult,
  step: WorkStep,
  states: SideStates,
  options: SheetOptions,
  first: number,
): Mark[][] {
  const { language } = options;
  const { widthMm } = roomOf(PAPER, first);
  const heading = headingOf(line, step, options, widthMm);
  const cautions = stepCautions(line, step, language);
  const before: Block[] = [
    ...(cautions.length === 0 ? [] : [cautionBlock([...cautions], language, widthMm), gap(2)]),
    ...factBlocks(line, step, language, widthMm),
  ];
  const card: Card = { line, step, states, options, first, heading, before };
  const pages = besidePages(card) ?? stackedPages(card) ?? overleafPages(card);
  return pages.map((marks, page) => {
    const room = roomOf(PAPER, first + page);
    return [group(heading.marks, room.xMm, room.yMm), ...marks];
  });
}

/** What the pages of a card are made of. */
interface Card {
  readonly line: LineResult;
  readonly step: WorkStep;
  readonly states: SideStates;
  readonly options: SheetOptions;
  /** Page of the booklet that it begins on. */
  readonly first: number;
  readonly heading: Block;
  /** Cautions and what must be there before. */
  readonly before: readonly Block[];
}

/** Screws, parts and bench lines in a column of this width. */
function lists({ line, step, options: { language } }: Card, widthMm: number): Block[] {
  return [
    ...wiringBlocks(line, step, language, widthMm),
    ...screwBlocks(line, step, language, widthMm),
    ...partBlocks(line, step, language, widthMm),
    ...benchBlocks(line, step, language, widthMm),
  ];
}

const heightOf = (blocks: readonly Block[]): number => blocks.reduce((sum, b) => sum + b.heightMm, 0);

/** The part of a page of a card under its heading. */
function bodyOf({ heading, first }: Card, page: number): Box {
  const room = roomOf(PAPER, first + page);
  return box(room.xMm, room.yMm + heading.heightMm, room.widthMm, room.heightMm - heading.heightMm);
}

function picturesOf(card: Card, widthMm: number, mostMm: number, onlyClear: boolean): readonly Picture[] {
  const { line, step, states, options } = card;
  return pictureSides(line, step).flatMap((side) => {
    const name = panelSideName(line, side.panelId, side.side, options.language);
    return pictureBlock(line, states.at(side), name, options, widthMm, mostMm, onlyClear) ?? [];
  });
}

/** Pictures over the lists, as high as the lists leave room for. Null: they would not tell the holes apart. */
function stackedPages(card: Card): Mark[][] | null {
  const { widthMm, heightMm } = bodyOf(card, 0);
  const after = [...lists(card, widthMm), doneBlock(card.options.language, widthMm)];
  const sides = pictureSides(card.line, card.step).length;
  const rows = Math.max(1, Math.ceil(sides / 2));
  const leftMm = (heightMm - heightOf(card.before) - heightOf(after) - 0.5) / rows;
  if (sides > 0 && leftMm < PICTURE_MM.least) return null;
  // Two sides of a panel stand side by side.
  const columnMm = sides < 2 ? widthMm : (widthMm - GUTTER_MM) / 2;
  const pictures = picturesOf(card, columnMm, Math.min(PICTURE_MM.most, leftMm), true);
  if (pictures.some((p) => !p.isClear)) return null;
  return flow([...card.before, ...paired(pictures, columnMm), ...after], (page) => bodyOf(card, page));
}

/** The lists first, and each picture on a page of its own after them. */
function overleafPages(card: Card): Mark[][] {
  const { language } = card.options;
  const { widthMm } = bodyOf(card, 0);
  const note = say(language, (w) => w.steps.card.overleaf);
  const front = flow(
    [
      ...card.before,
      paragraph(note, widthMm, TEXT.normal, true),
      ...lists(card, widthMm),
      doneBlock(language, widthMm),
    ],
    (page) => bodyOf(card, page),
  );
  const { heightMm } = bodyOf(card, front.length);
  const pictures = picturesOf(card, widthMm, heightMm, false);
  return [
    ...front,
    ...pictures.map((picture, i) => flow([picture], () => bodyOf(card, front.length + i)).flat()),
  ];
}

/** Pictures in two columns; one alone has the whole width. */
function paired(pictures: readonly Picture[], columnMm: number): readonly Block[] {
  if (pictures.length < 2) return pictures;
  return pictures.flatMap((left, i) =>
    i % 2 === 1 ? [] : [beside(left, pictures[i + 1] ?? gap(0), columnMm + GUTTER_MM)],
  );
}

/** Where a high part of a panel is shown, it stands beside the lists. Null: it does not, or they are too long. */
function besidePages(card: Card): Mark[][] | null {
  const { line, step, states } = card;
  const sides = pictureSides(line, step);
  const [side] = sides;
  if (side === undefined || sides.length > 1 || regionAspect(line, states.at(side)) < HIGH) return null;
  const body = bodyOf(card, 0);
  const done = doneBlock(card.options.language, body.widthMm);
  const roomMm = body.heightMm - heightOf(card.before) - done.heightMm - 1;
  const column = body.widthMm - BESIDE_MM - GUTTER_MM;
  const own = lists(card, column);
  if (heightOf(own) > roomMm) return null;
  const [picture] = picturesOf(card, BESIDE_MM, roomMm, true);
  if (picture === undefined || !picture.isClear) return null;
  const top = body.yMm + heightOf(card.before);
  const left = body.xMm + BESIDE_MM + GUTTER_MM;
  return [
    [
      ...flow(card.before, () => body).flat(),
      group(picture.marks, body.xMm, top),
      ...flow(own, () => box(left, top, column, roomMm + 1)).flat(),
      group(done.marks, body.xMm, body.yMm + body.heightMm - done.heightMm),
    ],
  ];
}
