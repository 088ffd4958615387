import type { LineResult, WorkStep } from "@pinwright/engine";
import { SideStates } from "../assembly/side-state.ts";
import { stepCautions } from "../assembly/step-cautions.ts";
import { stepFasteners, stepSides, stepSlug } from "../assembly/step-facts.ts";
import { panelSideName, stepBadge, stepTitle } from "../assembly/step-texts.ts";
import { cautionBlock } from "../compose/caution.ts";
import { assemble, type PageBody, type SheetDocument } from "../compose/document.ts";
import { box, group } from "../compose/draw.ts";
import { type Block, flow, gap } from "../compose/flow.ts";
import { headingBlock, roomOf } from "../compose/listing.ts";
import type { Mark } from "../compose/mark.ts";
import { shortNumber } from "../compose/number.ts";
import { PAPERS } from "../compose/paper.ts";
import { say } from "../compose/say.ts";
import { type AssemblySheet, assemblyIdentity } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { benchBlocks, doneBlock, factBlocks, partBlocks, screwBlocks, wiringBlocks } from "./card-blocks.ts";
import { pictureBlock } from "./picture.ts";

const PAPER = PAPERS["a4-portrait"];
/** Heights that are tried for the pictures of a card, until all of it is on one page. */
const PICTURES_MM = [150, 120, 95, 75, 60] as const;

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
  const after: Block[] = [
    ...wiringBlocks(line, step, language, widthMm),
    ...screwBlocks(line, step, language, widthMm),
    ...partBlocks(line, step, language, widthMm),
    ...benchBlocks(line, step, language, widthMm),
    doneBlock(language, widthMm),
  ];
  const lay = (pictures: readonly Block[]): Mark[][] =>
    flow([...before, ...pictures, ...after], (page) => {
      const room = roomOf(PAPER, first + page);
      const used = heading.heightMm;
      return box(room.xMm, room.yMm + used, room.widthMm, room.heightMm - used);
    });
  const sides = stepSides(line, step);
  let pages: Mark[][] = [];
  for (const mostMm of sides.length === 0 ? [0] : PICTURES_MM) {
    pages = lay(
      sides.flatMap((side) => {
        const name = panelSideName(line, side.panelId, side.side, language);
        return pictureBlock(line, states.at(side), name, options, widthMm, mostMm) ?? [];
      }),
    );
    if (pages.length === 1) break;
  }
  return pages.map((marks, page) => {
    const room = roomOf(PAPER, first + page);
    return [group(heading.marks, room.xMm, room.yMm), ...marks];
  });
}
