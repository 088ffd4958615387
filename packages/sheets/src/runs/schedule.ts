import { type DayNumber, dayText, mondayOf, type RunTiming, type StageBlock } from "@pinwright/engine";
import type { SheetDocument } from "../compose/document.ts";
import { at, box, LINE, polyline, rect, line as ruled, stroke, TEXT, write } from "../compose/draw.ts";
import { type Block, gap, stacked } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import type { Mark } from "../compose/mark.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { textWidthMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import { runIdentity } from "./identity.ts";
import { type RunSheetInput, runTitle, wordsOf } from "./texts.ts";

/** Column of the stages' names, height of their rows, and of the axis: for reading at arm's length. */
const NAME_MM = 78;
const ROW_MM = 8;
const AXIS_MM = 9;
/** Labels of the axis stand no closer. */
const LABEL_MM = 24;

/** The days of every run at every stage, as a chart with one axis. */
export function composeRunSchedule(input: RunSheetInput): SheetDocument {
  const { line, plan, options } = input;
  const words = wordsOf(options);
  return composeListing({
    identity: runIdentity(
      line,
      "run-schedule",
      "",
      say(options.language, (w) => w.runs.allRuns),
      options,
    ),
    language: options.language,
    paper: PAPERS["a3-landscape"],
    heading: {
      badge: "",
      title: words((w) => w.runs.kinds["run-schedule"]),
      subtitle: words((w) => w.runs.allRuns),
      facts: [words((w) => w.runs.machines(plan.runs.reduce((sum, run) => sum + run.machines, 0)))],
    },
    cautions: [],
    blocks: (widthMm) => [
      paragraph(
        words((w) => w.runs.scheduleHint),
        widthMm,
        TEXT.small,
      ),
      gap(2),
      ...plan.runs.flatMap((run) => [runBlock(input, run, axisOf(input, widthMm)), gap(4)]),
    ],
    grids: [grid(input)],
  });
}

/** Places of days along the sheet. */
interface Axis {
  readonly first: DayNumber;
  readonly last: DayNumber;
  readonly widthMm: number;
  readonly xOf: (day: DayNumber) => number;
}

function axisOf({ plan }: RunSheetInput, widthMm: number): Axis {
  const days = [
    ...plan.stages.flatMap((block) => [block.startDay, block.endDay]),
    ...plan.runs.flatMap((run) => [run.shipDay, run.readyDay].flatMap((day) => day ?? [])),
  ];
  const first = mondayOf(days.reduce((a, b) => Math.min(a, b), days[0] ?? 0));
  const last = mondayOf(days.reduce((a, b) => Math.max(a, b), first)) + 7;
  const scale = (widthMm - NAME_MM) / (last - first);
  return { first, last, widthMm, xOf: (day) => NAME_MM + (day - first) * scale };
}

/** One run: its name, the axis, and a bar for each stage. */
function runBlock(input: RunSheetInput, run: RunTiming, axis: Axis): Block {
  const words = wordsOf(input.options);
  const own = input.plan.stages.filter((block) => block.runId === run.runId);
  const heightMm = AXIS_MM + own.length * ROW_MM;
  const marks: Mark[] = [...axisMarks(axis, heightMm)];
  if (run.shipDay !== null) marks.push(...shipMarks(axis.xOf(run.shipDay + 1), heightMm));
  for (const [i, block] of own.entries()) marks.push(...barMarks(input, block, axis, AXIS_MM + i * ROW_MM));
  const late =
    run.isLate && run.shipDay !== null && run.readyDay !== null
      ? [
          words((w) => w.runs.late((run.readyDay ?? 0) - (run.shipDay ?? 0))),
          run.heldBy === null ? "" : words((w) => w.runs.held(run.heldBy ?? "")),
        ]
      : [];
  const facts = [
    words((w) => w.runs.machines(run.machines)),
    run.shipDay === null ? "" : words((w) => w.runs.ships(dayText(run.shipDay ?? 0))),
    run.readyDay === null ? "" : words((w) => w.runs.ready(dayText(run.readyDay ?? 0))),
    ...late,
  ].filter((text) => text !== "");
  const title = `${runTitle(input, run.runId).split("\n").join(" · ")}: ${facts.join(", ")}`;
  return stacked(paragraph(title, axis.widthMm, TEXT.large, true), { heightMm, marks });
}

