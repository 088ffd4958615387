import type { BookRow } from "@pinwright/book";
import {
  type BoardRegisterRow,
  type LineResult,
  type Placement,
  placementsOf,
  type SolderWay,
  type StuffingPlan,
  sessionOf,
  solderChoice,
  stuffingPlan,
  usefulBenches,
} from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { boardCount, boardName, boardSlug, stuffedTypes } from "../board-picture/board-texts.ts";
import { cautionBlock } from "../compose/caution.ts";
import { assemble, type PageBody, type SheetDocument } from "../compose/document.ts";
import { box, group } from "../compose/draw.ts";
import { type Block, flow, gap } from "../compose/flow.ts";
import { headingBlock, roomOf } from "../compose/listing.ts";
import { PAPERS } from "../compose/paper.ts";
import { say } from "../compose/say.ts";
import { assemblyIdentity, assemblySheetName } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { overviewBlocks, stageBlocks } from "./guide-blocks.ts";

const PAPER = PAPERS["a4-portrait"];

/** Everything that the guide of a board type tells. */
export interface Guide {
  readonly line: LineResult;
  readonly row: BoardRegisterRow;
  readonly plan: StuffingPlan;
  readonly placements: ReadonlyMap<string, Placement>;
  readonly parts: ReadonlyMap<string, BookRow<"parts">>;
  readonly options: SheetOptions;
}

/** Ways of soldering the kinds of one session with the boards of so many machines. */
function waysOf(line: LineResult, machines: number): (typeId: string) => SolderWay {
  const choice = solderChoice(line.machine, sessionOf(line.machine, machines));
  const inBath = new Set(choice.better === "bath" ? choice.bathTypeIds : []);
  return (typeId) => (inBath.has(typeId) ? "bath" : "hand");
}

/**
 * How the boards of each type that is stuffed in the shop are stuffed, a page for each stage, for the people at the
 * shop's board benches. Whether a type goes into the solder bath follows from the number of machines.
 */
export function* composeStuffingGuides(
  line: LineResult,
  options: SheetOptions,
): Generator<SheetDocument, void> {
  const wayOf = waysOf(line, options.machines);
  const parts = new Map(line.machine.book.tables.parts.map((part) => [part.id, part]));
  for (const row of stuffedTypes(line)) {
    const way = wayOf(row.typeId);
    const benches = usefulBenches(line.machine, row.typeId, way);
    const plan = stuffingPlan(line.machine, row.typeId, benches, way);
    const placements = new Map(placementsOf(line.machine, row.typeId).map((p) => [p.reference, p]));
    yield composeGuide({ line, row, plan, placements, parts, options });
  }
}

/** Names of the sheets that `composeStuffingGuides` makes. */
export const stuffingGuideNames = (line: LineResult, language: SheetLanguage): readonly string[] =>
  stuffedTypes(line).map((row) => assemblySheetName("stuffing-guide", boardSlug(row.typeId), language));

function composeGuide(guide: Guide): SheetDocument {
  const { line, row, plan, options } = guide;
  const { language } = options;
  const identity = assemblyIdentity(
    line,
    {
      kind: "stuffing-guide",
      name: boardSlug(row.typeId),
      letters: boardSlug(row.typeId).toUpperCase(),
      title: boardName(row, language),
    },
    options,
  );
  const bodies: PageBody[] = [];
  for (const stage of [null, ...plan.stages]) {
    for (const marks of pagesOf(guide, stage, bodies.length)) bodies.push({ paper: PAPER, marks });
  }
  return assemble(identity, language, bodies, []);
}

type Stage = StuffingPlan["stages"][number];

function headingOf({ row, plan, options }: Guide, stage: Stage | null, widthMm: number): Block {
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const of = plan.stages.length;
  const title =
    stage === null
      ? say(language, (w) => `${w.kinds["stuffing-guide"]}: ${w.boards.guide.overview}`)
      : say(language, (w) => w.boards.guide.stage(stage.number, of));
  const facts =
    stage === null
      ? [
          `${words((w) => w.boards.revision)} ${row.revision}`,
          words((w) => w.boards.boards(boardCount(row, options.machines))),
          words((w) => w.boards.guide.way[plan.way]),
        ]
      : [
          words((w) => w.boards.guide.benchNo(stage.bench)),
          words((w) => w.boards.parts(stage.references.length)),
          words((w) => w.boards.guide.time(stage.seconds.toFixed(0))),
        ];
  return headingBlock(
    {
      badge: stage === null ? "" : String(stage.number),
      title,
      subtitle: `${boardName(row, language, " · ")} · ${row.typeId}`,
      facts,
    },
    widthMm,
  );
}

/** What the work of a stage can do to a person. */
function cautionsOf({ plan, options }: Guide, stage: Stage | null): readonly string[] {
  const isBath = plan.way === "bath";
  const last = plan.stages.findLast((s) => s.when === "before-bath");
  const isSoldered = stage === null || !isBath || stage.when === "after-wash" || stage === last;
  const names: ("fume" | "bath" | "wash")[] = [
    ...(isSoldered ? (["fume"] as const) : []),
    ...(isBath && (stage === null || stage === last) ? (["bath", "wash"] as const) : []),
  ];
  return names.map((name) => say(options.language, (w) => w.boards.caution[name]));
}

function pagesOf(guide: Guide, stage: Stage | null, first: number) {
  const { language } = guide.options;
  const { widthMm } = roomOf(PAPER, first);
  const heading = headingOf(guide, stage, widthMm);
  const cautions = cautionsOf(guide, stage);
  const before = cautions.length === 0 ? [] : [cautionBlock([...cautions], language, widthMm), gap(2)];
  const usedMm = heading.heightMm + before.reduce((sum, block) => sum + block.heightMm, 0);
  const room = { widthMm, heightMm: roomOf(PAPER, first).heightMm - usedMm };
  const own = stage === null ? overviewBlocks(guide, room) : stageBlocks(guide, stage, room);
  const pages = flow([...before, ...own], (page) => {
    const body = roomOf(PAPER, first + page);
    return box(body.xMm, body.yMm + heading.heightMm, body.widthMm, body.heightMm - heading.heightMm);
  });
  return pages.map((marks, page) => {
    const body = roomOf(PAPER, first + page);
    return [group(heading.marks, body.xMm, body.yMm), ...marks];
  });
}
