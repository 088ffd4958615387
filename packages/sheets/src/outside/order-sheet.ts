import { type Machine, type PackFile, type PackPart, packFiles, type SendOutPack } from "@pinwright/engine";
import { sheetWords } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { shortNumber } from "../compose/number.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { FIELD, TICK, table } from "../compose/table.ts";
import type { SheetOptions } from "../options.ts";
import { outsideIdentity } from "./identity.ts";

/** What an order says besides its parts. */
export interface SendOutOrder {
  /** Day on which the parts are wanted, as year-month-day; blank: not said. */
  readonly due: string;
  /** Supplier of the shop that it goes to; blank: not said. */
  readonly supplierId: string;
  /** First articles only. */
  readonly sample: boolean;
  readonly remark: string;
}

type Say = (choose: Parameters<typeof say>[1], joint?: string) => string;

/** The order sheet of a pack: what to make, of what, how many, by when, and from which files. */
export function composeOrderSheet(
  machine: Machine,
  pack: SendOutPack,
  order: SendOutOrder,
  options: SheetOptions,
): SheetDocument {
  const { language } = options;
  const words: Say = (choose, joint) => say(language, choose, joint);
  const title = words((w) => (order.sample ? w.outside.order.titleSample : w.outside.order.title));
  const supplier = machine.shop.tables.suppliers.find(({ id }) => id === order.supplierId);
  const to = supplier === undefined ? order.supplierId : label(language, named(supplier), supplier.id, " · ");
  return composeListing({
    identity: outsideIdentity(
      machine,
      {
        name: "order-sheet",
        number: "OS",
        documentType: title,
        title: to === "" ? words((w) => w.outside.order.parts(pack.parts.length)) : to,
      },
      options,
    ),
    language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: "",
      title,
      subtitle: addresses(machine, to, supplier?.contact ?? "", words),
      facts: [
        order.due === "" ? "" : words((w) => w.outside.order.due(order.due), " · "),
        words((w) => w.outside.order.parts(pack.parts.length), " · "),
      ].filter((fact) => fact !== ""),
    },
    cautions: [],
    blocks: (widthMm) => orderBlocks(pack, order, words, language, widthMm),
    grids: [
      partsGrid(pack, language === "zh" ? "zh" : "en"),
      filesGrid(pack, language === "zh" ? "zh" : "en"),
    ],
  });
}

const named = (row: { readonly label: string; readonly label_zh: string }) => ({
  en: row.label,
  zh: row.label_zh,
});

/** Who orders from whom, a line each. */
function addresses(machine: Machine, to: string, contact: string, words: Say): string {
  const { owner } = machine.book.machine;
  const lines = [
    to === ""
      ? ""
      : `${words((w) => w.outside.order.to, " · ")}: ${[to, contact].filter(Boolean).join(", ")}`,
    owner === "" ? "" : `${words((w) => w.outside.order.from, " · ")}: ${owner}`,
  ];
  return lines.filter((text) => text !== "").join("\n");
}

function madeOf(part: PackPart, words: Say): string {
  const unsaid = words((w) => w.outside.order.unsaid, " · ");
  return [
    `${words((w) => w.outside.order.material, " · ")}: ${part.material === "" ? unsaid : part.material}`,
    part.thicknessMm === null
      ? ""
      : words((w) => w.outside.order.thickness(shortNumber(part.thicknessMm ?? 0, 3)), " · "),
    `${words((w) => w.outside.order.finish, " · ")}: ${part.finish === "" ? words((w) => w.outside.order.noFinish, " · ") : part.finish}`,
  ]
    .filter((text) => text !== "")
    .join("\n");
}

/** The figure, and below it what is counted. */
const quantityText = (part: PackPart, words: Say): string =>
  [
    shortNumber(part.quantity, 3),
    part.unit === "each" ? words((w) => w.outside.order.pieces, " · ") : part.unit,
  ].join("\n");

