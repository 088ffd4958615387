import { type BillLine, type BillNode, type LineResult, MACHINE_NODE } from "@pinwright/engine";
import { numberOfDecimal } from "@pinwright/kernel";
import type { SheetLanguage } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { assemblyIdentity, assemblySheetName } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import {
  amountText,
  assemblies,
  LISTED_KINDS,
  madeText,
  nodeLabel,
  nodeName,
  placesText,
  quantityText,
  rowsOfKind,
  sourceText,
  timesMachines,
  unitText,
} from "./part-rows.ts";

type Words = (choose: Parameters<typeof say>[1]) => string;

/** Name of the list by assembly. */
const BY_ASSEMBLY = "assemblies";

/**
 * What a machine is made of: everything added up, also for so many machines, and each assembly with what is directly
 * in it. No prices: they are no business of the floor.
 */
export function* composePartsLists(line: LineResult, options: SheetOptions): Generator<SheetDocument, void> {
  if (line.parts.bill.lines.length === 0) return;
  const words: Words = (choose) => say(options.language, choose, " · ");
  yield composePartsList(line, options, "", {
    title: (w) => w.parts.all,
    hint: (w) => w.parts.allHint,
    blocks: (widthMm) => totalBlocks(line, options, words, widthMm),
    grid: totalGrid(line, options, words),
  });
  yield composePartsList(line, options, BY_ASSEMBLY, {
    title: (w) => w.parts.byAssembly,
    hint: (w) => w.parts.byAssemblyHint,
    blocks: (widthMm) => assemblyBlocks(line, options.language, words, widthMm),
    grid: assemblyGrid(line, options.language, words),
  });
}

/** Names of the sheets that `composePartsLists` makes. */
export function partsListNames(line: LineResult, language: SheetLanguage): readonly string[] {
  return line.parts.bill.lines.length === 0
    ? []
    : ["", BY_ASSEMBLY].map((name) => assemblySheetName("parts-list", name, language));
}

interface List {
  readonly title: Parameters<typeof say>[1];
  readonly hint: Parameters<typeof say>[1];
  readonly blocks: (widthMm: number) => readonly Block[];
  readonly grid: Grid;
}

function composePartsList(line: LineResult, options: SheetOptions, name: string, list: List): SheetDocument {
  const { language, machines } = options;
  const words: Words = (choose) => say(language, choose, " · ");
  const kinds = [...line.parts.bill.totals.keys()].filter(
    (id) => line.parts.bill.nodes.get(id)?.kind === "part",
  );
  return composeListing({
    identity: assemblyIdentity(
      line,
      { kind: "parts-list", name, letters: name.toUpperCase(), title: say(language, list.title) },
      options,
    ),
    language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: "",
      title: say(language, (w) => w.kinds["parts-list"]),
      subtitle: say(language, list.title),
      facts: [
        words((w) => w.parts.kindsOfParts(kinds.length)),
        ...(machines > 1 ? [words((w) => w.parts.forMachines(machines))] : []),
      ],
    },
    cautions: [],
    blocks: (widthMm) => [
      paragraph(words(list.hint), widthMm, TEXT.small),
      gap(1.5),
      ...list.blocks(widthMm),
    ],
    grids: [list.grid],
  });
}

const END = { align: "end", whole: true } as const;
const PART = (words: Words): TableColumn => ({
  header: words((w) => w.parts.part),
  heightMm: TEXT.small,
  weight: "bold",
  whole: true,
});

function totalBlocks(
  line: LineResult,
  { language, machines }: SheetOptions,
  words: Words,
  widthMm: number,
): readonly Block[] {
  const several = machines > 1;
  const columns: readonly TableColumn[] = [
    PART(words),
    { header: words((w) => w.parts.name), heightMm: TEXT.small, grow: true },
    { header: words((w) => w.parts.inOne), weight: "bold", ...END },
    ...(several ? [{ header: words((w) => w.parts.forMachines(machines)), ...END }] : []),
    { header: words((w) => w.parts.comes), heightMm: TEXT.small },
    { header: words((w) => w.parts.made), heightMm: TEXT.small },
  ];
  const rows = LISTED_KINDS.flatMap((kind): readonly TableRow[] => {
    const own = rowsOfKind(line, kind);
    if (own.length === 0) return [];
    const note = kind === "unnamed" ? words((w) => w.parts.missing(own.length)) : "";
    return [
      { kind: "group", text: words((w) => w.parts.kinds[kind]), detail: note },
      ...own.map(
        ({ node, colour, quantity }): TableRow => ({
          kind: "row",
          cells: [
            nodeName(node),
            nodeLabel(line, node, colour, language),
            amountText(quantity, node, language),
            ...(several ? [amountText(timesMachines(quantity, machines), node, language)] : []),
            sourceText(line, node, language),
            madeText(line, node),
          ],
        }),
      ),
    ];
  });
  return table(
    columns,
    rows,
    widthMm,
    words((w) => w.common.continued),
  );
}

