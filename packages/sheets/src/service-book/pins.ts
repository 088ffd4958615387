import type { Item, Landing } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { rowLabel } from "../assembly/step-texts.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { TableColumn } from "../compose/table.ts";
import { gaugeText, netName } from "../facts.ts";
import { harnessTitle } from "../identity.ts";
import { itemName } from "../machine-facts.ts";
import { type BookRow, bookTable, hazardBlocks, note, row, sectionHead } from "./blocks.ts";
import type { BookContext } from "./context.ts";
import type { OwnWire } from "./facts.ts";
import { runsText } from "./runs-text.ts";

/** Harnesses, and every connector pin by pin with colours and where the wire goes. */
export function pinBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { line, words } = context;
  if (line.harnesses.size === 0) return [];
  const items = [...line.machine.items.values()].sort(
    (a, b) => compareText(a.labels.en, b.labels.en) || compareText(a.id, b.id),
  );
  const of = (kind: Item["kind"]): readonly Item[] => items.filter((item) => item.kind === kind);
  return [
    ...hazardBlocks(context, ["mains", "stored", "volts", "earth"], "pins", widthMm),
    note(
      words((w) => w.pins.hint),
      widthMm,
    ),
    ...harnessBlocks(context, widthMm),
    ...housings(context, "boards", of("board"), widthMm),
    ...housings(context, "inline", of("inline"), widthMm),
    ...housings(context, "devices", of("device"), widthMm),
    ...bareBlocks(context, of("device"), widthMm),
  ];
}

/** Every harness with its number, and the pages on which its wires are followed. */
function harnessBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { line, options, words } = context;
  const rows = [...line.harnesses.values()].map((harness) =>
    row(
      [
        `H${harness.harness.number}`,
        harnessTitle(harness, options),
        String(harness.wires.length),
        wirePages(
          context,
          harness.harness.number,
          harness.wires.map((w) => w.number),
        ),
      ],
      `harness:${harness.harness.id}`,
    ),
  );
  return [
    sectionHead(
      context.sheet((w) => w.parts.kinds.harness),
      "harnesses",
      widthMm,
    ),
    note(
      words((w) => w.pins.harnessHint),
      widthMm,
    ),
    ...bookTable(
      context,
      [
        { header: context.sheet((w) => w.common.harness), weight: "bold", whole: true },
        { header: words((w) => w.parts.name), grow: true },
        { header: words((w) => w.pins.wires), align: "end", whole: true },
        { header: words((w) => w.pins.wirePages), heightMm: TEXT.small, grow: true },
      ],
      rows,
      widthMm,
    ),
    gap(2),
  ];
}

/** `1–8: 61; 9–20: 62`: where the wires of a harness are followed in the charts. */
function wirePages(context: BookContext, harness: number, wires: readonly number[]): string {
  const byPage = new Map<string, number[]>();
  for (const wire of wires) {
    const page = context.pageOf(`wire:${harness}-${wire}`);
    if (page === "") continue;
    byPage.set(page, [...(byPage.get(page) ?? []), wire]);
  }
  const pages = [...byPage].sort(([a], [b]) => Number(a) - Number(b));
  const [only] = pages;
  if (pages.length === 1 && only !== undefined) return context.words((w) => w.pageNo(only[0]));
  return pages.map(([page, own]) => `${runsText(own)}: ${context.words((w) => w.pageNo(page))}`).join("; ");
}

function columnsOf(context: BookContext, first: string): readonly TableColumn[] {
  const { words } = context;
  const small = { heightMm: TEXT.small } as const;
  return [
    { header: first, ...small, weight: "bold", whole: true },
    { header: words((w) => w.pins.signal), ...small, grow: true },
    { header: context.sheet((w) => w.common.wire), ...small, weight: "bold", whole: true, align: "end" },
    { header: context.sheet((w) => w.common.colour), ...small, weight: "bold", whole: true },
    { header: context.sheet((w) => w.common.gauge), ...small, whole: true },
    { header: words((w) => w.pins.to), ...small, grow: true },
  ];
}

/** Plugs of some items, pin by pin. */
function housings(
  context: BookContext,
  kind: "boards" | "inline" | "devices",
  items: readonly Item[],
  widthMm: number,
): readonly Block[] {
  const { words, facts } = context;
  const titles = {
    boards: words((w) => w.pins.onBoards),
    inline: words((w) => w.pins.inline),
    devices: words((w) => w.pins.onDevices),
  };
  const rows = items.flatMap((item) =>
    (facts.landingsOf.get(item.id) ?? []).flatMap((landing) =>
      landing.connector === null ? [] : landingRows(context, item, landing),
    ),
  );
  if (rows.length === 0) return [];
  return [
    sectionHead(titles[kind], `pins:${kind}`, widthMm),
    ...bookTable(
      context,
      columnsOf(
        context,
        words((w) => w.pins.pin),
      ),
      rows,
      widthMm,
    ),
    gap(2),
  ];
}

