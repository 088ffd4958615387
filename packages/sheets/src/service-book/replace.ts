import type { Item } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { screwTable } from "../assembly/legend.ts";
import { screwGroups } from "../assembly/step-facts.ts";
import { panelSideName, rowLabel, toolText } from "../assembly/step-texts.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import { itemName } from "../machine-facts.ts";
import { mechanismsByType } from "./adjust.ts";
import {
  type BookRow,
  bookTable,
  hazardBlocks,
  named,
  note,
  row,
  sectionHead,
  thingHead,
  together,
} from "./blocks.ts";
import { boardsOf } from "./boards.ts";
import type { BookContext } from "./context.ts";
import { partNumber } from "./part-text.ts";
import { comesOffFirst, hazardsAt, pullLines, testTitles } from "./replace-facts.ts";

const NAME_MM = 34;

/** Every assembly: what comes off first, its screws, what is pulled, and the tests afterwards. */
export function replaceBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { words } = context;
  const mechanisms = [...mechanismsByType(context.line).values()].flat();
  const others = otherItems(context);
  return [
    ...hazardBlocks(context, ["mains", "stored", "volts", "raised"], "replace", widthMm),
    note(
      words((w) => w.replace.hint),
      widthMm,
    ),
    ...screwBlocks(context, widthMm),
    ...(mechanisms.length === 0
      ? []
      : [
          sectionHead(
            words((w) => w.replace.mechanisms),
            "replace:mechanisms",
            widthMm,
          ),
          ...sorted(context, mechanisms).flatMap((item) => mechanismSection(context, item, widthMm)),
        ]),
    ...itemTable(context, "boards", boardsOf(context), widthMm),
    ...itemTable(context, "devices", others.wired, widthMm),
    ...itemTable(context, "others", others.plain, widthMm),
  ];
}

const sorted = <T extends Item>({ line, language }: BookContext, items: readonly T[]): readonly T[] =>
  [...items].sort(
    (a, b) =>
      compareText(itemName(line, a.id, language), itemName(line, b.id, language)) || compareText(a.id, b.id),
  );

/** Devices that are items of their own and have screws or wires. */
function otherItems(context: BookContext): {
  readonly wired: readonly Item[];
  readonly plain: readonly Item[];
} {
  const { line, facts } = context;
  const own = [...line.machine.items.values()].filter(
    (item) => item.kind === "device" && item.parentId === null,
  );
  const isWired = (item: Item): boolean =>
    (facts.landingsOf.get(item.id) ?? []).some((l) => l.pointIds.some((p) => facts.wiresAt.has(p)));
  return {
    wired: sorted(context, own.filter(isWired)),
    plain: sorted(
      context,
      own.filter((item) => !isWired(item) && facts.fastenersOf.has(item.id)),
    ),
  };
}

/** All kinds of screws that hold something, with their signs and drivers. */
function screwBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { line, facts, words, language } = context;
  const all = [...facts.fastenersOf.values()].flat();
  const groups = screwGroups(line, all);
  if (groups.length === 0) return [];
  return [
    sectionHead(
      words((w) => w.replace.screws),
      "replace:screws",
      widthMm,
    ),
    note(
      words((w) => w.replace.screwsHint),
      widthMm,
    ),
    ...screwTable(line, groups, new Map(), language, widthMm),
    gap(2),
  ];
}

/** `4 × A, wood screw 2.9 × 9, cross driver 1`. */
function screwLines({ line, facts, words, language }: BookContext, item: Item): readonly string[] {
  return screwGroups(line, facts.fastenersOf.get(item.id) ?? []).map((group) => {
    const extras = [group.washer, group.nut].flatMap((type) =>
      type === null ? [] : [rowLabel(type, type.id, language)],
    );
    return [
      words((w) => w.replace.count(String(group.count), group.symbol.letter)),
      rowLabel(group.type, group.type.id, language),
      ...extras,
      toolText(line, group.driverId, group.type.drive, language),
    ]
      .filter((t) => t !== "")
      .join(", ");
  });
}

const namesOf = ({ line, language }: BookContext, ids: readonly string[]): readonly string[] =>
  ids.map((id) => itemName(line, id, language));