/** An assembly's name, and how many of it are in one machine. */
function assemblyTitle(
  line: LineResult,
  node: BillNode,
  language: SheetLanguage,
  words: Words,
): { readonly text: string; readonly detail: string } {
  const named = nodeLabel(line, node, "", language);
  if (node.id === MACHINE_NODE) return { text: named, detail: "" };
  const times = quantityText(line.parts.bill.totals.get(node.id) ?? 0n);
  return { text: `${nodeName(node)}: ${named}`, detail: words((w) => w.parts.timesInOne(times)) };
}

function assemblyBlocks(
  line: LineResult,
  language: SheetLanguage,
  words: Words,
  widthMm: number,
): readonly Block[] {
  const columns: readonly TableColumn[] = [
    PART(words),
    { header: words((w) => w.parts.name), heightMm: TEXT.small, grow: true },
    { header: words((w) => w.parts.quantity), weight: "bold", ...END },
    { header: words((w) => w.parts.at), heightMm: TEXT.small },
  ];
  const rows = assemblies(line).flatMap(({ node, lines }): readonly TableRow[] => [
    { kind: "group", ...assemblyTitle(line, node, language, words) },
    ...lines.flatMap((each) => {
      const cells = lineCells(line, each, language);
      return cells === null ? [] : [{ kind: "row" as const, cells }];
    }),
  ]);
  return table(
    columns,
    rows,
    widthMm,
    words((w) => w.common.continued),
  );
}

function lineCells(line: LineResult, each: BillLine, language: SheetLanguage): readonly string[] | null {
  const node = line.parts.bill.nodes.get(each.childId);
  if (node === undefined) return null;
  return [
    nodeName(node),
    nodeLabel(line, node, each.colour, language),
    amountText(each.quantity, node, language),
    placesText(each),
  ];
}

function totalGrid(line: LineResult, { language, machines }: SheetOptions, words: Words): Grid {
  return {
    name: words((w) => w.parts.allShort),
    header: [
      words((w) => w.parts.part),
      words((w) => w.parts.name),
      words((w) => w.common.colour),
      words((w) => w.parts.inOne),
      words((w) => w.parts.forMachines(machines)),
      words((w) => w.parts.unit),
      words((w) => w.parts.comes),
      words((w) => w.parts.made),
    ],
    rows: LISTED_KINDS.flatMap((kind) =>
      rowsOfKind(line, kind).map(({ node, colour, quantity }) => [
        nodeName(node),
        nodeLabel(line, node, "", language),
        colour,
        numberOfDecimal(quantity),
        numberOfDecimal(timesMachines(quantity, machines)),
        unitText(node, language),
        sourceText(line, node, language),
        madeText(line, node),
      ]),
    ),
  };
}

function assemblyGrid(line: LineResult, language: SheetLanguage, words: Words): Grid {
  return {
    name: words((w) => w.parts.byAssembly),
    header: [
      words((w) => w.parts.byAssembly),
      words((w) => w.parts.part),
      words((w) => w.parts.name),
      words((w) => w.common.colour),
      words((w) => w.parts.quantity),
      words((w) => w.parts.unit),
      words((w) => w.parts.at),
    ],
    rows: assemblies(line).flatMap(({ node: parent, lines }) =>
      lines.flatMap((each) => {
        const node = line.parts.bill.nodes.get(each.childId);
        if (node === undefined) return [];
        return [
          [
            parent.id,
            nodeName(node),
            nodeLabel(line, node, "", language),
            each.colour,
            numberOfDecimal(each.quantity),
            unitText(node, language),
            each.at.join(" "),
          ],
        ];
      }),
    ),
  };
}
