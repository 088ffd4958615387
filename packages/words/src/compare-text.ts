import type { FactNames, MachineChange, Subject } from "@pinwright/engine";
import { findingSentence } from "./compare-findings.ts";
import { plain, rounded, signed, Teller, wordOf } from "./compare-teller.ts";
import type { Language } from "./language.ts";

function wireSentence(teller: Teller, { what, values }: MachineChange): string | null {
  const { words } = teller;
  const wire = String(values.wire ?? "");
  switch (what) {
    case "wire-length": {
      const mm = Number(values.mm);
      const say = mm > 0 ? words.wireLonger : words.wireShorter;
      return say(wire, rounded(Math.abs(mm)), rounded(values.toMm));
    }
    case "wire-colour":
      return words.wireColour(wire, teller.colour(values.from), teller.colour(values.to));
    case "wire-type":
      return words.wireType(wire, teller.cell("", values.from), teller.cell("", values.to));
    case "wire-contact":
      return words.wireContact(wire, teller.list(values.from), teller.list(values.to));
    case "wire-end":
      return words.wireEnd(wire, teller.list(values.from), teller.list(values.to));
    case "wire-number":
      return words.wireNumber(String(values.from), String(values.to));
    case "wire-net":
      return words.wireNet(wire, teller.name(values.from), teller.name(values.to));
    case "wire-new":
      return words.wireNew(
        wire,
        teller.colour(values.colour),
        teller.name(values.type),
        rounded(values.mm),
        teller.name(values.from),
        teller.name(values.to),
      );
    case "wire-gone":
      return words.wireGone(wire);
    case "wires": {
      const count = Array.isArray(values.wires) ? values.wires.length : 0;
      const [least, most] = [Number(values.leastMm), Number(values.mostMm)];
      if (least > 0) return words.wiresLonger(count, rounded(least), rounded(most));
      if (most < 0) return words.wiresShorter(count, rounded(-most), rounded(-least));
      return words.wires(count, signed(least), signed(most));
    }
    default:
      return null;
  }
}

function stepSentence(teller: Teller, { what, values }: MachineChange): string | null {
  const { words } = teller;
  switch (what) {
    case "step-order":
      return words.stepOrder(String(values.from), String(values.to));
    case "step-new":
      return words.stepNew(String(values.number));
    case "step-gone":
      return words.stepGone(String(values.number));
    case "step-minutes":
      return words.stepMinutes(plain(values.from), plain(values.to));
    case "step-content": {
      const has = (list: unknown): boolean => Array.isArray(list) && list.length > 0;
      const parts = [
        ...(has(values.in) ? [words.stepIn(teller.list(values.in))] : []),
        ...(has(values.out) ? [words.stepOut(teller.list(values.out))] : []),
      ];
      return parts.length === 0 ? words.stepSame : words.and(parts);
    }
    default:
      return null;
  }
}

function fieldSentence(teller: Teller, subject: Subject, { values }: MachineChange): string {
  const { words } = teller;
  const column = String(values.column);
  const unit = String(values.unit ?? "");
  const [from, to] = [teller.cell(column, values.from, unit), teller.cell(column, values.to, unit)];
  const name = teller.column(column);
  const isOwn = values.table === subject.table || (values.key === "" && values.table !== "bom");
  return isOwn ? words.field(name, from, to) : words.fieldOf(teller.row(values), name, from, to);
}

/**
 * One change in a sentence without its subject, which stands over it: “moved by 12 mm (x +12, y 0)”.
 * @param names of `factNames` of the same two revisions
 */
