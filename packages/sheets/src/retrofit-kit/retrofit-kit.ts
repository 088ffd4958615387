import { languagesOf, type SheetWords, sheetWords } from "@pinwright/words";
import { type ChangeAbout, changeIdentity, fromToText, type Labels } from "../change-note/about.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { shortNumber } from "../compose/number.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { TICK, table } from "../compose/table.ts";
import type { SheetOptions } from "../options.ts";

/** A part that is sent or comes back. */
export interface KitPart {
  readonly part: string;
  readonly labels: Labels;
  /** Blank: the book has none. */
  readonly orderNumber: string;
  readonly count: number;
  /** `each`, or a unit of length and the like. */
  readonly unit: string;
}

/** A wire that is new or comes out. */
export interface KitWire {
  readonly number: string;
  readonly colour: Labels;
  /** Type of wire with its size. */
  readonly type: string;
  readonly lengthMm: number;
  readonly ends: readonly [KitEnd, KitEnd];
}

/** End of a wire: where it goes, and what sits on it. */
interface KitEnd {
  readonly place: Labels;
  readonly terminal: string;
}

/** One line of the instruction, in the words of the sheets. */
export interface KitStep {
  readonly says: (words: SheetWords["change"]["kit"]["do"], language: "en" | "zh") => string;
  /** Only for a licensed person. */
  readonly licensed: boolean;
}

/** Everything that makes a machine in the field as the revision after is. */
export interface RetrofitKit extends ChangeAbout {
  /** Serial numbers of the units that it is for, as ranges; blank: not known. */
  readonly units: string;
  /** What stays charged: supplies with their energy. */
  readonly stored: Labels;
  /** Cautions of what the work comes near to, in both languages. */
  readonly cautions: readonly Labels[];
  readonly sent: readonly KitPart[];
  readonly back: readonly KitPart[];
  readonly newWires: readonly KitWire[];
  readonly oldWires: readonly KitWire[];
  readonly steps: readonly KitStep[];
}

/** The sheet that goes with the parts: cautions first, what is in the bag, then the work line by line. */
export function composeRetrofitKit(kit: RetrofitKit, options: SheetOptions): SheetDocument {
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1], joint = "\n"): string => say(language, choose, joint);
  const { stored } = kit;
  const isWork = kit.steps.length > 0;
  return composeListing({
    identity: changeIdentity(kit, "retrofit-kit", options),
    language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: "",
      title: words((w) => w.change.kit.title),
      subtitle: fromToText(kit, language),
      facts: kit.units === "" ? [] : [words((w) => w.change.kit.units(kit.units), " · ")],
    },
    cautions: isWork
      ? [
          words((w) => w.change.kit.limit),
          words((w) => w.change.kit.off),
          ...(stored.en === ""
            ? []
            : [words((w, l) => w.change.kit.wait(l === "zh" && stored.zh !== "" ? stored.zh : stored.en))]),
          ...kit.cautions.map((caution) => label(language, caution, "")),
        ]
      : [],
    blocks: (widthMm) => kitBlocks(kit, options, widthMm),
    grids: [partsGrid(kit, options), wiresGrid(kit, options)],
  });
}

function kitBlocks(kit: RetrofitKit, options: SheetOptions, widthMm: number): readonly Block[] {
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1], joint = "\n"): string => say(language, choose, joint);
  const about = words((w) =>
    w.change.kit.about(kit.from, kit.to === null ? w.change.kit.toDraft : w.change.kit.toRevision(kit.to)),
  );
  if (kit.steps.length === 0)
    return [
      paragraph(about, widthMm, TEXT.normal),
      gap(3),
      paragraph(
        words((w) => w.change.kit.nothing),
        widthMm,
        TEXT.large,
        true,
      ),
    ];
  const heading = (choose: Parameters<typeof say>[1]): Block[] => [
    gap(4),
    { ...paragraph(words(choose, " · "), widthMm, TEXT.large, true), keepMm: 14 },
  ];
  return [
    paragraph(about, widthMm, TEXT.normal),
    ...heading((w) => w.change.kit.parts),
    ...partBlocks(kit.sent, options, widthMm, (w) => w.change.kit.noParts),
    ...heading((w) => w.change.kit.wires),
    ...wireBlocks(kit.newWires, options, widthMm),
    ...heading((w) => w.change.kit.steps),
    ...stepBlocks(kit.steps, options, widthMm),
    ...(kit.back.length === 0
      ? []
      : [
          ...heading((w) => w.change.kit.back),
          ...partBlocks(kit.back, options, widthMm, (w) => w.change.none),
        ]),
    ...(kit.oldWires.length === 0
      ? []
      : [...heading((w) => w.change.kit.old), ...wireBlocks(kit.oldWires, options, widthMm)]),
  ];
}

