import type { Block } from "../compose/flow.ts";
import { PAPERS } from "../compose/paper.ts";
import { adjustBlocks } from "./adjust.ts";
import { chapterHead } from "./blocks.ts";
import { boardBlocks } from "./boards.ts";
import { chartBlocks } from "./charts.ts";
import type { BookContext, Chapter } from "./context.ts";
import { faultBlocks } from "./faults.ts";
import { frontBlocks } from "./front.ts";
import { indexBlocks } from "./index-pages.ts";
import { numberedBlocks } from "./numbered.ts";
import { openBlocks } from "./open.ts";
import { partBlocks } from "./parts.ts";
import { pinBlocks } from "./pins.ts";
import { powerBlocks } from "./power.ts";
import { replaceBlocks } from "./replace.ts";
import { testBlocks } from "./tests.ts";
import { useBlocks } from "./use.ts";
import { whereBlocks } from "./where.ts";

type ChapterId = Exclude<Chapter["id"], "front">;

type Write = (context: BookContext, widthMm: number) => readonly Block[];

const WRITERS: readonly (readonly [ChapterId, Write])[] = [
  ["use", useBlocks],
  ["open", openBlocks],
  ["where", whereBlocks],
  ["boards", boardBlocks],
  ["numbered", numberedBlocks],
  ["pins", pinBlocks],
  ["charts", chartBlocks],
  ["power", powerBlocks],
  ["adjust", adjustBlocks],
  ["replace", replaceBlocks],
  ["parts", partBlocks],
  ["tests", testBlocks],
  ["faults", faultBlocks],
  ["index", indexBlocks],
];

const PORTRAIT = PAPERS["a4-portrait"];

/** A chapter with its heading; one of which a machine has nothing is left out. */
const chapter = (id: ChapterId, number: number, write: Write): Chapter => ({
  id,
  paper: PORTRAIT,
  blocks: (context, widthMm) => {
    const blocks = write(context, widthMm);
    if (blocks.length === 0) return [];
    const title = context.words((w) => w.chapters[id]);
    return [chapterHead(String(number), title, `chapter:${id}`, widthMm), ...blocks];
  },
});

/** The book from its first page to its last. */
export const CHAPTERS: readonly Chapter[] = [
  { id: "front", paper: PORTRAIT, blocks: frontBlocks },
  ...WRITERS.map(([id, write], i) => chapter(id, i + 1, write)),
];
