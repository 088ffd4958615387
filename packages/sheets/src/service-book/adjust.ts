import type { BookRow as TableRowOf } from "@pinwright/book";
import type { LineResult, MechanismItem } from "@pinwright/engine";
import { bookTerm } from "@pinwright/words";
import { rowLabel } from "../assembly/step-texts.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import { shortNumber } from "../compose/number.ts";
import { label } from "../compose/say.ts";
import { itemName } from "../machine-facts.ts";
import { bookTable, hazardBlocks, named, note, prose, row, thingHead, together } from "./blocks.ts";
import type { BookContext } from "./context.ts";

type Step = TableRowOf<"mechanism_steps">;

/** Mechanisms of the machine by their type. */
export function mechanismsByType(line: LineResult): ReadonlyMap<string, readonly MechanismItem[]> {
  const types = new Map<string, MechanismItem[]>();
  for (const item of line.machine.items.values()) {
    if (item.kind !== "mechanism") continue;
    types.set(item.type.id, [...(types.get(item.type.id) ?? []), item]);
  }
  return types;
}

/** `1.7–2.3 mm`; below zero `−3 … 3 °`, so that no sign is taken for a dash. */
function limitsText({ min, max, unit }: Step): string {
  const n = (value: number): string => shortNumber(value, 3).replace("-", "−");
  const range =
    min !== null && max !== null
      ? `${n(min)}${min < 0 ? " … " : "–"}${n(max)}`
      : min !== null
        ? `≥ ${n(min)}`
        : max !== null
          ? `≤ ${n(max)}`
          : "";
  return range === "" ? "" : `${range} ${unit}`.trim();
}

/** How each kind of mechanism is put together, set, cycled and tightened, with gauges and limits. */
export function adjustBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { line, words } = context;
  const types = [...mechanismsByType(line)].filter(
    ([id, own]) => stepsOf(line, id).length > 0 || own[0]?.type.cycle_test,
  );
  if (types.length === 0) return [];
  return [
    ...hazardBlocks(context, ["moving", "hot", "springs"], "adjust", widthMm),
    note(
      words((w) => w.adjust.hint),
      widthMm,
    ),
    ...types.flatMap(([id, own]) => typeBlocks(context, id, own, widthMm)),
  ];
}

const stepsOf = (line: LineResult, typeId: string): readonly Step[] =>
  line.machine.book.tables.mechanism_steps
    .filter((step) => step.mechanism_type === typeId)
    .sort((a, b) => a.order - b.order);

function typeBlocks(
  context: BookContext,
  typeId: string,
  mechanisms: readonly MechanismItem[],
  widthMm: number,
): readonly Block[] {
  const { line, language, words } = context;
  const [first] = mechanisms;
  if (first === undefined) return [];
  const steps = stepsOf(line, typeId);
  const names = mechanisms.map((m) => itemName(line, m.id, language)).join("; ");
  const small = { heightMm: TEXT.small } as const;
  const cycle = label(language, { en: first.type.cycle_test, zh: first.type.cycle_test_zh }, "");
  const cells = steps.map((step) => {
    const caution = label(language, { en: step.caution, zh: step.caution_zh }, "");
    const text = rowLabel(step, "", language);
    const set = `${shortNumber(step.nominal ?? 0, 3)} ${step.unit}`.trim();
    return row([
      context.sheet((w) => w.steps.card.benchKinds[step.kind]),
      caution === "" ? text : `${text}\n⚠ ${caution}`,
      bookTerm(language, step.tool),
      [limitsText(step), step.nominal === null ? "" : words((w) => w.adjust.nominal(set))]
        .filter((t) => t !== "")
        .join("\n"),
    ]);
  });
  return together([
    thingHead(rowLabel(first.type, typeId, language), typeId, `adjust:${typeId}`, widthMm, 40),
    named(
      words((w) => w.adjust.machines),
      names,
      widthMm,
      30,
    ),
    ...bookTable(
      context,
      [
        { header: words((w) => w.adjust.step), weight: "bold", whole: true, ...small },
        { header: "", grow: true },
        { header: context.sheet((w) => w.steps.card.tool), ...small },
        { header: words((w) => w.adjust.limits), weight: "bold", align: "end", detail: true, whole: true },
      ],
      cells,
      widthMm,
    ),
    ...(steps.length === 0 && cycle !== "" ? [prose(cycle, widthMm)] : []),
    gap(2),
  ]);
}
