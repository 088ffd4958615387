import { afterOf } from "@pinwright/words";
import { at, changing, LINE, line as rule, stroke, TEXT, write } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import { label } from "../compose/say.ts";
import { anchored, figure, linked, tagged } from "../compose/tag.ts";
import { leadingMm, textWidthMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import { revisionOf } from "../options.ts";
import { bookTable, hazardBlocks, named, note, row, sectionHead } from "./blocks.ts";
import type { BookContext, Heading } from "./context.ts";
import { HAZARDS } from "./hazards.ts";

/** Name of the list of differences, for links. */
const DIFFERENCES = "differences";

/** Machine, revision, serial number and options; what differs in this machine; contents. */
export function frontBlocks(context: BookContext, widthMm: number): readonly Block[] {
  return [
    ...titleBlocks(context, widthMm),
    ...hazardBlocks(context, HAZARDS.slice(0, 1), "front", widthMm),
    ...differenceBlocks(context, widthMm),
    ...contentsBlocks(context, widthMm),
  ];
}

function titleBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { line, language, options, words } = context;
  const { machine, tables } = line.machine.book;
  const name = label(language, { en: machine.label, zh: machine.label_zh }, machine.id);
  const bigMm = 13;
  const names = wrap(name, widthMm, bigMm, "bold");
  const step = leadingMm(bigMm);
  const headMm = names.length * step;
  const heads = [
    ...names.map((t, i) =>
      write(t, at(0, (i + 0.75) * step), { heightMm: bigMm, weight: "bold", ink: "accent" }),
    ),
  ];
  const titleMm = headMm + leadingMm(TEXT.huge);
  const title: Block = {
    heightMm: titleMm + leadingMm(TEXT.large) + 4,
    marks: [
      anchored(
        "front",
        [
          tagged({ role: "H1" }, [
            ...heads,
            write(
              words((w) => w.title),
              at(0, headMm + 0.75 * leadingMm(TEXT.huge)),
              { heightMm: TEXT.huge, weight: "bold" },
            ),
          ]),
        ],
        { title: `${name}: ${words((w) => w.title)}`, level: 1 },
      ),
      tagged({ role: "P" }, [
        write(
          words((w) => w.subtitle),
          at(0, titleMm + 0.75 * leadingMm(TEXT.large)),
          { heightMm: TEXT.large },
        ),
      ]),
      rule(
        at(0, titleMm + leadingMm(TEXT.large) + 2),
        at(widthMm, titleMm + leadingMm(TEXT.large) + 2),
        stroke("accent", LINE.bold),
      ),
    ],
  };
  const revision = revisionOf(machine, options);
  const after = afterOf(revision);
  const revisionText =
    after === null ? words((w) => w.revision(revision)) : context.sheet((w) => w.change.draft(after));
  const built = tables.options
    .filter((option) => line.machine.options.has(option.id))
    .map((option) => label(language, { en: option.label, zh: option.label_zh }, option.id));
  const { unit } = options;
  const lines: readonly (readonly [string, string])[] = [
    [unit === null ? words((w) => w.everyMachine) : words((w) => w.serial(unit.serial)), revisionText],
    ...(built.length === 0 ? [] : ([[words((w) => w.builtWith), built.join("; ")]] as const)),
  ];
  return [
    title,
    ...lines.map(([head, text], i) => {
      const block = named(head, text, widthMm, widthMm / 2.6);
      // A book that says the same in the next revision has the same hash.
      return i === 0 ? { ...block, marks: [changing(block.marks)] } : block;
    }),
    ...codeBlocks(context, widthMm),
    gap(4),
  ];
}

/** A code that leads to what was recorded of this machine, with its address for whoever has no reader. */
function codeBlocks({ options, words }: BookContext, widthMm: number): readonly Block[] {
  const address = options.unit?.address ?? "";
  if (address === "") return [];
  const sizeMm = 22;
  const leftMm = sizeMm + 5;
  const step = leadingMm(TEXT.normal);
  const said = [
    ...wrap(
      words((w) => w.unitPage),
      widthMm - leftMm,
      TEXT.normal,
    ),
    ...wrap(address, widthMm - leftMm, TEXT.normal),
  ];
  return [
    gap(3),
    {
      heightMm: Math.max(sizeMm, (said.length + 1) * step),
      marks: [
        figure(address, [{ kind: "code", at: at(0, 0), sizeMm, text: address, layer: "TEXT" }]),
        tagged({ role: "P" }, [
          linked(
            { url: address },
            said.map((text, i) => write(text, at(leftMm, (i + 1) * step))),
          ),
        ]),
      ],
    },
  ];
}