function axisMarks(axis: Axis, heightMm: number): Mark[] {
  const weekMm = axis.xOf(7) - axis.xOf(0);
  const every = 7 * Math.max(1, Math.ceil(LABEL_MM / weekMm));
  const marks: Mark[] = [ruled(at(0, AXIS_MM), at(axis.widthMm, AXIS_MM), stroke("ink", LINE.thin))];
  for (let day = axis.first; day < axis.last; day += 7) {
    const x = axis.xOf(day);
    const named = (day - axis.first) % every === 0;
    marks.push(ruled(at(x, named ? AXIS_MM - 3 : AXIS_MM - 1), at(x, heightMm), stroke("faint", LINE.hair)));
    if (named) marks.push(write(dayText(day), at(x + 0.6, AXIS_MM - 3.4), { heightMm: TEXT.small }));
  }
  return marks;
}

function barMarks({ options }: RunSheetInput, block: StageBlock, axis: Axis, yMm: number): Mark[] {
  const name = label(options.language, block.labels, block.stageId, " · ");
  const lines = wrap(name, NAME_MM - 3, TEXT.normal).slice(0, 2);
  const small = lines.length > 1 ? wrap(name, NAME_MM - 3, TEXT.small).slice(0, 2) : lines;
  const heightMm = lines.length > 1 ? TEXT.small : TEXT.normal;
  const from = axis.xOf(block.startDay);
  const to = Math.max(from + 0.8, axis.xOf(block.endDay + 1));
  const dates = `${dayText(block.startDay).slice(5)} – ${dayText(block.endDay).slice(5)}`;
  const datesMm = textWidthMm(dates, TEXT.small);
  // Before the bar, where the ship day is not in the way; after it where there is no room.
  const isBefore = from - 1.5 - datesMm >= NAME_MM;
  const textX = isBefore ? from - 1.5 - datesMm : to + 1.5;
  return [
    ...small.map((text, i) =>
      write(text, at(0, yMm + ROW_MM / 2 + heightMm / 2 + (i - (small.length - 1) / 2) * 2.7), { heightMm }),
    ),
    rect(box(from, yMm + 1.8, to - from, ROW_MM - 3.6), stroke("ink", LINE.medium), "faint"),
    rect(box(textX - 0.4, yMm + 2.4, datesMm + 0.8, ROW_MM - 4.8), null, "paper"),
    write(dates, at(textX, yMm + ROW_MM / 2 + TEXT.small / 2), { heightMm: TEXT.small }),
    ruled(at(0, yMm + ROW_MM), at(axis.widthMm, yMm + ROW_MM), stroke("faint", LINE.hair)),
  ];
}

/** The ship day: a line with a triangle on it. */
function shipMarks(xMm: number, heightMm: number): Mark[] {
  const tip = [
    at(xMm - 1.8, AXIS_MM - 3),
    at(xMm + 1.8, AXIS_MM - 3),
    at(xMm, AXIS_MM),
    at(xMm - 1.8, AXIS_MM - 3),
  ];
  return [
    ruled(at(xMm, AXIS_MM), at(xMm, heightMm), stroke("accent", LINE.strong)),
    polyline(tip, stroke("accent", LINE.strong)),
  ];
}

function grid(input: RunSheetInput): Grid {
  const { plan, options } = input;
  const words = wordsOf(options);
  return {
    name: words((w) => w.runs.kinds["run-schedule"]),
    header: [
      words((w) => w.runs.allRuns),
      words((w) => w.runs.stage),
      words((w) => w.parts.name),
      words((w) => w.runs.begins),
      words((w) => w.runs.ends),
      words((w) => w.runs.minutesEach),
      words((w) => w.runs.people),
    ],
    rows: plan.stages.map((block) => [
      block.runId,
      block.stageId,
      label(options.language, block.labels, block.stageId, " · "),
      dayText(block.startDay),
      dayText(block.endDay),
      block.minutesPerMachine,
      block.people,
    ]),
  };
}
