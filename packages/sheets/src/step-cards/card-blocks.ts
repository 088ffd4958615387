import type { BookRow } from "@pinwright/book";
import { type LineResult, partsOfStep, type WorkStep } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { momentBlocks, numbersText, screwTable } from "../assembly/legend.ts";
import { usualPlan } from "../assembly/plan.ts";
import { partKeys, screwGroups, stepFasteners } from "../assembly/step-facts.ts";
import { rowLabel, toolText } from "../assembly/step-texts.ts";
import { at, box, LINE, rect, line as rule, stroke, TEXT, write } from "../compose/draw.ts";
import { filledColumns } from "../compose/filled-columns.ts";
import { type Block, gap } from "../compose/flow.ts";
import { shortNumber } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { FIELD, type TableColumn, type TableRow, TICK, table } from "../compose/table.ts";
import { textWidthMm } from "../compose/text.ts";
import { badgeOf } from "../identity.ts";
import { itemName, someOf } from "../machine-facts.ts";

type Words = Parameters<Parameters<typeof say>[1]>[0]["steps"];
type Choose = (words: Words) => string;

const saying =
  (language: SheetLanguage, joint = " · ") =>
  (choose: Choose): string =>
    say(language, (w) => choose(w.steps), joint);

/** Most readings of a gauge that stand side by side. */
const MOST_READINGS = 4;

/** What must be there before, the tools, the skill and the station. */
export function factBlocks(
  line: LineResult,
  step: WorkStep,
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  const s = saying(language);
  const times = step.times > 1 ? [s((w) => w.card.times(step.times))] : [];
  const numbers = new Map(line.steps.steps.map((other) => [other.id, other.number]));
  const before = step.afterIds.flatMap((id) => numbers.get(id) ?? []).sort((a, b) => a - b);
  const load = usualPlan(line).loads.find((l) => l.stepIds.includes(step.id));
  const station = load === undefined ? "" : label(language, load.labels, load.placeId, " · ");
  const tools = step.tools.map((id) => toolText(line, id, id, language)).join("; ");
  const earlier = say(language, (w) =>
    [
      `${w.steps.card.before}:`,
      before.length === 0 ? w.steps.card.nothing : w.steps.stepsNo(numbersText(before)),
    ].join(" "),
  );
  const facts: readonly (readonly [string, string])[] = [
    [s((w) => w.card.station), station],
    [s((w) => w.card.tools), tools],
    [s((w) => w.card.skill), step.skill],
  ];
  const told = facts.filter(([, value]) => value !== "").map(([name, value]) => `${name}: ${value}`);
  const blocks = [
    paragraph(earlier.split("\n").join("  ·  "), widthMm, TEXT.normal, true),
    ...(told.length === 0 ? [] : [paragraph(told.join("   "), widthMm, TEXT.normal)]),
  ];
  const first = step.motions.some((m) => m.kind === "turn-over")
    ? [
        paragraph(
          saying(language, "\n")((w) => w.card.turnOver),
          widthMm,
          TEXT.normal,
          true,
        ),
      ]
    : [];
  return [...first, ...times.map((t) => paragraph(t, widthMm, TEXT.normal, true)), ...blocks, gap(1)];
}

function titleBlock(text: string, widthMm: number): Block {
  return { ...paragraph(text, widthMm, TEXT.large, true), keepMm: 10 };
}

/** The screws of a step, each line to be ticked, and the order of starting, aligning and tightening. */
export function screwBlocks(
  line: LineResult,
  step: WorkStep,
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  const fasteners = stepFasteners(line, step);
  if (fasteners.length === 0) return [];
  const groups = screwGroups(line, fasteners);
  const order = step.kind === "recheck" ? step.recheckIds : step.fastenerIds;
  const numbers = new Map(order.map((id, i) => [id, i + 1]));
  const s = saying(language, "\n");
  return [
    titleBlock(
      saying(language)((w) => w.card.screws),
      widthMm,
    ),
    ...screwTable(line, groups, numbers, language, widthMm, true),
    gap(1),
    ...(step.kind === "recheck"
      ? [
          paragraph(
            s((w) => w.card.recheck),
            widthMm,
            TEXT.normal,
            true,
          ),
        ]
      : momentBlocks(groups, language, widthMm)),
    gap(1.5),
  ];
}

/** Names of the items of a type in a step. */
function whichOf(line: LineResult, step: WorkStep, typeId: string, language: SheetLanguage): string {
  const own = step.itemIds.filter((id) => line.machine.items.get(id)?.type.id === typeId);
  return someOf(
    own.map((id) => itemName(line, id, language)),
    6,
    language,
  );
}

