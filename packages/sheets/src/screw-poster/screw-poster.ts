import type { BookRow } from "@pinwright/book";
import { type FastenerCount, type FastenerItem, fastenerBill, type LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { numbersText } from "../assembly/legend.ts";
import { rowLabel, tightenText } from "../assembly/step-texts.ts";
import { symbolMark } from "../assembly/symbol-mark.ts";
import { assemble, type PageBody, type SheetDocument } from "../compose/document.ts";
import { at, box, group, LINE, rect, line as rule, stroke, TEXT, write } from "../compose/draw.ts";
import { headingBlock, roomOf } from "../compose/listing.ts";
import type { Mark } from "../compose/mark.ts";
import { PAPERS } from "../compose/paper.ts";
import { say } from "../compose/say.ts";
import { leadingMm, textWidthMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import { rulerMarks } from "../drawing/ruler.ts";
import { assemblyIdentity } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { headView, sideView } from "./side-view.ts";

type FastenerType = BookRow<"fastener_types">;

const PAPER = PAPERS["a3-portrait"];
const CELL_MM = { widthMm: 128, heightMm: 62 } as const;
const SYMBOL_MM = 20;
const LETTER_MM = 16;
const PAD_MM = 3;
/** The ruler reaches on by this much beyond a screw. */
const BEYOND_MM = 10;
/** Largest side view; a longer fastener is drawn broken off. */
const VIEW_MM = 88;

/** The types of all fasteners that are used, at real size. */
export function composeScrewPoster(line: LineResult, options: SheetOptions): SheetDocument {
  const { language } = options;
  const counts = fastenerBill(line);
  const identity = assemblyIdentity(
    line,
    { kind: "screw-poster", name: "", letters: "", scale: "1:1" },
    options,
  );
  const bodies: PageBody[] = [];
  const facts = new Facts(line);
  for (let from = 0; from < Math.max(1, counts.length); ) {
    const room = roomOf(PAPER, bodies.length);
    const heading = headingBlock(
      {
        badge: "",
        title: say(language, (w) => w.steps.poster.title),
        subtitle: say(language, (w) => w.steps.poster.hint),
        facts: [],
      },
      room.widthMm,
    );
    const top = room.yMm + heading.heightMm + 10;
    const columns = Math.max(1, Math.floor(room.widthMm / CELL_MM.widthMm));
    const rows = Math.max(1, Math.floor((room.yMm + room.heightMm - top) / CELL_MM.heightMm));
    const own = counts.slice(from, from + columns * rows);
    bodies.push({
      paper: PAPER,
      marks: [
        group(heading.marks, room.xMm, room.yMm),
        group(rulerMarks(false), room.xMm, room.yMm + heading.heightMm),
        write("100 mm", at(room.xMm + 103, room.yMm + heading.heightMm + 3), { heightMm: TEXT.small }),
        ...own.map((count, i) =>
          group(
            cellMarks(facts, count, language),
            room.xMm + (i % columns) * CELL_MM.widthMm,
            top + Math.floor(i / columns) * CELL_MM.heightMm,
          ),
        ),
      ],
    });
    from += columns * rows;
  }
  return assemble(identity, language, bodies, []);
}

/** What the poster says of types, gathered once. */
class Facts {
  readonly line: LineResult;
  readonly types: ReadonlyMap<string, FastenerType>;
  readonly #bodies = new Map<string, number>();
  readonly #steps = new Map<string, Set<number>>();
  readonly #aside = new Map<string, Set<FastenerType>>();

  constructor(line: LineResult) {
    this.line = line;
    this.types = new Map(line.machine.book.tables.fastener_types.map((t) => [t.id, t]));
    const items = new Map<string, FastenerItem>();
    for (const item of line.machine.items.values()) if (item.kind === "fastener") items.set(item.id, item);
    for (const item of items.values()) {
      this.#bodies.set(item.type.id, Math.max(this.#bodies.get(item.type.id) ?? 0, item.flangeMm));
      const aside = this.#aside.get(item.type.id) ?? new Set();
      for (const type of [item.washer, item.nut]) if (type !== null) aside.add(type);
      this.#aside.set(item.type.id, aside);
    }
    for (const step of line.steps.steps) {
      for (const id of step.fastenerIds) {
        const item = items.get(id);
        if (item === undefined) continue;
        for (const type of [item.type, item.washer, item.nut]) {
          if (type === null) continue;
          const own = this.#steps.get(type.id) ?? new Set();
          own.add(step.number);
          this.#steps.set(type.id, own);
        }
      }
    }
  }

  /** Height of a post's body over the panel, the highest that is used. */
  bodyMm(typeId: string): number {
    return this.#bodies.get(typeId) ?? 0;
  }

  /** `P Washer M4, F Nut M4`: what goes on with a type, with the letters of the boxes. */
  aside(typeId: string, language: SheetLanguage): string {
    return [...(this.#aside.get(typeId) ?? [])]
      .map((type) => {
        const letter = this.line.fastening.symbols.get(type.id)?.letter ?? "";
        return `${letter} ${rowLabel(type, type.id, language)}`.trim();
      })
      .join(", ");
  }

  steps(typeId: string): readonly number[] {
    return [...(this.#steps.get(typeId) ?? [])];
  }
}

function cellMarks(facts: Facts, count: FastenerCount, language: SheetLanguage): Mark[] {
  const { widthMm, heightMm } = CELL_MM;
  const frame = rect(box(0, 0, widthMm, heightMm), stroke("faint", LINE.thin));
  const type = facts.types.get(count.typeId);
  if (type === undefined) return [frame];
  const { symbol } = count;
  const letter = symbol?.letter ?? "";
  const signMm = symbol === null ? 0 : SYMBOL_MM + 3 + textWidthMm(letter, LETTER_MM, "bold") + 4;
  const left = PAD_MM + signMm;
  const signs: Mark[] =
    symbol === null
      ? []
      : [
          symbolMark(symbol, at(PAD_MM + SYMBOL_MM / 2, PAD_MM + SYMBOL_MM / 2), SYMBOL_MM),
          write(letter, at(PAD_MM + SYMBOL_MM + 3, PAD_MM + SYMBOL_MM - 2), {
            heightMm: LETTER_MM,
            weight: "bold",
          }),
        ];
  return [
    frame,
    ...signs,
    ...textMarks(facts, type, count, left, language),
    ...realSize(type, facts.bodyMm(type.id)),
  ];
}

/** Name and figures beside the symbol: as many lines as there is room for. */
function textMarks(
  facts: Facts,
  type: FastenerType,
  count: FastenerCount,
  left: number,
  language: SheetLanguage,
): Mark[] {
  const widthMm = CELL_MM.widthMm - left - PAD_MM;
  const steps = facts.steps(type.id);
  const details = say(
    language,
    ({ steps: { poster: p } }) =>
      [
        p.used(count.count),
        steps.length === 0 ? p.notUsed : p.inSteps(numbersText(steps)),
        type.drive === "" ? "" : `${p.drive}: ${type.drive}`,
      ]
        .filter((t) => t !== "")
        .join("; "),
    "\n",
  );
  const aside = facts.aside(type.id, language);
  const figures = [
    aside === "" ? "" : say(language, (w, l) => w.steps.poster.goesWith(facts.aside(type.id, l)), " · "),
    tightenText(type, language),
    type.thread,
  ]
    .filter((t) => t !== "")
    .join("; ");
  const roomMm = CELL_MM.heightMm - PAD_MM - VIEW_HEIGHT_MM;
  const label = rowLabel(type, type.id, language, "\n");
  for (const [nameMm, textMm] of SIZES) {
    const name = wrap(label, widthMm, nameMm, "bold");
    const small = [...wrap(details, widthMm, textMm), ...wrap(figures, widthMm, textMm)];
    const topMm = name.length * leadingMm(nameMm) + 0.6;
    const most = Math.max(0, Math.floor((roomMm - topMm) / leadingMm(textMm)));
    if (small.length > most && nameMm !== TEXT.normal) continue;
    return [
      ...name.map((t, i) =>
        write(t, at(left, PAD_MM + nameMm + i * leadingMm(nameMm)), { heightMm: nameMm, weight: "bold" }),
      ),
      ...small
        .slice(0, most)
        .map((t, i) =>
          write(t, at(left, PAD_MM + topMm + textMm + i * leadingMm(textMm)), { heightMm: textMm }),
        ),
    ];
  }
  return [];
}

/** Lettering of name and figures, the largest first: the first at which all of it fits is taken. */
const SIZES = [
  [TEXT.large, TEXT.normal],
  [TEXT.large, TEXT.small],
  [TEXT.normal, TEXT.small],
] as const;

/** Band at the foot of a cell that the views and the ruler stand in. */
const VIEW_HEIGHT_MM = 25;

/** Side view over a ruler that counts from under the head both ways, and at its right the view on the head. */
function realSize(type: FastenerType, bodyMm: number): Mark[] {
  const { widthMm, heightMm } = CELL_MM;
  const side = sideView(type, bodyMm);
  const top = headView(type);
  const axisMm = heightMm - 14;
  const zeroMm = PAD_MM + 4 + side.leftMm;
  const rulerTop = heightMm - 6.5;
  const reachMm = Math.min(VIEW_MM - side.leftMm, Math.ceil((side.rightMm + BEYOND_MM) / 10) * 10);
  const fromMm = -Math.ceil(side.leftMm);
  const ticks: Mark[] = [];
  for (let mm = fromMm; mm <= reachMm; mm++) {
    const long = mm % 10 === 0 ? 2.6 : mm % 5 === 0 ? 1.8 : 1.1;
    ticks.push(rule(at(mm, 0), at(mm, long), stroke("ink", LINE.hair)));
    if (mm % 10 === 0)
      ticks.push(write(String(Math.abs(mm)), at(mm, 5), { heightMm: TEXT.small, anchor: "middle" }));
  }
  return [
    group(
      side.marks,
      zeroMm,
      axisMm,
      box(PAD_MM, heightMm - VIEW_HEIGHT_MM, widthMm - 2 * PAD_MM, VIEW_HEIGHT_MM - 7),
    ),
    group([rule(at(fromMm, 0), at(reachMm, 0), stroke("ink", LINE.thin)), ...ticks], zeroMm, rulerTop),
    group(top.marks, widthMm - PAD_MM - top.halfMm - 3, axisMm),
  ];
}
