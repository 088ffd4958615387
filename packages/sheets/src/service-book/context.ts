import type { LineResult } from "@pinwright/engine";
import { type Language, type SheetWords, sheetWords } from "@pinwright/words";
import type { Block } from "../compose/flow.ts";
import type { LinkTarget } from "../compose/mark.ts";
import type { Paper } from "../compose/paper.ts";
import { say } from "../compose/say.ts";
import type { Difference } from "./differences.ts";
import type { ServiceFacts } from "./facts.ts";
import type { Hazard } from "./hazards.ts";
import type { ServiceBookOptions } from "./options.ts";
import { runsText } from "./runs-text.ts";

type BookWords = SheetWords["serviceBook"];

/** A heading of the book. */
export interface Heading {
  readonly title: string;
  readonly level: number;
  readonly anchor: string;
  /** Counted from 1. */
  readonly page: number;
  readonly yMm: number;
}

/** Where things of the book stand, as it was last set. */
export interface Places {
  /** Page of an anchor, counted from 1. */
  readonly pages: ReadonlyMap<string, number>;
  readonly headings: readonly Heading[];
}

/** What all chapters are written from. */
export interface BookFacts {
  /** The machine as it was built: colours are those that are really there. */
  readonly line: LineResult;
  readonly language: Language;
  readonly options: ServiceBookOptions;
  readonly facts: ServiceFacts;
  readonly hazards: readonly Hazard[];
  readonly differences: readonly Difference[];
  /** Part that is there, by the part of the drawings. */
  readonly insteadOf: ReadonlyMap<string, string>;
}

/** What a chapter is written with. */
export interface BookContext extends BookFacts {
  /** Words of the book. */
  readonly words: (choose: (words: BookWords) => string) => string;
  /** A list of the book's words. */
  readonly list: (choose: (words: BookWords) => readonly string[]) => readonly string[];
  /** Any words of the sheets. */
  readonly sheet: (choose: (words: SheetWords) => string) => string;
  /** Number of the page on which something stands; blank: nowhere. */
  readonly pageOf: (anchor: string) => string;
  /** Pages of all anchors that begin so: `3, 7–9`. */
  readonly pagesOf: (prefix: string) => string;
  /** Leads there; undefined: it stands nowhere. */
  readonly linkTo: (anchor: string) => LinkTarget | undefined;
  readonly headings: () => readonly Heading[];
}

/** A chapter of the book, or what stands before the first. */
export interface Chapter {
  readonly id: keyof BookWords["chapters"] | "front";
  readonly paper: Paper;
  readonly blocks: (context: BookContext, widthMm: number) => readonly Block[];
}

/** What a chapter wanted to know of places, and was told. */
export type Asked = ReadonlyMap<string, string>;

const HEADINGS = "headings";

function answer(question: string, { pages, headings }: Places): string {
  if (question === HEADINGS) return headings.map((h) => `${h.level} ${h.page} ${h.title}`).join("\n");
  if (!question.endsWith("*")) return String(pages.get(question) ?? "");
  const prefix = question.slice(0, -1);
  return runsText([...pages].flatMap(([anchor, page]) => (anchor.startsWith(prefix) ? [page] : [])));
}

/** A context that remembers what it was asked of places, so that a chapter is written again only when answers change. */
export function asking(
  facts: BookFacts,
  places: Places,
): { readonly context: BookContext; readonly asked: Asked } {
  const asked = new Map<string, string>();
  const { language } = facts;
  const ask = (question: string): string => {
    const told = asked.get(question) ?? answer(question, places);
    asked.set(question, told);
    return told;
  };
  return {
    asked,
    context: {
      ...facts,
      words: (choose) => say(language, (w) => choose(w.serviceBook)),
      list: (choose) => choose(sheetWords(language).serviceBook),
      sheet: (choose) => say(language, choose),
      pageOf: ask,
      pagesOf: (prefix) => ask(`${prefix}*`),
      linkTo: (anchor) => (ask(anchor) === "" ? undefined : { anchor }),
      headings: () => {
        ask(HEADINGS);
        return places.headings;
      },
    },
  };
}

/** Whether a chapter would be told the same again. */
export function holds(asked: Asked, places: Places): boolean {
  for (const [question, told] of asked) if (answer(question, places) !== told) return false;
  return true;
}
