import { COLOUR_CODES } from "@pinwright/kernel";
import { FAULT_CODES } from "../fault.ts";
import { FAULT_TEXTS } from "../fault-texts.ts";
import { LIMIT_TEXTS, LIMITS } from "../limits.ts";
import { FORMAT, machineSchema } from "../machine.ts";
import { MACHINE_TEXTS } from "../read/machine.ts";
import { plainDecimal } from "../read/plain-decimal.ts";
import { SHOP_SETTINGS } from "../schema/shop-settings.ts";
import type { Group } from "../schema/table.ts";
import { ALL_TABLES, BOOK_TABLES, SHOP_TABLES } from "../schema/tables/index.ts";
import {
  BOOK_INTRO,
  CSV_TEXT,
  DRAWING_TEXT,
  FRAMES_TEXT,
  OTHER_FORMS_TEXT,
  OUTLINE_TEXT,
  POINTS_TEXT,
  READING_TEXT,
} from "./prose.ts";
import { GROUP_TITLES, KIND_TEXTS, tableDocs } from "./table-docs.ts";

const groups = (): Group[] => {
  const found: Group[] = [];
  for (const { group } of Object.values(ALL_TABLES)) if (!found.includes(group)) found.push(group);
  return found;
};

function contents(): string[] {
  const names = (tables: readonly string[]) => tables.map((name) => `[\`${name}\`](#${name})`).join(", ");
  return groups().map((group) => {
    const tables = Object.values(ALL_TABLES).filter((table) => table.group === group);
    return `- ${GROUP_TITLES[group]}: ${names(tables.map((table) => table.name))}`;
  });
}

function machineDocs(): string[] {
  const texts = new Map<string, string>(Object.entries(MACHINE_TEXTS));
  const defaults = new Map<string, unknown>(
    Object.entries(
      machineSchema.parse({ format: FORMAT, id: "a", label: "A", revision: "1", date: "2026-01-01" }),
    ),
  );
  const required = new Set(["format", "id", "label", "revision", "date"]);
  return [
    "| Key | Holds | When it is left out |",
    "|---|---|---|",
    ...Object.keys(machineSchema.shape).map((key) => {
      const missing = required.has(key) ? "must be there" : `\`${JSON.stringify(defaults.get(key))}\``;
      return `| \`${key}\` | ${texts.get(key) ?? ""} | ${missing} |`;
    }),
  ];
}

const settingsDocs = (): string[] => [
  "| Setting | Default | Means | Source of the default |",
  "|---|---|---|---|",
  ...Object.entries(SHOP_SETTINGS).map(
    ([name, { value, about, source }]) => `| \`${name}\` | ${plainDecimal(value)} | ${about} | ${source} |`,
  ),
];

const limitDocs = (): string[] => {
  const texts = new Map<string, string>(Object.entries(LIMIT_TEXTS));
  return [
    "| At most | of |",
    "|---|---|",
    ...Object.entries(LIMITS).map(
      ([name, limit]) => `| ${limit.toLocaleString("en-GB")} | ${texts.get(name) ?? ""} |`,
    ),
  ];
};

/** The whole of `docs/book.md`, from the schema. */
export function bookDocs(): string {
  const lines = [
    ...BOOK_INTRO(Object.keys(BOOK_TABLES).length, Object.keys(SHOP_TABLES).length),
    "",
    ...contents(),
    "",
    "## machine.json",
    "",
    "What the book says of itself, as JSON. A key that is not listed is a fault.",
    "",
    ...machineDocs(),
    "",
    ...FRAMES_TEXT,
    "",
    ...POINTS_TEXT,
    "",
    "## Cells",
    "",
    "| Kind | Holds |",
    "|---|---|",
    ...Object.entries(KIND_TEXTS).map(([kind, text]) => `| ${kind} | ${text} |`),
    "",
    `Colours: ${COLOUR_CODES.map(({ code, name }) => `${code} ${name}`).join(", ")}.`,
    "",
    ...CSV_TEXT,
    "",
    ...OTHER_FORMS_TEXT,
    "",
    ...OUTLINE_TEXT,
    "",
    ...DRAWING_TEXT,
    "",
    "## Limits",
    "",
    "Input beyond a limit is refused while it is being read, before it can fill the memory.",
    "",
    ...limitDocs(),
    "",
    ...READING_TEXT,
    "",
    "| Code | Means |",
    "|---|---|",
    ...FAULT_CODES.map((code) => `| \`${code}\` | ${FAULT_TEXTS[code]} |`),
    "",
  ];
  for (const group of groups()) {
    lines.push(`## ${GROUP_TITLES[group]}`, "");
    if (group === "shop") lines.push(...shopIntro(), "");
    for (const table of Object.values(ALL_TABLES)) if (table.group === group) lines.push(...tableDocs(table));
  }
  return `${lines
    .join("\n")
    .replace(/\n{3,}/g, "\n\n")
    .trimEnd()}\n`;
}

const shopIntro = (): string[] => [
  "What several machines share, and what changes without a revision of a book. These tables live in a folder `shop`, in the folder of the book or beside it; the one in the book's folder counts. Without a shop every setting has its default.",
  "",
  ...settingsDocs(),
];
