import type { BoardItem, Landing } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { bookTerm } from "@pinwright/words";
import { panelSideName, rowLabel } from "../assembly/step-texts.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import { itemName, someOf } from "../machine-facts.ts";
import { fuseName, ratingText } from "../supply-schedule/fuses.ts";
import { bookTable, hazardBlocks, named, note, row, thingHead, together } from "./blocks.ts";
import type { BookContext } from "./context.ts";
import { mapAnchor } from "./where.ts";

/** Names of this many things behind a connector are told; more are counted. */
const MOST_NAMES = 12;
const NAME_MM = 30;

/** Boards by address; those without one after them, by name. */
export function boardsOf({ line, language }: BookContext): readonly BoardItem[] {
  const boards = [...line.machine.items.values()].flatMap((item) => (item.kind === "board" ? [item] : []));
  return boards.sort(
    (a, b) =>
      (a.address ?? Number.POSITIVE_INFINITY) - (b.address ?? Number.POSITIVE_INFINITY) ||
      compareText(itemName(line, a.id, language), itemName(line, b.id, language)) ||
      compareText(a.id, b.id),
  );
}

/** Each board: what it does, where it is, its connectors with what hangs on them, its fuses. */
export function boardBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { words } = context;
  const boards = boardsOf(context);
  if (boards.length === 0) return [];
  return [
    note(
      words((w) => w.boards.hint),
      widthMm,
    ),
    ...boards.flatMap((board) => boardSection(context, board, widthMm)),
  ];
}

function boardSection(context: BookContext, board: BoardItem, widthMm: number): readonly Block[] {
  const { line, language, words, facts } = context;
  const { type, address } = board;
  const name = itemName(line, board.id, language);
  const terminated = line.machine.book.tables.boards.some((b) => b.id === board.id && b.terminated);
  const detail = [
    board.id,
    address === null ? "" : words((w) => w.boards.address(String(address))),
    terminated ? words((w) => w.boards.endOfBus) : "",
  ].filter((t) => t !== "");
  const mapPage = context.pageOf(mapAnchor(context, board.id));
  const place = [
    panelSideName(line, board.place.panelId, board.place.side, language),
    mapPage === "" ? "" : `${words((w) => w.boards.map)} ${words((w) => w.pageNo(mapPage))}`,
  ].filter((t) => t !== "");
  const purpose = (language === "en" ? type.purpose : type.purpose_zh) || doesText(context, board);
  const revision = type.revision === "" ? "" : context.sheet((w) => `${w.boards.revision} ${type.revision}`);
  const typeText = [rowLabel(type, type.id, language), type.id, revision].filter((t) => t !== "").join(" · ");
  const own = facts.fuses.filter((fuse) => fuse.node.element.itemId === board.id);
  const fuses = own.map((fuse) => {
    const rating = ratingText(fuse, language).split("\n").join(" ");
    if (fuse.node.row !== null) return `${fuseName(line, fuse, language)} ${rating}`;
    const { toPointId } = fuse.node;
    return `${toPointId.slice(toPointId.indexOf(":") + 1)} ${rating}`;
  });
  const isMains = facts.classesOf.get(board.id)?.has("mains") === true;
  return together([
    thingHead(name, detail.join(" · "), `item:${board.id}`, widthMm, 32),
    ...(isMains ? hazardBlocks(context, ["mains", "stored"], `board-${board.id}`, widthMm) : []),
    named(
      words((w) => w.boards.type),
      typeText,
      widthMm,
      NAME_MM,
    ),
    ...(purpose === ""
      ? []
      : [
          named(
            context.sheet((w) => w.boards.register.purpose),
            purpose,
            widthMm,
            NAME_MM,
          ),
        ]),
    named(
      words((w) => w.boards.place),
      place.join(", "),
      widthMm,
      NAME_MM,
    ),
    ...(fuses.length === 0
      ? []
      : [
          named(
            words((w) => w.boards.fuses),
            fuses.join("; "),
            widthMm,
            NAME_MM,
          ),
        ]),
    ...connectorTable(context, board, widthMm),
    gap(1.5),
  ]);
}

function connectorTable(context: BookContext, board: BoardItem, widthMm: number): readonly Block[] {
  const { words, facts, language, line } = context;
  const landings = (facts.landingsOf.get(board.id) ?? []).filter((l) => l.connector !== null);
  const rows = landings.map((landing) => {
    const harnesses = [
      ...new Set(
        landing.pointIds.flatMap((id) =>
          (facts.wiresAt.get(id) ?? []).map(({ harness }) => harness.harness.number),
        ),
      ),
    ].map((n) => `H${n}`);
    const leads = leadsTo(context, landing).map((id) => itemName(line, id, language));
    const anchor = `pins:${landing.id}`;
    const link = context.linkTo(anchor);
    return row(
      [
        landing.connector?.name ?? "",
        bookTerm(language, landing.connector?.label ?? ""),
        String(landing.pointIds.length),
        harnesses.join(" "),
        leads.length === 0 ? words((w) => w.boards.nothing) : someOf(leads, MOST_NAMES, language),
        context.pageOf(anchor),
      ],
      undefined,
      [link, undefined, undefined, undefined, undefined, link],
    );
  });
  const small = { heightMm: TEXT.small } as const;
  return bookTable(
    context,
    [
      { header: words((w) => w.boards.connector), weight: "bold", whole: true },
      { header: "", ...small, minMm: 22 },
      { header: words((w) => w.boards.pins), align: "end", whole: true, ...small },
      { header: context.sheet((w) => w.common.harness), whole: true, ...small },
      { header: words((w) => w.boards.leads), grow: true, ...small },
      { header: words((w) => w.page), align: "end", whole: true, ...small },
    ],
    rows,
    widthMm,
  );
}

/** What a board does, counted from what is on it. */
function doesText({ facts, words }: BookContext, board: BoardItem): string {
  const own = facts.elementsOf.get(board.id) ?? [];
  const count = (kind: string): string => {
    const points = new Set(own.filter((e) => e.row.kind === kind).map((e) => e.row.control || e.id));
    return String(points.size);
  };
  const parts = [
    count("input") === "0" ? "" : words((w) => w.boards.reads(count("input"))),
    count("driver") === "0" ? "" : words((w) => w.boards.drives(count("driver"))),
    count("fuse") === "0" ? "" : words((w) => w.boards.guards(count("fuse"))),
  ].filter((t) => t !== "");
  return parts.length === 0 ? words((w) => w.boards.passes) : parts.join("; ");
}

/** Items at the other ends of the wires of a plug, through in-line connectors and splices where they lead to one. */
function leadsTo({ line, facts }: BookContext, landing: Landing): readonly string[] {
  const { machine } = line;
  const seen = new Set<string>(landing.pointIds);
  const queue = [...landing.pointIds];
  const items = new Set<string>();
  for (const pointId of queue)
    for (const { wire } of facts.wiresAt.get(pointId) ?? []) {
      const other = wire.a === pointId ? wire.b : wire.a;
      if (seen.has(other)) continue;
      seen.add(other);
      const itemId = machine.points.get(other)?.itemId;
      const item = machine.items.get(itemId ?? "");
      if (item === undefined || item.kind === "inline") {
        queue.push(other);
        if (item === undefined) continue;
        const mate = /:a\./u.test(other) ? other.replace(":a.", ":b.") : other.replace(":b.", ":a.");
        if (!seen.has(mate)) {
          seen.add(mate);
          queue.push(mate);
        }
        continue;
      }
      if (item.id !== landing.itemId) items.add(item.id);
    }
  return [...items];
}
