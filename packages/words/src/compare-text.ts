import type { FactNames, MachineChange, Subject } from "@pinwright/engine";
import { tableNames as tablesEn } from "./en/app/table-names.ts";
import { compare as compareEn } from "./en/compare.ts";
import type { Language, Translated } from "./language.ts";
import { findingWords, sheetWords } from "./worded.ts";
import { tableNames as tablesZh } from "./zh/app/table-names.ts";
import { compare as compareZh } from "./zh/compare.ts";

/** Words of comparisons in one language. */
export type CompareWords = Translated<typeof compareEn>;

const COMPARE: Readonly<Record<Language, CompareWords>> = { en: compareEn, zh: compareZh };
const TABLES: Readonly<Record<Language, Translated<typeof tablesEn>>> = { en: tablesEn, zh: tablesZh };

/** Words of comparisons in a language. */
export const compareWords = (language: Language): CompareWords => COMPARE[language];

const wordOf = (words: object, key: string): string | undefined => {
  const found: unknown = Object.entries(words).find(([name]) => name === key)?.[1];
  return typeof found === "string" ? found : undefined;
};

/** Unit of a column, by the end of its name. */
const UNITS: readonly (readonly [string, string])[] = [
  ["area_mm2", "mm²"],
  ["_mm2", "mm²"],
  ["_mohm", "mΩ"],
  ["_ohm", "Ω"],
  ["_mm", "mm"],
  ["_ms", "ms"],
  ["_min", "min"],
  ["minutes", "min"],
  ["_deg", "°"],
  ["_pct", "%"],
  ["_a2s", "A²s"],
  ["_a", "A"],
  ["_v", "V"],
  ["volts", "V"],
  ["amps", "A"],
  ["_c", "°C"],
  ["_nm", "N·m"],
  ["_g", "g"],
  ["_w", "W"],
  ["_j", "J"],
  ["_s", "s"],
];

const unitOf = (column: string): string =>
  UNITS.find(([end]) => column === end || (end.startsWith("_") && column.endsWith(end)))?.[1] ?? "";

/** A length or count as people read it: a tenth at most. */
const plain = (value: unknown): string => String(Number(Number(value).toFixed(3)) + 0);
const rounded = (value: unknown): string => String(Number(Number(value).toFixed(1)) + 0);
const signed = (value: unknown): string =>
  Number(value) > 0 ? `+${rounded(value)}` : rounded(value).replace("-", "−");

class Teller {
  readonly #language: Language;
  readonly #names: FactNames;
  readonly words: CompareWords;

  constructor(language: Language, names: FactNames) {
    this.#language = language;
    this.#names = names;
    this.words = COMPARE[language];
  }

  name(id: unknown): string {
    return this.#names(String(id))[this.#language];
  }

  table(table: string): string {
    return wordOf(TABLES[this.#language].tables, table) ?? wordOf(this.words.tables, table) ?? table;
  }

  column(column: string): string {
    return wordOf(TABLES[this.#language].columns, column) ?? column;
  }

  side(side: unknown): string {
    return wordOf(this.words.sides, String(side)) ?? String(side);
  }

  list(ids: unknown): string {
    const all = Array.isArray(ids) ? ids.map((id) => this.name(id)) : [];
    return all.length === 0 ? this.words.nothing : this.words.and(all);
  }

  /** A cell as people read it: with its unit, ids by their names. */
  cell(column: string, text: unknown): string {
    const value = String(text);
    if (value === "") return this.words.nothing;
    if (value === "yes") return this.words.yes;
    const unit = unitOf(column);
    if (unit !== "" && /^-?[\d.]+$/u.test(value)) return `${value} ${unit}`;
    // A list of ids by their names; any other text as it was written.
    const ids = value.split(" ");
    return ids.every((id) => this.name(id) !== id) ? ids.map((id) => this.name(id)).join(", ") : value;
  }

  colour(code: unknown): string {
    const { colours } = sheetWords(this.#language);
    const parts = String(code).match(/[A-Z]{2}/gu) ?? [];
    return parts.map((part) => wordOf(colours, part) ?? part).join("-") || String(code);
  }

  finding(values: MachineChange["values"]): { readonly title: string; readonly of: string } {
    const of = Array.isArray(values.subjects) ? values.subjects.map((id) => this.name(id)) : [];
    return { title: findingWords(this.#language, String(values.rule)).title, of: of.join(", ") };
  }

  severity({ severity }: MachineChange["values"]): string {
    return wordOf(this.words.severities, String(severity)) ?? String(severity);
  }

  label(values: unknown): string {
    const [first] = Array.isArray(values) ? values : [];
    return typeof first === "object" && first !== null && this.#language in first
      ? String(first[this.#language])
      : String(first);
  }
}

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

function findingSentence(teller: Teller, { what, values }: MachineChange): string | null {
  const { words } = teller;
  const told = (): ReturnType<Teller["finding"]> => teller.finding(values);
  switch (what) {
    case "finding-new":
      return words.findingNew(teller.severity(values), told().title, told().of);
    case "finding-gone":
      return words.findingGone(teller.severity(values), told().title, told().of);
    case "accepted":
      return words.accepted(told().title, told().of, String(values.by), String(values.why));
    case "no-longer-accepted":
      return words.noLongerAccepted(told().title, told().of);
    default:
      return null;
  }
}

function fieldSentence(teller: Teller, subject: Subject, { values }: MachineChange): string {
  const { words } = teller;
  const column = String(values.column);
  const [from, to] = [teller.cell(column, values.from), teller.cell(column, values.to)];
  const key = String(values.key ?? "");
  const name = teller.column(column);
  return String(values.table) === subject.table || key === ""
    ? words.field(name, from, to)
    : words.fieldOf(teller.table(String(values.table)), teller.cell("", key), name, from, to);
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
      return words.movedAlong(rounded(values.mm), signed(values.dxMm), signed(values.dyMm));
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
      return words.named(teller.label(values.from), teller.label(values.to));
    case "uses":
      return words.uses(teller.list(values.from), teller.list(values.to));
    case "joined":
      return words.joined(String(values.pin).toUpperCase(), teller.list(values.from), teller.list(values.to));
    case "row-new":
      return words.rowNew(teller.table(String(values.table)), text("key"));
    case "row-gone":
      return words.rowGone(teller.table(String(values.table)), text("key"));
    case "decided":
    case "undecided": {
      const kind = wordOf(words.kinds, String(values.kind)) ?? String(values.kind);
      return what === "decided"
        ? words.decided(kind, text("subject"), text("to"), text("from"))
        : words.undecided(kind, text("subject"), text("from"));
    }
    case "count":
      return words.count(
        plain(values.from),
        plain(values.to),
        wordOf(words.units, String(values.unit)) ?? "",
      );
    case "symbol":
      return words.symbol(String(values.from) || words.nothing, String(values.to) || words.nothing);
    case "drawn":
      return words.drawn;
    default:
      return fieldSentence(teller, subject, change);
  }
}

/** What a change is about, as it stands over its sentences: “Device 31, Left outlane”. */
export function subjectName(language: Language, { table, id, labels, number }: Subject): string {
  const teller = new Teller(language, () => labels);
  const kind = wordOf(teller.words.tables, table) ?? teller.table(table);
  const name = labels[language];
  if (table === "findings" || table === "choices") return kind;
  const head = number === "" ? kind : `${kind} ${number}`;
  // There are many screws of one type.
  if (table === "fasteners") return `${head}, ${name} (${id})`;
  return name === id || name === "" ? `${head}, ${id}` : `${head}, ${name}`;
}
