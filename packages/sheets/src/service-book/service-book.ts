import type { LineResult } from "@pinwright/engine";
import { assemble, type PageBody, type SheetDocument } from "../compose/document.ts";
import { at, box, group, LINE, line as rule, stroke, TEXT, write } from "../compose/draw.ts";
import { type Block, flow } from "../compose/flow.ts";
import { anchorsOf } from "../compose/guide.ts";
import { eachLeaf } from "../compose/leaves.ts";
import { roomOf } from "../compose/listing.ts";
import type { Box, Mark, Page } from "../compose/mark.ts";
import type { Paper } from "../compose/paper.ts";
import { tagged } from "../compose/tag.ts";
import { CHAPTERS } from "./chapters.ts";
import {
  type Asked,
  asking,
  type BookFacts,
  type Chapter,
  type Heading,
  holds,
  type Places,
} from "./context.ts";
import { asBuilt } from "./differences.ts";
import { serviceFacts } from "./facts.ts";
import { hazardsOf } from "./hazards.ts";
import { serviceBookIdentity } from "./identity.ts";
import type { ServiceBookOptions } from "./options.ts";

/** Height of the line at the head of a page. */
const HEAD_MM = 7;
/** Page numbers settle in three rounds; more would mean that two places push each other over a page for ever. */
const MOST_ROUNDS = 6;

/** What begins above this begins at the top of a page. */
const TOP_MM = 30;

const UNKNOWN: Places = { pages: new Map(), headings: [] };

/** Writes chapters, and again only those that name a page which has become another one. */
class Writer {
  readonly #facts: BookFacts;
  readonly #written = new Map<Chapter, { readonly asked: Asked; readonly blocks: readonly Block[] }>();

  constructor(facts: BookFacts) {
    this.#facts = facts;
  }

  blocks(chapter: Chapter, places: Places): readonly Block[] {
    const known = this.#written.get(chapter);
    if (known !== undefined && holds(known.asked, places)) return known.blocks;
    const { context, asked } = asking(this.#facts, places);
    const blocks = chapter.blocks(context, bodyOf(chapter.paper, 1).widthMm);
    this.#written.set(chapter, { asked, blocks });
    return blocks;
  }
}

/** The part of a page under its head line. */
function bodyOf(paper: Paper, page: number): Box {
  const room = roomOf(paper, page);
  const headMm = page === 0 ? 0 : HEAD_MM;
  return box(room.xMm, room.yMm + headMm, room.widthMm, room.heightMm - headMm);
}

/** Chapters that follow each other on the same paper, set together. */
function runsOf(chapters: readonly Chapter[]): readonly (readonly [Chapter, ...Chapter[]])[] {
  const runs: [Chapter, ...Chapter[]][] = [];
  for (const chapter of chapters) {
    const last = runs.at(-1);
    if (last === undefined || last[0].paper !== chapter.paper) runs.push([chapter]);
    else last.push(chapter);
  }
  return runs;
}

function setPages(chapters: readonly Chapter[], writer: Writer, places: Places): readonly PageBody[] {
  const bodies: PageBody[] = [];
  for (const run of runsOf(chapters)) {
    const [{ paper }] = run;
    const first = bodies.length;
    const blocks = run.flatMap((chapter) => writer.blocks(chapter, places));
    for (const marks of flow(blocks, (page) => bodyOf(paper, first + page))) bodies.push({ paper, marks });
  }
  return bodies;
}

const asPages = (bodies: readonly PageBody[]): readonly Page[] =>
  bodies.map(({ paper, marks }) => ({ ...paper, marks }));

function placesOf(pages: readonly Page[]): Places {
  return {
    pages: new Map([...anchorsOf(pages)].map(([name, { page }]) => [name, page + 1])),
    headings: pages.flatMap(headingsOf),
  };
}

/** Headings of a page, from its top. */
function headingsOf(page: Page, index: number): readonly Heading[] {
  const headings: Heading[] = [];
  eachLeaf(
    page.marks,
    () => undefined,
    ({ bookmark, anchor }, _dx, yMm) => {
      if (bookmark !== undefined && anchor !== undefined)
        headings.push({ ...bookmark, anchor, page: index + 1, yMm });
      return true;
    },
  );
  return headings;
}

const same = (a: Places, b: Places): boolean =>
  a.pages.size === b.pages.size && [...a.pages].every(([name, page]) => b.pages.get(name) === page);

/** Title of the chapter that a page is of: the first that begins on it, else the one before. */
function chapterTitles(headings: readonly Heading[], count: number): readonly string[] {
  let title = "";
  const chapters = headings.filter(({ level, anchor }) => level === 1 && anchor !== "front");
  return Array.from({ length: count }, (_, i) => {
    const own = chapters.filter((chapter) => chapter.page === i + 1);
    const [first] = own;
    // A chapter that begins at the top has the page to itself.
    const shown = first !== undefined && (title === "" || first.yMm < TOP_MM) ? first.title : title;
    title = own.at(-1)?.title ?? title;
    return shown;
  });
}

/** The line at the head of each page but the first: machine and chapter. */
function headMarks(paper: Paper, page: number, left: string, right: string): readonly Mark[] {
  if (page === 0) return [];
  const { xMm, yMm, widthMm } = roomOf(paper, page);
  const marks = [
    write(left, at(0, 2), { heightMm: TEXT.small }),
    write(right, at(widthMm, 2), { heightMm: TEXT.small, anchor: "end", ink: "accent", weight: "bold" }),
    rule(at(0, 3.8), at(widthMm, 3.8), stroke("faint", LINE.thin)),
  ];
  return [tagged({ role: "Artifact" }, [group(marks, xMm, yMm)])];
}

/**
 * The service book of a machine, or of one that was built: for a careful owner, in the order in which it is needed.
 * What a machine does not have is not in its book. Pages are A4.
 * @param line of the revision, with the options that the machine was built with
 */
export function composeServiceBook(line: LineResult, options: ServiceBookOptions): SheetDocument {
  const { line: own, differences, insteadOf } = asBuilt(line, options.unit);
  const writer = new Writer({
    line: own,
    language: options.language,
    options,
    facts: serviceFacts(own),
    hazards: hazardsOf(own, options.language),
    differences,
    insteadOf,
  });
  let places = UNKNOWN;
  let bodies: readonly PageBody[] = [];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    bodies = setPages(CHAPTERS, writer, places);
    const now = placesOf(asPages(bodies));
    if (same(now, places)) break;
    places = now;
  }
  const identity = serviceBookIdentity(line, options);
  const titles = chapterTitles(places.headings, bodies.length);
  const left = `${identity.title} · ${identity.documentType} · ${identity.supplement}`;
  return assemble(
    identity,
    options.language,
    bodies.map(({ paper, marks }, page) => ({
      paper,
      marks: [...headMarks(paper, page, left, titles[page] ?? ""), ...marks],
    })),
    [],
  );
}