export function changeSentence(
  language: Language,
  subject: Subject,
  change: MachineChange,
  names: FactNames,
): string {
  const teller = new Teller(language, names);
  const { words } = teller;
  const { what, values } = change;
  const text = (key: string): string => teller.cell("", values[key] ?? "");
  const special =
    wireSentence(teller, change) ?? stepSentence(teller, change) ?? findingSentence(teller, change);
  if (special !== null) return special;
  switch (what) {
    case "new":
      return values.panel === "" || values.panel === undefined || values.type === ""
        ? words.isNew
        : words.isNewOn(text("type"), text("panel"), teller.side(values.side));
    case "gone":
      return words.isGone;
    case "renamed":
      return words.renamed(String(values.from), String(values.to));
    case "moved":
      return values.table === undefined
        ? words.movedAlong(rounded(values.mm), signed(values.dxMm), signed(values.dyMm))
        : words.rowMoved(
            ...([teller.row(values), rounded(values.mm), signed(values.dxMm), signed(values.dyMm)] as const),
          );
    case "turned":
      return words.turned(plain(values.from), plain(values.to));
    case "put-on":
      return words.putOn(
        text("fromPanel"),
        teller.side(values.fromSide),
        text("panel"),
        teller.side(values.side),
      );
    case "type":
      return words.type(text("from"), text("to"));
    case "named":
      return namedSentence(teller, language, values);
    case "uses":
      return words.uses(teller.list(values.from), teller.list(values.to));
    case "joined":
      return words.joined(pinText(values.pin), teller.nets(values.from), teller.nets(values.to));
    case "pin-harness":
      return words.pinHarness(pinText(values.pin), teller.list(values.from), teller.list(values.to));
    case "pin-options":
      return words.pinOptions(pinText(values.pin), teller.options(values.from), teller.options(values.to));
    case "row-new":
      return words.rowNew(teller.row(values));
    case "row-gone":
      return words.rowGone(teller.row(values));
    case "decided":
    case "undecided":
      return decidedSentence(teller, change);
    case "count":
      return words.count(
        plain(values.from),
        plain(values.to),
        wordOf(words.units, String(values.unit)) ?? "",
      );
    case "symbol":
      return words.symbol(teller.symbol(values.from), teller.symbol(values.to));
    case "drawn":
      return words.drawn;
    default:
      return fieldSentence(teller, subject, change);
  }
}

const pinText = (pin: unknown): string => String(pin).replace(".", "-").toUpperCase();

/** Another name; one that is another only in the other language is told as such. */
function namedSentence(teller: Teller, language: Language, { from, to }: MachineChange["values"]): string {
  const [was, is] = [teller.label(from), teller.label(to)];
  if (was !== is) return teller.words.named(was, is);
  const other = new Teller(language === "en" ? "zh" : "en", () => ({ en: "", zh: "" }));
  return teller.words.namedOtherwise(other.label(from), other.label(to));
}

function decidedSentence(teller: Teller, { what, values }: MachineChange): string {
  const { words } = teller;
  const kind = wordOf(words.kinds, String(values.kind)) ?? String(values.kind);
  const value = (text: unknown): string =>
    values.kind === "colour" && text !== "" ? teller.colour(text) : teller.cell("", text);
  const of = teller.name(String(values.subject).replace(/^harness:/u, ""));
  if (what === "undecided") return words.undecided(kind, of, value(values.from));
  return values.from === values.to
    ? words.decidedAsWas(kind, of, value(values.to))
    : words.decided(kind, of, value(values.to), value(values.from));
}

/** What a change is about, as it stands over its sentences: “Device 31, Left outlane”. */
export function subjectName(
  language: Language,
  { table, id, labels, number, deviceClass, places }: Subject,
): string {
  const teller = new Teller(language, () => labels);
  const { words } = teller;
  const kind = wordOf(words.classes, deviceClass) ?? wordOf(words.tables, table) ?? teller.table(table);
  const name = labels[language];
  if (table === "findings" || table === "choices") return kind;
  const [from, to] = places.map(({ panel, side, xMm, yMm }) =>
    words.place(teller.side(side), panel[language], plain(xMm), plain(yMm)),
  );
  if (from !== undefined)
    return `${kind} ${to === undefined ? words.spot(id, from) : words.way(id, from, to)}`;
  const head = number === "" ? kind : `${kind} ${number}`;
  // There are many screws of one type.
  if (table === "fasteners") return words.subject(head, words.spot(name, id));
  return words.subject(head, name === "" ? id : name);
}