/** What the machine has instead of what the drawings say, and where the book speaks of it. */
function differenceBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { differences, options, words } = context;
  if (options.unit === null) return [];
  const head = sectionHead(
    words((w) => w.differences.title),
    DIFFERENCES,
    widthMm,
  );
  if (differences.length === 0)
    return [
      head,
      note(
        words((w) => w.differences.none),
        widthMm,
      ),
      gap(3),
    ];
  const rows = differences.map((one) => {
    const pages =
      one.wires.length > 0
        ? one.wires.map((number) => context.pageOf(`wire:${number}`))
        : [context.pageOf(`part:${one.part}`), ...fusePages(context, one.part)];
    return row([
      one.wires.length > 0 ? one.part : partText(context, one.part),
      one.wires.length > 0 ? one.instead : partText(context, one.instead),
      one.wires.join(", "),
      `${words((w) => w.differences.allowed[one.allowed])}\n${one.why}`,
      [...new Set(pages.filter((page) => page !== ""))].join(", "),
    ]);
  });
  return [
    head,
    note(
      words((w) => w.differences.hint),
      widthMm,
    ),
    ...bookTable(
      context,
      [
        { header: words((w) => w.differences.drawn), detail: true, grow: true },
        { header: words((w) => w.differences.real), detail: true, weight: "bold", grow: true },
        { header: words((w) => w.differences.where) },
        { header: words((w) => w.differences.why), detail: true, heightMm: TEXT.small, grow: true },
        { header: words((w) => w.page), align: "end" },
      ],
      rows,
      widthMm,
    ),
    gap(4),
  ];
}

const fusePages = (context: BookContext, part: string): readonly string[] =>
  context.line.machine.book.tables.fuses
    .filter((fuse) => fuse.part === part)
    .map((fuse) => context.pageOf(`fuse:${fuse.id}`));

/** A part by its name, with its number under it. */
function partText({ line, language }: BookContext, id: string): string {
  const part = line.machine.book.tables.parts.find((own) => own.id === id);
  return part === undefined ? id : `${label(language, { en: part.label, zh: part.label_zh }, id)}\n${id}`;
}

/** Chapters and sections with their pages. */
function contentsBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { words } = context;
  const own = context
    .headings()
    .filter(({ level, anchor }) => level <= 2 && anchor !== "front" && anchor !== "contents");
  if (own.length === 0) return [];
  return [
    sectionHead(
      words((w) => w.contents),
      "contents",
      widthMm,
    ),
    ...own.map((heading, i) => contentsLine(heading, widthMm, i === 0)),
  ];
}

function contentsLine({ title, level, page, anchor }: Heading, widthMm: number, starts: boolean): Block {
  const heightMm = TEXT.normal;
  const top = level === 1 ? 1.6 : 0;
  const left = level === 1 ? 0 : 7;
  const step = leadingMm(heightMm);
  const weight = level === 1 ? "bold" : "regular";
  const base = top + 0.75 * step;
  const end = widthMm - textWidthMm(String(page), heightMm, weight);
  const from = left + textWidthMm(title, heightMm, weight) + 2;
  const texts = [
    write(title, at(left, base), { heightMm, weight }),
    write(String(page), at(widthMm, base), { heightMm, weight, anchor: "end" }),
  ];
  return {
    heightMm: top + step,
    ...(level === 1 ? { keepMm: 6 } : {}),
    marks: [
      ...(from < end - 4
        ? [rule(at(from, base - 0.3), at(end - 2, base - 0.3), stroke("faint", LINE.thin, [0.3, 1.2]))]
        : []),
      tagged({ role: "TOCI", ...(starts ? { starts: true } : {}) }, [linked({ anchor }, texts)]),
    ],
  };
}
