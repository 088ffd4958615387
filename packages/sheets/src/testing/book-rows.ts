import type { LineResult } from "@pinwright/engine";
import type { SheetDocument } from "../compose/document.ts";
import { anchorsOf } from "../compose/guide.ts";
import { eachLeaf } from "../compose/leaves.ts";
import type { GroupMark, Mark } from "../compose/mark.ts";
import { wireNo } from "../facts.ts";
import { amountText, LISTED_KINDS, rowsOfKind } from "../parts-list/part-rows.ts";

/** A row of a table of the book: its cells' texts, and the names that lead to it. */
interface BookTableRow {
  readonly page: number;
  readonly texts: readonly string[];
  readonly anchors: readonly string[];
  /** The heading across the table that it stands under, by its name. */
  readonly under: string;
}

function textsIn(marks: readonly Mark[]): readonly string[] {
  const texts: string[] = [];
  eachLeaf(marks, (leaf) => {
    if (leaf.kind === "text") texts.push(leaf.text);
  });
  return texts;
}

/** All rows of the tables of a book, in their order. */
function rowsOf(document: SheetDocument): readonly BookTableRow[] {
  const rows: BookTableRow[] = [];
  let under = "";
  const walk = (marks: readonly Mark[], page: number, anchors: readonly string[]): void => {
    for (const mark of marks) {
      if (mark.kind !== "group") continue;
      const own = mark.anchor === undefined ? anchors : [...anchors, mark.anchor];
      if (mark.anchor?.startsWith("pins:") === true) under = mark.anchor;
      if (mark.tag?.role === "TR") rows.push({ page, texts: textsIn(mark.marks), anchors: own, under });
      else walk(mark.marks, page, own);
    }
  };
  for (const [page, { marks }] of document.pages.entries()) walk(marks, page, []);
  return rows;
}

const WIRE = /^\d{1,2}-\d{1,3}$/u;

/** What was looked at, and what was wrong. */
export interface Bound {
  readonly wrong: readonly string[];
  readonly counted: Readonly<Record<"pages" | "pins" | "wires" | "terminals" | "devices" | "parts", number>>;
}

/**
 * Whether the numbers of a book stand where they belong: a page number with the page that its link leads to; the number of
 * a pin with its connector, its wire, that wire's colour and the point at its other end; a terminal with its wires; the
 * number of a device with that device; a count with the bill.
 */
export function boundRows(line: LineResult, document: SheetDocument): Bound {
  const wrong: string[] = [];
  const counted = { pages: 0, pins: 0, wires: 0, terminals: 0, devices: 0, parts: 0 };
  const say = (page: number, text: string): void => {
    wrong.push(`page ${page + 1}: ${text}`);
  };
  const { machine } = line;
  const wires = new Map(
    [...line.harnesses.values()].flatMap((harness) =>
      harness.wires.map((wire) => [wireNo(harness, wire.number), wire] as const),
    ),
  );
  const amounts = new Map<string, Set<string>>();
  for (const { node, quantity } of LISTED_KINDS.flatMap((kind) => rowsOfKind(line, kind))) {
    const key = `part:${node.partId ?? node.id}`;
    const own = amounts.get(key) ?? new Set<string>();
    amounts.set(key, own.add(amountText(quantity, node, "en")));
  }
  counted.pages = checkPages(document, say);
  for (const { page, texts, anchors, under } of rowsOf(document)) {
    const number = texts.find((text) => WIRE.test(text));
    const wire = wires.get(number ?? "");
    if (number !== undefined && wire === undefined) say(page, `there is no wire ${number}`);
    if (wire !== undefined && number !== undefined) {
      counted.wires++;
      const colour = texts[texts.indexOf(number) + 1];
      if (colour !== wire.colour) say(page, `wire ${number} is ${wire.colour}, not ${colour}`);
      const landing = machine.landings.get(under.slice("pins:".length));
      if (landing?.connector != null && anchors.every((a) => !a.startsWith("wire:"))) {
        counted.pins++;
        const pointId = landing.pointIds[Number(texts[0]) - 1] ?? "";
        const far = wire.a === pointId ? wire.b : wire.a;
        if (wire.a !== pointId && wire.b !== pointId)
          say(page, `${landing.id} pin ${texts[0]} has no ${number}`);
        const told = texts.join("");
        if (machine.points.has(far) && !told.replaceAll(" ", "").includes(far.replaceAll(" ", "")))
          say(page, `${number} goes to ${far}`);
      }
    }
    for (const anchor of anchors) {
      if (anchor.startsWith("item:")) {
        counted.devices += checkItem(line, anchor.slice("item:".length), texts, (text) => say(page, text));
        counted.terminals += checkTerminals(line, anchor.slice("item:".length), texts, wires, (text) =>
          say(page, text),
        );
      }
      const known = amounts.get(anchor);
      if (known === undefined) continue;
      counted.parts++;
      if (!texts.some((text) => known.has(text)))
        say(page, `${anchor}: ${texts.join(" ")} is not of the bill`);
    }
  }
  return { wrong, counted };
}

