import { plainDecimal } from "../read/plain-decimal.ts";
import { columnUnit } from "../read/units.ts";
import { BOOK_RULES } from "../rules/index.ts";
import { SHOP_RULES } from "../rules/shop.ts";
import type { CellKind, Column } from "../schema/column.ts";
import type { Group, Table } from "../schema/table.ts";

/** Headings of the groups, in the order of the documentation. */
export const GROUP_TITLES: Readonly<Record<Group, string>> = {
  places: "Places",
  items: "Items",
  insides: "Insides",
  wiring: "Wiring",
  activity: "Activity",
  fastening: "Fastening",
  boards: "Boards",
  parts: "Parts",
  options: "Options",
  choices: "Choices and renames",
  shop: "The shop",
};

/** What a cell of each kind holds. */
export const KIND_TEXTS: Readonly<Record<CellKind, string>> = {
  id: "The row's own id: lower-case letters and digits in words joined by `.`, `-` or `_`, such as `sw.lane-left`.",
  ref: "The id of a row in the table that is named.",
  refs: "Several such ids, separated by one space.",
  item: "The id of an item: a row of `devices`, `boards`, `mechanisms`, `fasteners` or `inlines`, or `mechanism/child`.",
  items: "Several items, separated by one space.",
  point: "A point of an item, see above.",
  "local-point":
    "A point inside the type that the row belongs to: `connector.pin` or `terminal`; inside a mechanism type `child:terminal`.",
  number:
    "A plain decimal number: digits, `.` as decimal point, `-` before it if negative; no unit, no exponent.",
  integer: "A whole number.",
  choice: "One of the words that are listed.",
  text: "Any text.",
  label: "Text that a person reads, with a column for each language.",
  flag: "`yes`, or `no` which is the same as blank.",
  colour: "A colour of IEC 60757, or two written together, base then stripe: `RD`, `WHRD`, `GNYE`.",
  colours: "Several colours, separated by one space.",
  names: "Several short names, separated by one space.",
  outline: "The name of a file in the folder `outlines`.",
};

const cell = (text: string): string => text.replaceAll("|", "\\|").replaceAll("\n", " ");

function rangeText(column: Column<unknown>): string {
  const { min, max } = column;
  if (min === undefined && max === undefined) return "";
  return `${min === undefined ? "" : plainDecimal(min)} … ${max === undefined ? "" : plainDecimal(max)}`;
}

function kindText(column: Column<unknown>): string {
  if (column.table !== undefined) return `${column.kind} → [\`${column.table}\`](#${column.table})`;
  if (column.oneOf !== undefined) return column.oneOf.map((word) => `\`${word}\``).join(", ");
  return column.kind;
}

function blankText(column: Column<unknown>): string {
  if (column.required) return "must be filled";
  const { blank } = column;
  if (typeof blank === "number") return plainDecimal(blank);
  if (typeof blank === "string" && blank !== "") return `\`${blank}\``;
  return blank === false ? "no" : "";
}

/** Section of one table: what it is for, its key, its columns, its rules. */
export function tableDocs(table: Table): string[] {
  const columns = Object.entries(table.columns);
  const rules = [...BOOK_RULES, ...SHOP_RULES].filter((rule) => rule.table === table.name);
  const key = table.key.map((name) => `\`${name}\``).join(" and ");
  return [
    `### ${table.name}`,
    "",
    `${table.about} ${table.key.length === 1 ? `Named by ${key}.` : `Named by ${key} together.`}`,
    "",
    "| Column | Holds | Kind | Unit | Range | Blank means |",
    "|---|---|---|---|---|---|",
    ...columns.map(
      ([name, column]) =>
        `| \`${name}\` | ${cell(column.about)} | ${cell(kindText(column))} | ${columnUnit(name) ?? ""} | ${rangeText(column)} | ${blankText(column)} |`,
    ),
    "",
    ...(rules.length === 0 ? [] : [...rules.map((rule) => `- ${rule.about}`), ""]),
  ];
}
