import { ITEM_TABLES } from "../check/names.ts";
import type { BookRow } from "../schema/tables/index.ts";

/** An old id of a table and what it is to be called now. */
export interface Renaming {
  readonly table: string;
  readonly from: string;
  readonly to: string;
}

const items: readonly string[] = ITEM_TABLES;

/** Whether the id names an item, so that it stands in item and point columns. */
export const isItemRenaming = ({ table }: Renaming): boolean => items.includes(table);

/** `old` or `old/child` under the new name; anything else as it is. */
export function renameItem(text: string, { from, to }: Renaming): string {
  if (text === from) return to;
  return text.startsWith(`${from}/`) ? to + text.slice(from.length) : text;
}

/** The item of a point under its new name. */
export function renamePoint(text: string, renaming: Renaming): string {
  const colon = text.indexOf(":");
  if (colon < 0) return text;
  return renameItem(text.slice(0, colon), renaming) + text.slice(colon);
}

type Choice = BookRow<"choices">;

/** Tables that a bare word in a choice's subject can name, beside items and points. */
const SUBJECT_TABLES: Readonly<Record<Choice["kind"], readonly string[]>> = {
  colour: ["nets", "cables"],
  "wire-type": ["nets"],
  chain: ["nets", "harnesses"],
  trunk: ["harnesses"],
  attach: ["harnesses"],
  "splice-place": ["nets", "harnesses"],
  "wire-number": ["nets", "harnesses"],
  peg: ["harnesses", "waypoints"],
  key: ["connectors"],
  spare: ["connectors"],
  matrix: ["board_types"],
  step: ["steps", "harnesses", "mechanism_types"],
  time: ["steps", "harnesses", "mechanism_types"],
  symbol: ["fastener_types"],
  station: ["steps", "harnesses", "mechanism_types"],
  accept: ["nets", "harnesses", "lanes", "crossings", "waypoints", "supplies", "fuses", "panels", "cutouts"],
};

/** Tables that a bare word in a choice's value can name, beside items and points. */
const VALUE_TABLES: Readonly<Record<Choice["kind"], readonly string[]>> = {
  colour: [],
  "wire-type": ["wire_types"],
  chain: [],
  trunk: ["lanes", "crossings", "waypoints"],
  attach: ["waypoints"],
  "splice-place": ["waypoints"],
  "wire-number": [],
  peg: [],
  key: ["parts"],
  spare: [],
  matrix: ["nets"],
  step: ["stations", "steps"],
  time: [],
  symbol: [],
  station: ["stations"],
  accept: [],
};

/** Tables that the parts of a word name by their place, where `|` separates them; the others are items, points and what has a prefix. */
const PLACES: Readonly<Partial<Record<string, readonly (readonly string[])[]>>> = {
  peg: [["harnesses"]],
  attach: [["harnesses"]],
  // The name of the rule comes first.
  accept: [[]],
};
/** A wire is `net|harness|a|b`. */
const WIRE: readonly (readonly string[])[] = [["nets"], ["harnesses"]];

/** Tables of what stands behind a prefix: `landing:bd.a:j1`, `bends:ln.a`, `mount:mech.a`; none: an item or a point. */
const BEHIND: Readonly<Record<string, readonly string[]>> = {
  landing: [],
  tail: [],
  mount: [],
  bends: ["lanes", "crossings"],
  harness: ["harnesses"],
};

/**
 * One word of a choice. A wire is `net|harness|a|b` and a splice `splice:net:harness:n`: there the place in the
 * word tells what a part names. Elsewhere a bare word is renamed when the kind of choice can name that table.
 */
function renameWord(word: string, kind: string, renaming: Renaming, tables: readonly string[]): string {
  const { table, from, to } = renaming;
  if (word.includes("|")) {
    const places = PLACES[kind] ?? WIRE;
    const others = kind in PLACES ? tables : [];
    return word
      .split("|")
      .map((part, i) => {
        const own = places[i];
        if (own === undefined) return renameWord(part, kind, renaming, others);
        return own.includes(table) && part === from ? to : part;
      })
      .join("|");
  }
  const splice = /^splice:([^:]+):([^:]+):(\d+)$/.exec(word);
  if (splice !== null) {
    const net = table === "nets" && splice[1] === from ? to : splice[1];
    const harness = table === "harnesses" && splice[2] === from ? to : splice[2];
    return `splice:${net}:${harness}:${splice[3]}`;
  }
  const [prefix = ""] = word.split(":", 1);
  const behind = BEHIND[prefix];
  if (behind !== undefined && word.length > prefix.length)
    return `${prefix}:${renameWord(word.slice(prefix.length + 1), kind, renaming, behind)}`;
  if (isItemRenaming(renaming))
    return word.includes(":") ? renamePoint(word, renaming) : renameItem(word, renaming);
  return tables.includes(table) && word === from ? to : word;
}

const renameWords = (text: string, kind: string, renaming: Renaming, tables: readonly string[]): string =>
  text
    .split(/([\s,]+)/)
    .map((word) => renameWord(word, kind, renaming, tables))
    .join("");

/** What of a choice can name an id. */
export type NamingChoice = Pick<Choice, "subject" | "value">;

const isChoiceKind = (kind: string): kind is Choice["kind"] => Object.hasOwn(SUBJECT_TABLES, kind);

/** Subject and value of a choice that follow the renaming. One of an unknown kind can name items and points only. */
export function renameNaming(kind: string, naming: NamingChoice, renaming: Renaming): NamingChoice {
  const [subjects, values] = isChoiceKind(kind) ? [SUBJECT_TABLES[kind], VALUE_TABLES[kind]] : [[], []];
  return {
    subject: renameWords(naming.subject, kind, renaming, subjects),
    value: renameWords(naming.value, kind, renaming, values),
  };
}

/** A choice whose subject and value follow the renaming; the same object when neither names the old id. */
export function renameChoice(choice: Choice, renaming: Renaming): Choice {
  const { subject, value } = renameNaming(choice.kind, choice, renaming);
  return subject === choice.subject && value === choice.value ? choice : { ...choice, subject, value };
}