/** Every link whose text ends with a number leads to the page of that number. */
function checkPages(document: SheetDocument, say: (page: number, text: string) => void): number {
  const anchors = anchorsOf(document.pages);
  let seen = 0;
  const check = (group: GroupMark, page: number): void => {
    if (group.link === undefined || !("anchor" in group.link)) return;
    const texts = textsIn(group.marks);
    // Of several pages in one cell the first one is led to; elsewhere the number is the last of the line.
    const said = texts.join(" ");
    const number = (/^\d+(?:, \d+)*$/u.test(said) ? /^\d+/u : /\d+$/u).exec(said)?.[0];
    const last = texts.at(-1) ?? "";
    // Circuits are listed by numbers of their own.
    if (group.link.anchor === `circuit:${said}`) return;
    if (number === undefined || !/^\d+(?:, \d+)*,?$/u.test(last)) return;
    seen++;
    const to = (anchors.get(group.link.anchor)?.page ?? -2) + 1;
    if (Number(number) !== to) say(page, `“${said}” leads to page ${to}`);
  };
  const walk = (marks: readonly Mark[], page: number): void => {
    for (const mark of marks) {
      if (mark.kind !== "group") continue;
      check(mark, page);
      walk(mark.marks, page);
    }
  };
  for (const [page, { marks }] of document.pages.entries()) walk(marks, page);
  return seen;
}

/** The number in the first cell of a device's row is its own. */
function checkItem(
  { machine }: LineResult,
  id: string,
  texts: readonly string[],
  say: (text: string) => void,
): number {
  const item = machine.items.get(id);
  if (item?.kind !== "device" || item.number === null) return 0;
  if (texts[0] !== String(item.number)) say(`${id} is number ${item.number}, not ${texts[0]}`);
  return 1;
}

const TERMINAL = /^(\S+) (\d{1,2}-\d{1,3}) ((?:[A-Z]{2}){1,2})$/u;

/** `no 12-4 WHRD`: the terminal is on the device, the wire ends there, the colour is the wire's. */
function checkTerminals(
  { machine }: LineResult,
  id: string,
  texts: readonly string[],
  wires: ReadonlyMap<string, { readonly a: string; readonly b: string; readonly colour: string }>,
  say: (text: string) => void,
): number {
  let seen = 0;
  for (const text of texts) {
    const [, local = "", number = "", colour = ""] = TERMINAL.exec(text) ?? [];
    if (number === "") continue;
    seen++;
    const wire = wires.get(number);
    const pointId = `${id}:${local}`;
    if (!machine.points.has(pointId)) say(`there is no ${pointId}`);
    if (wire === undefined || (wire.a !== pointId && wire.b !== pointId) || wire.colour !== colour)
      say(`${id}: ${text} is not so`);
  }
  return seen;
}
