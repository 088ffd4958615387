import type { FactNames, Finding, MachineChange } from "@pinwright/engine";
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

export const wordOf = (words: object, key: string): string | undefined => {
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

/** Unit that a column's name ends with. */
const unitOf = (column: string): string =>
  UNITS.find(([end]) => column === end || (end.startsWith("_") && column.endsWith(end)))?.[1] ?? "";

/** A length or count as people read it: a tenth at most. */
export const plain = (value: unknown): string => String(Number(Number(value).toFixed(3)) + 0);
export const rounded = (value: unknown): string => String(Number(Number(value).toFixed(1)) + 0);
export const signed = (value: unknown): string =>
  Number(value) > 0 ? `+${rounded(value)}` : rounded(value).replace("-", "−");

/** Name of a number without its unit, which stands after the value. */
const plainName = (name: string): string =>
  name.replace(/_(?:mm2|mm|pct|min|ms|deg|days|[avcwjs])$/u, "").replaceAll("_", " ");

/** Says values of changes in one language, ids by their names. */
export class Teller {
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
    if (all.length === 0) return this.words.nothing;
    // Many of one kind are counted.
    const counts = new Map<string, number>();
    for (const name of all) counts.set(name, (counts.get(name) ?? 0) + 1);
    return this.words.and([...counts].map(([name, count]) => (count === 1 ? name : `${count} × ${name}`)));
  }

  options(list: unknown): string {
    return this.cell("options", Array.isArray(list) ? list.join(" ") : "");
  }

  nets(ids: unknown): string {
    const all = Array.isArray(ids) ? ids.map((id) => this.words.net(this.name(id))) : [];
    return all.length === 0 ? this.words.noNet : this.words.and(all);
  }

  /** Row of a table that belongs to what the sentence is about: `pin J5-3`. */
  row({ table, key }: MachineChange["values"]): string {
    const name = String(key ?? "");
    if (table === "bom" && name === "") return this.words.inMachine;
    const row = wordOf(this.words.rows, String(table)) ?? this.table(String(table));
    return this.words.row(row, name === "" ? "" : this.cell("", name));
  }

  unit(column: string): string {
    if (column.endsWith("_days")) return this.words.days;
    return column === "twists_per_m" ? this.words.perMetre : unitOf(column);
  }

  /** A cell as people read it: with its unit, ids by their names. */
  cell(column: string, text: unknown, ownUnit = ""): string {
    const value = String(text);
    if (value === "") return column === "options" ? this.words.always : this.words.notSet;
    if (value === "yes") return this.words.yes;
    const unit = ownUnit === "" ? this.unit(column) : ownUnit;
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

  /** `T half solid`: letter, shape and shade of a symbol. */
  symbol(text: unknown): string {
    return String(text) === "" ? this.words.notSet : String(text);
  }

  /** What a number of a finding is, within a sentence, without its unit. */
  quantity(name: string): string {
    if (name === "severity") return this.words.severity;
    const column = this.column(name);
    return column === name ? plainName(name) : `${column.charAt(0).toLowerCase()}${column.slice(1)}`;
  }

  /** A number of a finding by its name: `length 215 mm`. */
  figure(name: string, value: unknown): string {
    const unit = unitOf(name);
    const what = this.quantity(name);
    const told = typeof value === "number" ? plain(value) : this.name(value ?? "");
    return `${what} ${told}${unit === "" ? "" : ` ${unit}`}`;
  }

  finding(values: MachineChange["values"]): { readonly title: string; readonly of: string } {
    const of = Array.isArray(values.subjects) ? values.subjects.map((id) => this.name(id)) : [];
    const { title } = findingWords(this.#language, String(values.rule));
    return { title, of: [...new Set(of)].join(this.#language === "zh" ? "、" : ", ") };
  }

  /** Title of a finding, with the names of its things that a text does not say. */
  titleBeside(values: MachineChange["values"], text: string): string {
    const { title } = this.finding(values);
    const names = Array.isArray(values.subjects) ? values.subjects.map((id) => this.name(id)) : [];
    const others = names.filter((name) => !text.includes(name));
    return this.words.beside(title, this.words.and(others));
  }

  /** The sentence of a finding with its numbers, things by their names. */
  figures({ rule, severity, subjects }: MachineChange["values"], numbers: unknown): string {
    const of = Array.isArray(subjects) ? subjects.map((id) => this.name(id)) : [];
    const [own] = Array.isArray(numbers) ? numbers : [];
    const told: Record<string, string | number | boolean> = {};
    for (const [name, value] of Object.entries(typeof own === "object" && own !== null ? own : {}))
      if (typeof value === "string") told[name] = this.name(value);
      else if (typeof value === "number" || typeof value === "boolean") told[name] = value;
    const finding: Finding = {
      ...{ rule: String(rule), severity: severityOf(severity), subjects: of, numbers: told, accepted: null },
    };
    return findingWords(this.#language, finding.rule)
      .say(finding)
      .replace(/[.。]$/u, "");
  }

  /** Limits of an acceptance: `diameter_mm<=3.6` as `diameter ≤ 3.6 mm`. */
  bounds(text: unknown): string {
    const all = String(text)
      .split(" ")
      .filter((bound) => bound !== "");
    if (all.length === 0) return this.words.noBounds;
    return this.words.and(
      all.map((bound) => {
        const [, name = "", relation = "", value = ""] = /^([^<>=]+)(<=|>=|=)(.*)$/u.exec(bound) ?? [];
        const told = name === "severity" ? this.severity({ severity: value }) : this.name(value);
        const unit = unitOf(name);
        const sign = relation === "<=" ? "≤" : relation === ">=" ? "≥" : "=";
        return `${this.quantity(name)} ${sign} ${told}${unit === "" ? "" : ` ${unit}`}`;
      }),
    );
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

const severityOf = (text: unknown): Finding["severity"] =>
  text === "error" || text === "warning" ? text : "note";