function orderBlocks(
  pack: SendOutPack,
  order: SendOutOrder,
  words: Say,
  language: SheetOptions["language"],
  widthMm: number,
): readonly Block[] {
  const continued = words((w) => w.common.continued, " · ");
  const blocked = pack.parts.filter((part) => part.blocked !== null).map((part) => part.partId);
  const checked = pack.parts
    .filter((part) => part.dimensions.length > 0)
    .map((part) => `${part.partId} ${part.dimensions.map(({ mark }) => mark).join(", ")}`);
  const notes = [
    words((w) => w.outside.order.ask),
    order.sample ? words((w) => w.outside.order.sample) : "",
    !order.sample && blocked.length > 0 ? words((w) => w.outside.order.blocked(blocked.join(", "))) : "",
    checked.length > 0 ? words((w) => w.outside.order.checked(checked.join("; "))) : "",
    order.remark === "" ? "" : `${words((w) => w.outside.order.remark, " · ")}: ${order.remark}`,
  ].filter((text) => text !== "");
  return [
    ...table(
      [
        {
          header: words((w) => w.outside.order.part),
          heightMm: TEXT.large,
          weight: "bold",
          grow: true,
          detail: true,
        },
        {
          header: words((w) => w.outside.order.revision),
          heightMm: TEXT.head,
          weight: "bold",
          align: "middle",
          whole: true,
        },
        { header: words((w) => w.outside.order.madeOf), minMm: 40 },
        {
          header: words((w) => w.outside.order.quantity),
          heightMm: TEXT.head,
          weight: "bold",
          align: "end",
          whole: true,
          detail: true,
        },
        { header: words((w) => w.outside.order.made), align: "middle", whole: true },
      ],
      pack.parts.map((part) => ({
        kind: "row",
        cells: [
          [
            part.partId,
            label(language, part.labels, "", "\n"),
            `${words((w) => w.outside.order.files, " · ")}: ${part.drawings.map(({ row }) => row.file).join(", ")}`,
          ]
            .filter((text) => text !== "")
            .join("\n"),
          part.revision,
          madeOf(part, words),
          quantityText(part, words),
          TICK,
        ],
      })),
      widthMm,
      continued,
    ),
    gap(3),
    ...notes.map((text) => paragraph(text, widthMm, TEXT.normal)),
    gap(3),
    ...fileBlocks(packFiles(pack), words, widthMm, continued),
    gap(4),
    ...table(
      [
        { header: words((w) => w.outside.order.takenBy), heightMm: TEXT.large, grow: true },
        { header: words((w) => w.outside.order.takenOn), heightMm: TEXT.large, minMm: 35 },
        { header: words((w) => w.outside.order.ready), heightMm: TEXT.large, minMm: 35 },
      ],
      [{ kind: "row", cells: [FIELD, FIELD, FIELD] }],
      widthMm,
      continued,
    ),
  ];
}

function fileBlocks(files: readonly PackFile[], words: Say, widthMm: number, continued: string): Block[] {
  const heading = {
    ...paragraph(
      words((w) => w.outside.order.contents),
      widthMm,
      TEXT.normal,
      true,
    ),
    keepMm: 12,
  };
  return [
    heading,
    ...table(
      [
        { header: words((w) => w.outside.order.file), heightMm: TEXT.small, grow: true },
        { header: words((w) => w.outside.order.kindHead), heightMm: TEXT.small },
        { header: words((w) => w.outside.order.bytes), heightMm: TEXT.small, align: "end", whole: true },
        { header: words((w) => w.outside.order.hash), heightMm: TEXT.small, minMm: 42 },
      ],
      files.map((file) => ({
        kind: "row",
        // A hash is read in two lines of 32 digits: it then fits beside the name.
        cells: [
          file.path,
          words((w) => w.outside.order.kind[file.kind]),
          String(file.bytes),
          `${file.sha256.slice(0, 32)}\n${file.sha256.slice(32)}`,
        ],
      })),
      widthMm,
      continued,
    ),
  ];
}

function partsGrid(pack: SendOutPack, language: "en" | "zh"): Grid {
  const w = sheetWords(language).outside.order;
  return {
    name: w.title,
    header: [w.part, w.part, w.revision, w.material, "mm", w.finish, w.quantity],
    rows: pack.parts.map((part) => [
      part.partId,
      label(language, part.labels, part.partId),
      part.revision,
      part.material,
      part.thicknessMm ?? "",
      part.finish,
      part.quantity,
    ]),
  };
}

/** The contents of a pack as rows: path, part, revision, kind, bytes and SHA-256. */
export function filesGrid(pack: SendOutPack, language: "en" | "zh"): Grid {
  const w = sheetWords(language).outside.order;
  return {
    name: w.file,
    header: [w.file, w.part, w.revision, w.kindHead, w.bytes, w.hash],
    rows: packFiles(pack).map((file) => [
      file.path,
      file.partId,
      file.revision,
      w.kind[file.kind],
      file.bytes,
      file.sha256,
    ]),
  };
}