/** The parts of a step, each line to be ticked. */
export function partBlocks(
  line: LineResult,
  step: WorkStep,
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  const s = saying(language);
  const keys = partKeys(line, step);
  const keyed = (typeId: string): string => {
    const key = keys.get(typeId);
    return key === undefined ? "" : `(${key})`;
  };
  const rows: TableRow[] = [
    ...partsOfStep(line, step)
      .filter((part) => part.kind !== "harness")
      .map(
        (part): TableRow => ({
          kind: "row",
          cells: [
            TICK,
            keyed(part.typeId),
            `${part.count}`,
            label(language, part.labels, part.typeId, " · "),
            whichOf(line, step, part.typeId, language),
          ],
        }),
      ),
    ...step.itemIds.flatMap((id): TableRow[] =>
      line.machine.items.get(id)?.kind === "inline"
        ? [{ kind: "row", cells: [TICK, "", "1", itemName(line, id, language), id] }]
        : [],
    ),
  ];
  if (rows.length === 0) return [];
  const columns: TableColumn[] = [
    { header: say(language, (w) => w.common.done), align: "middle", whole: true },
    { header: s((w) => w.columns.key), whole: true },
    { header: s((w) => w.columns.count), heightMm: TEXT.large, weight: "bold", align: "end", whole: true },
    { header: s((w) => w.columns.part) },
    { header: s((w) => w.columns.names), heightMm: TEXT.small, grow: true },
  ];
  const filled = filledColumns(columns, rows);
  return [
    titleBlock(
      s((w) => w.card.parts),
      widthMm,
    ),
    ...table(
      filled.columns,
      filled.rows,
      widthMm,
      say(language, (w) => w.common.continued),
    ),
    gap(1.5),
  ];
}

/** What is said of a step that lays a harness or joins in-line connectors. */
export function wiringBlocks(
  line: LineResult,
  step: WorkStep,
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  const s = saying(language, "\n");
  const harness = step.harnessId === null ? undefined : line.harnesses.get(step.harnessId);
  const texts = [
    ...(harness === undefined ? [] : [s((w) => w.card.harness(badgeOf(harness)))]),
    ...(step.kind === "join" ? [s((w) => w.card.joins)] : []),
  ];
  return texts.map((text) => paragraph(text, widthMm, TEXT.large, true));
}

/** `0.8–1.2 mm`. */
function limitsText(row: BookRow<"mechanism_steps">): string {
  const n = (value: number | null): string => (value === null ? "" : shortNumber(value, 3));
  const range =
    row.min !== null && row.max !== null
      ? `${n(row.min)}–${n(row.max)}`
      : row.min !== null
        ? `≥ ${n(row.min)}`
        : row.max !== null
          ? `≤ ${n(row.max)}`
          : "";
  return range === "" ? "" : `${range} ${row.unit}`.trim();
}

/** How a mechanism is built, set, cycled and tightened again, each gauge with its limits and a field for the reading. */
export function benchBlocks(
  line: LineResult,
  step: WorkStep,
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  const rows = line.machine.book.tables.mechanism_steps
    .filter((row) => row.mechanism_type === step.mechanismTypeId)
    .sort((a, b) => a.order - b.order);
  if (step.kind !== "bench" || rows.length === 0) return [];
  const s = saying(language);
  const readings = Math.min(MOST_READINGS, Math.max(1, step.times));
  const columns: TableColumn[] = [
    { header: say(language, (w) => w.common.done), align: "middle", whole: true },
    { header: "", weight: "bold", whole: true },
    { header: "", grow: true },
    { header: s((w) => w.card.tool), heightMm: TEXT.small },
    { header: s((w) => w.card.gauge), weight: "bold" },
    ...Array.from({ length: readings }, (_, i) => ({
      header: readings === 1 ? s((w) => w.card.reading) : `${s((w) => w.card.reading)} ${i + 1}`,
      minMm: 14,
      heightMm: TEXT.large,
    })),
  ];
  const cells = rows.map((row): TableRow => {
    const limits = limitsText(row);
    const nominal =
      row.nominal === null ? "" : s((w) => w.card.nominal(`${shortNumber(row.nominal ?? 0, 3)} ${row.unit}`));
    const caution = label(language, { en: row.caution, zh: row.caution_zh }, "", "\n");
    const text = rowLabel(row, "", language, "\n");
    return {
      kind: "row",
      cells: [
        TICK,
        say(language, (w) => w.steps.card.benchKinds[row.kind]),
        caution === "" ? text : `${text}\n⚠ ${caution}`,
        row.tool,
        [limits, nominal].filter((t) => t !== "").join("; "),
        ...Array.from({ length: readings }, () => (limits === "" ? "" : FIELD)),
      ],
    };
  });
  return [
    titleBlock(
      s((w) => w.card.bench),
      widthMm,
    ),
    ...table(
      columns,
      cells,
      widthMm,
      say(language, (w) => w.common.continued),
    ),
    gap(1.5),
  ];
}

/** The box that is ticked when the step is done, and room for who did it. */
export function doneBlock(language: SheetLanguage, widthMm: number): Block {
  const s = saying(language);
  const done = s((w) => w.card.done);
  const initials = s((w) => w.card.initials);
  const sideMm = 8;
  const initialsMm = textWidthMm(initials, TEXT.normal);
  return {
    heightMm: 13,
    marks: [
      rule(at(0, 1.5), at(widthMm, 1.5), stroke("ink", LINE.strong)),
      rect(box(0, 4, sideMm, sideMm), stroke("ink", LINE.frame)),
      write(done, at(sideMm + 3, 10), { heightMm: TEXT.head, weight: "bold" }),
      write(initials, at(widthMm - 42 - initialsMm, 11)),
      rule(at(widthMm - 40, 11.5), at(widthMm, 11.5), stroke("ink", LINE.thin)),
    ],
  };
}
