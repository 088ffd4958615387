import type { LineResult, PanelCut } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { assemble, type PageBody, type SheetDocument } from "../compose/document.ts";
import { at, box, group, LINE, rect, stroke, TEXT, write } from "../compose/draw.ts";
import { roomOf } from "../compose/listing.ts";
import type { Mark } from "../compose/mark.ts";
import { PAPERS } from "../compose/paper.ts";
import { label, say } from "../compose/say.ts";
import { leadingMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import { sizeMm } from "../cutting-plan/panel-facts.ts";
import { assemblyIdentity, assemblySheetName } from "../identity.ts";
import type { SheetOptions } from "../options.ts";

const PAPER = PAPERS["a4-portrait"];
/** A label on a panel: common practice, no source. */
const LABEL_MM = { widthMm: 85, heightMm: 46 } as const;
const PAD_MM = 3;
/** Machines for which every panel has a label of its own; for more the number is written by hand. */
const MOST_MACHINES = 40;

interface PanelLabel {
  readonly cut: PanelCut;
  /** Null: filled in by hand. */
  readonly machine: number | null;
}

/** Labels to stick on panels as they come off the saw. */
export function* composePanelLabels(line: LineResult, options: SheetOptions): Generator<SheetDocument, void> {
  if (panelLabelNames(line, options.language).length === 0) return;
  const identity = assemblyIdentity(line, { kind: "panel-labels", name: "", letters: "" }, options);
  yield assemble(identity, options.language, bodiesOf(line, options), []);
}

/** Names of the sheets that `composePanelLabels` makes. */
export const panelLabelNames = (line: LineResult, language: SheetLanguage): readonly string[] =>
  line.panels.cuts.length === 0 ? [] : [assemblySheetName("panel-labels", "", language)];

function labelsOf(line: LineResult, machines: number): readonly PanelLabel[] {
  if (machines > MOST_MACHINES) return line.panels.cuts.map((cut) => ({ cut, machine: null }));
  return line.panels.cuts.flatMap((cut) =>
    Array.from({ length: machines }, (_, i): PanelLabel => ({ cut, machine: i + 1 })),
  );
}

function bodiesOf(line: LineResult, options: SheetOptions): readonly PageBody[] {
  const { language, machines } = options;
  const labels = labelsOf(line, machines);
  const times =
    machines > MOST_MACHINES ? ` ${say(language, (w) => w.panels.labels.times(machines), " · ")}` : "";
  const hint = `${say(language, (w) => w.panels.labels.hint, " · ")}${times}`;
  const bodies: PageBody[] = [];
  for (let next = 0; next < labels.length || bodies.length === 0; ) {
    const room = roomOf(PAPER, bodies.length);
    const lines = wrap(hint, room.widthMm, TEXT.normal);
    const topMm = lines.length * leadingMm(TEXT.normal) + 2;
    const columns = Math.max(1, Math.floor(room.widthMm / LABEL_MM.widthMm));
    const rows = Math.max(1, Math.floor((room.heightMm - topMm) / LABEL_MM.heightMm));
    const own = labels.slice(next, next + columns * rows);
    next += columns * rows;
    bodies.push({
      paper: PAPER,
      marks: [
        ...lines.map((t, i) => write(t, at(room.xMm, room.yMm + TEXT.normal + i * leadingMm(TEXT.normal)))),
        ...own.map((one, i) =>
          group(
            labelMarks(line, one, options),
            room.xMm + (i % columns) * LABEL_MM.widthMm,
            room.yMm + topMm + Math.floor(i / columns) * LABEL_MM.heightMm,
          ),
        ),
      ],
    });
  }
  return bodies;
}

function labelMarks(line: LineResult, { cut, machine }: PanelLabel, options: SheetOptions): Mark[] {
  const { language, machines } = options;
  const { widthMm, heightMm } = LABEL_MM;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const inner = widthMm - 2 * PAD_MM;
  const name = wrap(label(language, cut.labels, cut.panelId), inner, TEXT.large, "bold").slice(0, 3);
  const size = [cut.widthMm, cut.heightMm, cut.thicknessMm].map(sizeMm).join(" × ");
  const grain = { x: "grainX", y: "grainY", none: "grainNone" } as const;
  const book = line.machine.book.machine;
  const foot = [
    words((w) => w.panels.labels[grain[cut.grain]]),
    machine === null
      ? words((w) => w.panels.labels.anyMachine)
      : words((w) => w.panels.labels.machine(machine, machines)),
    `${cut.panelId} · ${label(language, { en: book.label, zh: book.label_zh }, book.id, " · ")} ${book.revision}`,
  ].flatMap((text) => wrap(text, inner, TEXT.small).slice(0, 2));
  const step = leadingMm(TEXT.small);
  const footTop = heightMm - PAD_MM - (foot.length - 1) * step;
  return [
    rect(box(0, 0, widthMm, heightMm), stroke("faint", LINE.thin, [3, 2])),
    ...name.map((t, i) =>
      write(t, at(PAD_MM, PAD_MM + TEXT.large + i * leadingMm(TEXT.large)), {
        heightMm: TEXT.large,
        weight: "bold",
      }),
    ),
    write(size, at(PAD_MM, footTop - 4.5), { heightMm: TEXT.head, weight: "bold" }),
    ...foot.map((t, i) => write(t, at(PAD_MM, footTop + i * step - 0.5), { heightMm: TEXT.small })),
  ];
}
