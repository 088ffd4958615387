import { TEXT } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import { amountText, LISTED_KINDS, nodeLabel, nodeName, rowsOfKind } from "../parts-list/part-rows.ts";
import { type BookRow, bookTable, note, row } from "./blocks.ts";
import type { BookContext } from "./context.ts";
import { DIFFERS } from "./differences.ts";

/** Everything that may be ordered, by kind, with how many are in the machine. */
export function partBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { line, words, language, insteadOf } = context;
  const { parts, alternates } = line.machine.book.tables;
  const byId = new Map(parts.map((part) => [part.id, part]));
  const small = { heightMm: TEXT.small } as const;
  const seen = new Set<string>();
  const rows = LISTED_KINDS.filter((kind) => kind !== "unnamed").flatMap((kind): readonly BookRow[] => {
    const own = rowsOfKind(line, kind).filter(({ node }) => node.partId !== null || kind !== "part");
    if (own.length === 0) return [];
    return [
      { kind: "group", text: context.sheet((w) => w.parts.kinds[kind]) },
      ...own.map(({ node, colour, quantity }) => {
        const part = byId.get(node.partId ?? "");
        const instead = insteadOf.get(node.partId ?? "");
        const others = alternates.filter((one) => one.part === node.partId).map((one) => one.instead);
        const remarks = [
          part?.order_number ?? "",
          part?.value ?? "",
          part?.revision ? context.sheet((w) => `${w.boards.revision} ${part.revision}`) : "",
          part?.wear === true ? words((w) => w.parts.wears) : "",
          others.length === 0 ? "" : words((w) => w.parts.may(others.join(", "))),
          instead === undefined ? "" : `${words((w) => w.parts.instead(instead))} ${DIFFERS}`,
        ].filter((t) => t !== "");
        const anchor = `part:${node.partId ?? node.id}`;
        const first = !seen.has(anchor);
        seen.add(anchor);
        return row(
          [
            nodeName(node),
            nodeLabel(line, node, colour, language),
            amountText(quantity, node, language),
            remarks.join("; "),
          ],
          first ? anchor : undefined,
        );
      }),
    ];
  });
  if (rows.length === 0) return [];
  return [
    note(
      words((w) => w.parts.hint),
      widthMm,
    ),
    ...bookTable(
      context,
      [
        { header: words((w) => w.parts.number), weight: "bold", whole: true, ...small },
        { header: words((w) => w.parts.name), ...small, grow: true },
        { header: words((w) => w.parts.count), align: "end", whole: true, ...small },
        { header: context.sheet((w) => w.common.remark), ...small, grow: true },
      ],
      rows,
      widthMm,
    ),
  ];
}