function mechanismSection(context: BookContext, item: Item, widthMm: number): readonly Block[] {
  const { line, words, language } = context;
  if (item.kind !== "mechanism") return [];
  const first = namesOf(context, comesOffFirst(context, item));
  const tests = testTitles(context, item);
  const adjust = context.pageOf(`adjust:${item.type.id}`);
  const steps = [
    words((w) => w.replace.back),
    ...(adjust === ""
      ? []
      : [
          words((w) =>
            w.see(
              words((own) => own.chapters.adjust),
              adjust,
            ),
          ),
        ]),
    ...tests,
    words((w) => w.replace.tighten),
  ];
  const screws = screwLines(context, item);
  const line2 = (name: string, text: string): Block => named(name, text, widthMm, NAME_MM);
  return together([
    thingHead(
      itemName(line, item.id, language),
      [item.id, panelSideName(line, item.place.panelId, item.place.side, language)].join(" · "),
      `item:${item.id}`,
      widthMm,
      46,
    ),
    ...hazardBlocks(context, hazardsAt(context, item), `replace-${item.id}`, widthMm),
    line2(
      words((w) => w.replace.first),
      first.length === 0 ? words((w) => w.replace.clean) : first.join("; "),
    ),
    line2(
      words((w) => w.replace.pull),
      pullLines(context, item).join("\n"),
    ),
    line2(
      words((w) => w.replace.own),
      screws.length === 0 ? words((w) => w.replace.noScrews) : screws.join("\n"),
    ),
    ...(item.type.part === null
      ? []
      : [
          line2(
            words((w) => w.replace.part),
            partNumber(context, item.type.part).split("\n").join("; "),
          ),
        ]),
    line2(
      words((w) => w.replace.after),
      steps.join("; "),
    ),
    gap(1.5),
  ]);
}

/** Boards or other items as a table, a row each; those that are taken out alike and side by side stand together. */
function itemTable(
  context: BookContext,
  kind: "boards" | "devices" | "others",
  items: readonly Item[],
  widthMm: number,
): readonly Block[] {
  const { words } = context;
  if (items.length === 0) return [];
  const small = { heightMm: TEXT.small } as const;
  const hazards = new Set(items.flatMap((item) => hazardsAt(context, item)));
  const rows = alike(context, items, kind).map((own) => itemRow(context, own, kind));
  const columns = [
    {
      header: words((w) => w.replace.what),
      weight: "bold" as const,
      ...small,
      detail: true,
      minMm: kind === "devices" ? 58 : 40,
    },
    { header: words((w) => w.replace.first), ...small, minMm: 22 },
    ...(kind === "others"
      ? []
      : [{ header: words((w) => w.replace.pull), ...small, minMm: kind === "devices" ? 38 : 54 }]),
    { header: words((w) => w.replace.own), ...small, minMm: 34 },
    { header: words((w) => w.replace.part), ...small, minMm: 24 },
  ];
  const tests =
    kind === "others" ? "" : [...new Set(items.flatMap((item) => testTitles(context, item)))].join("; ");
  return [
    sectionHead(
      words((w) => w.replace[kind]),
      `replace:${kind}`,
      widthMm,
    ),
    ...hazardBlocks(context, [...hazards], `replace-${kind}`, widthMm),
    ...(kind === "boards"
      ? [
          note(
            words((w) => w.replace.boardSteps),
            widthMm,
          ),
        ]
      : []),
    ...(tests === ""
      ? []
      : [
          named(
            words((w) => w.replace.after),
            tests,
            widthMm,
            NAME_MM,
          ),
        ]),
    ...bookTable(context, columns, rows, widthMm),
    gap(2),
  ];
}

/** Items that are taken out in the same way and are told elsewhere with their wires, together. */
function alike(
  context: BookContext,
  items: readonly Item[],
  kind: "boards" | "devices" | "others",
): readonly (readonly [Item, ...Item[]])[] {
  const groups = new Map<string, [Item, ...Item[]]>();
  for (const item of items) {
    const tabled = kind === "others" || context.pageOf(`item:${item.id}`) !== "";
    const key =
      kind === "boards" || !tabled
        ? item.id
        : JSON.stringify([item.type.id, comesOffFirst(context, item), screwLines(context, item)]);
    const own = groups.get(key);
    if (own === undefined) groups.set(key, [item]);
    else own.push(item);
  }
  return [...groups.values()];
}

function itemRow(
  context: BookContext,
  items: readonly [Item, ...Item[]],
  kind: "boards" | "devices" | "others",
): BookRow {
  const { line, language, words } = context;
  const [item] = items;
  const first = namesOf(context, comesOffFirst(context, item));
  const part = "part" in item.type ? (item.type.part ?? "") : "";
  const pages = [...new Set(items.map(({ id }) => context.pageOf(`item:${id}`)))].filter((p) => p !== "");
  const names = items.map(({ id }) => itemName(line, id, language));
  const wires =
    items.length === 1
      ? pullLines(context, item).join("\n")
      : pages.map((page) => words((w) => w.pageNo(page))).join(", ");
  const type =
    items.length === 1 || item.kind !== "device"
      ? (names[0] ?? "")
      : rowLabel(item.type, item.type.id, language);
  const cells = [
    items.length === 1 ? `${type}\n${item.id}` : `${items.length} × ${type}\n${names.join("; ")}`,
    first.length === 0 ? "–" : first.join("; "),
    ...(kind === "others" ? [] : [wires]),
    screwLines(context, item).join("\n") || words((w) => w.replace.noScrews),
    partNumber(context, item.kind === "board" ? (item.type.stuffed_part ?? part) : part),
  ];
  return row(cells, `replace:${item.id}`);
}