function landingRows(context: BookContext, item: Item, landing: Landing): readonly BookRow[] {
  const { line, language, words, facts } = context;
  const local = landing.id.slice(landing.id.indexOf(":") + 1);
  const side =
    landing.half === null ? local : words((w) => (landing.half === "a" ? w.pins.halfA : w.pins.halfB));
  const family = line.machine.book.tables.connector_families.find((f) => f.id === landing.connector?.family);
  const keys = line.keys.get(landing.id) ?? landing.keyPins;
  const used = landing.pointIds.filter((id, i) => facts.wiresAt.has(id) || keys.includes(i + 1));
  // What nothing is plugged into is told with its board.
  if (!landing.pointIds.some((id) => facts.wiresAt.has(id))) return [];
  const pins = landing.pointIds.flatMap((pointId, i) =>
    used.includes(pointId) ? pointRows(context, pointId, keys.includes(i + 1)) : [],
  );
  const free = landing.pointIds.flatMap((id, i) => (used.includes(id) ? [] : [i + 1]));
  const spare = free.length === 0 ? [] : [row([runsText(free), words((w) => w.pins.spare)])];
  return [
    {
      kind: "group",
      anchor: `pins:${landing.id}`,
      text: `${itemName(line, item.id, language)} · ${side}`,
      detail: [
        landing.id,
        rowLabel(family, "", language),
        words((w) => w.pins.housing(String(landing.pointIds.length))),
      ]
        .filter((t) => t !== "")
        .join(" · "),
    },
    ...pins,
    ...spare,
  ];
}

/** A row for each wire at a point; one for a point without. */
function pointRows(context: BookContext, pointId: string, isKey: boolean): readonly BookRow[] {
  const { line, language, words, facts } = context;
  const point = line.machine.points.get(pointId);
  if (point === undefined) return [];
  const pin = point.pin === null ? point.localId : String(point.pin);
  const wires = facts.wiresAt.get(pointId) ?? [];
  if (wires.length === 0)
    return [row([pin, isKey || point.use === "key" ? words((w) => w.pins.key) : words((w) => w.pins.spare)])];
  return wires.map((own) =>
    row([
      pin,
      netName(line, own.wire.netId, language),
      own.number,
      own.wire.colour,
      gaugeText(own.wire.wireType),
      otherEnd(context, own, pointId),
    ]),
  );
}

/** The far end of a wire with the name of what it is on. */
function otherEnd(context: BookContext, { wire }: OwnWire, pointId: string): string {
  const { line, language, words } = context;
  const other = wire.a === pointId ? wire.b : wire.a;
  const itemId = line.machine.points.get(other)?.itemId;
  if (itemId === undefined)
    return `${words((w) => w.pins.splice)} ${other.slice(other.lastIndexOf(":") + 1)}`;
  return `${other} · ${itemName(line, itemId, language)}`;
}

/** Ends without a housing on what is in no table by number. */
function bareBlocks(context: BookContext, items: readonly Item[], widthMm: number): readonly Block[] {
  const { words, facts, line, language } = context;
  const tabled = new Set(["switch", "button", "sensor", "lamp", "coil", "motor", "speaker"]);
  const rows = items.flatMap((item): readonly BookRow[] => {
    if (item.kind !== "device" || tabled.has(item.type.class)) return [];
    const landings = (facts.landingsOf.get(item.id) ?? []).filter((l) => l.connector === null);
    const own = landings.flatMap((landing) =>
      landing.pointIds.filter((id) => facts.wiresAt.has(id)).flatMap((id) => pointRows(context, id, false)),
    );
    if (own.length === 0) return [];
    const text = itemName(line, item.id, language);
    return [{ kind: "group", text, detail: item.id, anchor: `pins:${item.id}` }, ...own];
  });
  if (rows.length === 0) return [];
  return [
    sectionHead(
      words((w) => w.pins.bare),
      "pins:bare",
      widthMm,
    ),
    ...hazardBlocks(context, ["mains", "earth"], "pins-bare", widthMm),
    note(
      words((w) => w.pins.bareHint),
      widthMm,
    ),
    ...bookTable(
      context,
      columnsOf(
        context,
        words((w) => w.pins.terminal),
      ),
      rows,
      widthMm,
    ),
  ];
}