const countText = ({ count, unit }: KitPart): string =>
  unit === "each" || unit === "" ? shortNumber(count, 3) : `${shortNumber(count, 3)} ${unit}`;

function partBlocks(
  parts: readonly KitPart[],
  { language }: SheetOptions,
  widthMm: number,
  none: Parameters<typeof say>[1],
): readonly Block[] {
  const words = (choose: Parameters<typeof say>[1], joint = "\n"): string => say(language, choose, joint);
  if (parts.length === 0) return [paragraph(words(none), widthMm, TEXT.normal)];
  return table(
    [
      { header: words((w) => w.change.kit.part), grow: true, detail: true },
      { header: words((w) => w.change.kit.order), heightMm: TEXT.large, weight: "bold", whole: true },
      {
        header: words((w) => w.change.kit.count),
        heightMm: TEXT.large,
        weight: "bold",
        align: "end",
        whole: true,
      },
      { header: words((w) => w.change.kit.done), align: "middle", whole: true },
    ],
    parts.map((part) => ({
      kind: "row",
      cells: [
        [part.part, label(language, part.labels, "")].filter((text) => text !== "").join("\n"),
        part.orderNumber === "" ? "—" : part.orderNumber,
        countText(part),
        TICK,
      ],
    })),
    widthMm,
    words((w) => w.common.continued, " · "),
  );
}

function wireBlocks(
  wires: readonly KitWire[],
  { language }: SheetOptions,
  widthMm: number,
): readonly Block[] {
  const words = (choose: Parameters<typeof say>[1], joint = "\n"): string => say(language, choose, joint);
  if (wires.length === 0)
    return [
      paragraph(
        words((w) => w.change.kit.noWires),
        widthMm,
        TEXT.normal,
      ),
    ];
  const endText = ({ place, terminal }: KitEnd): string =>
    [label(language, place, "", " · "), terminal].filter((text) => text !== "").join("\n");
  return table(
    [
      { header: words((w) => w.change.kit.wire), heightMm: TEXT.large, weight: "bold", whole: true },
      { header: words((w) => w.change.kit.colour), minMm: 16 },
      { header: words((w) => w.change.kit.type), minMm: 22 },
      { header: words((w) => w.change.kit.length), heightMm: TEXT.large, align: "end", whole: true },
      { header: words((w) => w.change.kit.oneEnd), grow: true, detail: true },
      { header: words((w) => w.change.kit.otherEnd), grow: true, detail: true },
    ],
    wires.map((wire) => ({
      kind: "row",
      cells: [
        wire.number,
        label(language, wire.colour, ""),
        wire.type,
        String(Math.ceil(wire.lengthMm)),
        endText(wire.ends[0]),
        endText(wire.ends[1]),
      ],
    })),
    widthMm,
    words((w) => w.common.continued, " · "),
  );
}

function stepBlocks(
  steps: readonly KitStep[],
  { language }: SheetOptions,
  widthMm: number,
): readonly Block[] {
  const words = (choose: Parameters<typeof say>[1], joint = "\n"): string => say(language, choose, joint);
  return table(
    [
      {
        header: words((w) => w.change.kit.step),
        heightMm: TEXT.large,
        weight: "bold",
        align: "end",
        whole: true,
      },
      { header: words((w) => w.change.kit.doIt), grow: true },
      { header: words((w) => w.change.kit.who), minMm: 26 },
      { header: words((w) => w.change.kit.done), align: "middle", whole: true },
    ],
    steps.map(({ says, licensed }, i) => ({
      kind: "row",
      cells: [
        String(i + 1),
        words((w, l) => says(w.change.kit.do, l)),
        words((w) => (licensed ? w.change.kit.licensed : w.change.kit.owner)),
        TICK,
      ],
    })),
    widthMm,
    words((w) => w.common.continued, " · "),
  );
}

function partsGrid(kit: RetrofitKit, { language }: SheetOptions): Grid {
  const [first = "en"] = languagesOf(language);
  const w = sheetWords(first).change.kit;
  return {
    name: w.parts,
    header: [w.part, "", w.order, w.count, ""],
    rows: kit.sent.map((part) => [
      part.part,
      label(first, part.labels, ""),
      part.orderNumber,
      part.count,
      part.unit,
    ]),
  };
}

function wiresGrid(kit: RetrofitKit, { language }: SheetOptions): Grid {
  const [first = "en"] = languagesOf(language);
  const w = sheetWords(first).change.kit;
  return {
    name: w.wires,
    header: [w.wire, w.colour, w.type, w.length, w.oneEnd, "", w.otherEnd, ""],
    rows: kit.newWires.map(({ number, colour, type, lengthMm, ends: [a, b] }) => [
      number,
      label(first, colour, ""),
      type,
      Math.ceil(lengthMm),
      label(first, a.place, ""),
      a.terminal,
      label(first, b.place, ""),
      b.terminal,
    ]),
  };
}
