import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import { bookTable, hazardBlocks, listed, note, prose, row, sectionHead } from "./blocks.ts";
import type { BookContext } from "./context.ts";
import { devicesOf } from "./numbered.ts";

type Way = Parameters<Parameters<BookContext["words"]>[0]>[0]["faults"]["rows"] extends infer R
  ? keyof R
  : never;

/** How a fault is found: the order, the page for phone or computer, and common faults. */
export function faultBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { words, list } = context;
  return [
    ...hazardBlocks(context, ["mains", "stored", "volts", "moving", "hot"], "faults", widthMm),
    prose(
      words((w) => w.faults.hint),
      widthMm,
    ),
    sectionHead(
      words((w) => w.faults.order),
      "faults:order",
      widthMm,
      50,
    ),
    ...listed(
      list((w) => w.faults.steps),
      widthMm,
      true,
    ),
    sectionHead(
      words((w) => w.faults.ways),
      "faults:ways",
      widthMm,
      50,
    ),
    ...wayTable(context, widthMm),
    gap(2),
    sectionHead(
      words((w) => w.faults.page),
      "faults:page",
      widthMm,
    ),
    prose(
      words((w) => w.faults.pageSays),
      widthMm,
    ),
    note(
      words((w) => w.safety.defer),
      widthMm,
    ),
  ];
}

/** Common faults of what the machine has, with the pages that help. */
function wayTable(context: BookContext, widthMm: number): readonly Block[] {
  const { words, line, facts } = context;
  const boards = [...line.machine.items.values()].some((i) => i.kind === "board" && i.address !== null);
  const has = (kind: Parameters<typeof devicesOf>[1]): boolean => devicesOf(context, kind).length > 0;
  const points = [...facts.programOf.values()].flat();
  const matrix = [...facts.programOf.values()].some(
    (own) => own.some((p) => p.kind === "driver") && own.some((p) => p.kind === "input"),
  );
  const fused = facts.fuses.some((fuse) => fuse.node.row !== null);
  const resets = facts.fuses.some((fuse) => fuse.node.row === null);
  const ways: readonly (readonly [Way, boolean, readonly string[]])[] = [
    ["dead", fused, ["fuses"]],
    ["rail", facts.fuses.length > 0, ["fuses", "power:tree", "pins:inline"]],
    ["board", boards && points.length > 0, ["chapter:boards", "replace:boards"]],
    ["switch", has("switches"), ["numbered:switches", "chapter:adjust"]],
    ["switchOn", has("switches"), ["numbered:switches", "chapter:adjust"]],
    ["matrix", matrix, ["numbered:switches"]],
    ["lamp", has("lamps"), ["numbered:lamps"]],
    ["lamps", has("lamps") && resets, ["chapter:boards", "fuses"]],
    ["coil", has("coils"), ["numbered:coils", "chapter:adjust", "fuses"]],
    ["coilWeak", has("coils"), ["chapter:adjust", "replace:mechanisms"]],
    ["coilOn", has("coils"), ["numbered:coils", "chapter:boards"]],
    ["fuse", fused, ["fuses", "numbered:coils"]],
    ["motor", has("motors"), ["numbered:motors", "chapter:adjust"]],
    ["sound", has("speakers"), ["numbered:speakers"]],
    ["sometimes", true, ["chapter:charts", "chapter:pins"]],
  ];
  const rows = ways.flatMap(([way, is, anchors]) => {
    if (!is) return [];
    const pages = anchors.map(context.pageOf).filter((page) => page !== "");
    const link = anchors.map(context.linkTo).find((own) => own !== undefined);
    return [
      row(
        [
          words((w) => w.faults.rows[way].shows),
          words((w) => w.faults.rows[way].look),
          [...new Set(pages)].join(", "),
        ],
        undefined,
        [undefined, undefined, link],
      ),
    ];
  });
  return bookTable(
    context,
    [
      { header: words((w) => w.faults.shows), weight: "bold", minMm: 46 },
      { header: words((w) => w.faults.look), grow: true },
      { header: words((w) => w.faults.pages), align: "end", heightMm: TEXT.small, minMm: 16 },
    ],
    rows,
    widthMm,
  );
}
