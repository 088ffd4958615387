import { dayText, type ProposedLine, type ProposedOrder } from "@pinwright/engine";
import { currencyPlaces } from "@pinwright/kernel";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label } from "../compose/say.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { runIdentity } from "./identity.ts";
import {
  cellNumber,
  moneyText,
  partName,
  partRow,
  quantityText,
  type RunSheetInput,
  wordsOf,
} from "./texts.ts";

/** An order to one supplier: what, how many, at what price, by when. */
export function composePurchaseOrder(input: RunSheetInput, order: ProposedOrder): SheetDocument {
  const { line, options } = input;
  const words = wordsOf(options);
  const supplier = line.machine.shop.tables.suppliers.find((row) => row.id === order.supplierId);
  const name = supplier === undefined ? order.supplierId : labelled(supplier, options.language);
  const { owner } = line.machine.book.machine;
  const to = [name, supplier?.contact ?? ""].filter((text) => text !== "").join(", ");
  return composeListing({
    identity: runIdentity(line, "purchase-order", order.id, name, options),
    language: options.language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: "",
      title: words((w) => w.runs.kinds["purchase-order"]),
      subtitle: [
        `${words((w) => w.runs.to)}: ${to}`,
        owner === "" ? "" : `${words((w) => w.runs.from)}: ${owner}`,
      ]
        .filter((text) => text !== "")
        .join("\n"),
      facts: [
        order.id,
        words((w) => w.runs.orderedOn(dayText(order.orderDay))),
        words((w) => w.runs.dueBy(dayText(order.dueDay))),
        words((w) => w.runs.lines(order.lines.length)),
      ],
    },
    cautions: [],
    blocks: (widthMm) => blocks(input, order, widthMm),
    grids: [grid(input, order)],
  });
}

const labelled = (
  row: { readonly id: string; readonly label: string; readonly label_zh: string },
  language: RunSheetInput["options"]["language"],
): string => label(language, { en: row.label, zh: row.label_zh }, row.id, " · ");

/** What a part is made of, as the supplier is told; nothing for what is bought off the shelf. */
function madeOf({ line }: RunSheetInput, partId: string): string {
  const part = partRow(line, partId);
  if (part === undefined) return "";
  const thickness = part.thickness_mm === null ? "" : `${part.thickness_mm} mm`;
  return [part.material, thickness, part.finish].filter((text) => text !== "").join(", ");
}

/** The supplier's own number of a part. */
function orderNumber({ line }: RunSheetInput, { supplierId }: ProposedOrder, partId: string): string {
  const rows = line.machine.shop.tables.prices;
  return (
    rows.find((row) => row.part === partId && row.supplier === supplierId && row.order_number !== "")
      ?.order_number ?? ""
  );
}

const END = { align: "end", whole: true } as const;

function blocks(input: RunSheetInput, order: ProposedOrder, widthMm: number): readonly Block[] {
  const words = wordsOf(input.options);
  const places = currencyPlaces(order.currency);
  const money = (amount: bigint): string => moneyText(amount, places);
  const numbers = order.lines.some((own) => orderNumber(input, order, own.partId) !== "");
  const columns: readonly TableColumn[] = [
    { header: words((w) => w.runs.part), weight: "bold", detail: true, grow: true },
    ...(numbers ? [{ header: words((w) => w.runs.number), heightMm: TEXT.small }] : []),
    { header: words((w) => w.runs.revision), whole: true },
    { header: words((w) => w.runs.quantity), weight: "bold", detail: true, ...END },
    { header: words((w) => w.runs.price(order.currency)), ...END },
    { header: words((w) => w.runs.amount(order.currency)), ...END },
    { header: words((w) => w.runs.due), whole: true },
  ];
  const blank = numbers ? ["", ""] : [""];
  const rows: readonly TableRow[] = [
    ...order.lines.map((own): TableRow => {
      const name = partName(input, own.partId);
      return {
        kind: "row",
        cells: [
          [own.partId, own.colour === "" ? name : `${name}, ${own.colour}`, madeOf(input, own.partId)]
            .filter((text) => text !== "")
            .join("\n"),
          ...(numbers ? [orderNumber(input, order, own.partId)] : []),
          own.revision,
          amountOf(input, own),
          own.price === null ? words((w) => w.runs.noPrice) : priceText(own.price),
          own.price === null ? "" : money(own.amount),
          dayText(own.dueDay),
        ],
      };
    }),
    ...(order.shipping === 0n
      ? []
      : [
          {
            kind: "row" as const,
            cells: [words((w) => w.runs.carriage), ...blank, "", "", money(order.shipping), ""],
          },
        ]),
    { kind: "total", cells: [words((w) => w.runs.total), ...blank, "", "", money(order.total.value), ""] },
  ];
  const lacks = order.total.missing.length;
  return [
    ...table(
      columns,
      rows,
      widthMm,
      words((w) => w.common.continued),
    ),
    ...(lacks === 0
      ? []
      : [
          gap(3),
          paragraph(
            words((w) => w.runs.lacks(lacks)),
            widthMm,
            TEXT.normal,
            true,
          ),
        ]),
  ];
}

/** A price to as many places as it has, at least two. */
function priceText(price: bigint): string {
  const text = quantityExact(price);
  const [whole = "0", fraction = ""] = text.split(".");
  return `${whole}.${fraction.padEnd(2, "0")}`;
}

const quantityExact = (value: bigint): string => moneyText(value, 6).replace(/\.?0+$/u, "");

/** How many, and below it in how many packs. */
function amountOf(input: RunSheetInput, own: ProposedLine): string {
  const words = wordsOf(input.options);
  const unit = partRow(input.line, own.partId)?.unit ?? "each";
  const one = quantityText(own.pack);
  const amount = `${quantityText(own.quantity)} ${words((w) => w.runs.units[unit])}`;
  return one === "1" || own.pack === 0n
    ? amount
    : `${amount}\n${words((w) => w.runs.packs(String(own.packs), one))}`;
}

function grid(input: RunSheetInput, order: ProposedOrder): Grid {
  const words = wordsOf(input.options);
  return {
    name: words((w) => w.runs.kinds["purchase-order"]),
    header: [
      words((w) => w.runs.part),
      words((w) => w.parts.name),
      words((w) => w.runs.colour),
      words((w) => w.runs.number),
      words((w) => w.runs.revision),
      words((w) => w.runs.made),
      words((w) => w.runs.quantity),
      words((w) => w.runs.unit),
      words((w) => w.runs.price(order.currency)),
      words((w) => w.runs.amount(order.currency)),
      words((w) => w.runs.due),
    ],
    rows: [
      ...order.lines.map((own) => [
        own.partId,
        partName(input, own.partId),
        own.colour,
        orderNumber(input, order, own.partId),
        own.revision,
        madeOf(input, own.partId),
        cellNumber(own.quantity),
        partRow(input.line, own.partId)?.unit ?? "each",
        own.price === null ? "" : cellNumber(own.price),
        own.price === null ? "" : cellNumber(own.amount),
        dayText(own.dueDay),
      ]),
      ...(order.shipping === 0n
        ? []
        : [["", words((w) => w.runs.carriage), "", "", "", "", 1, "", "", cellNumber(order.shipping), ""]]),
    ],
  };
}
