import type { FaultLog } from "../fault-log.ts";
import { FORMAT, type Machine, machineSchema } from "../machine.ts";
import { nearest } from "../text/nearest.ts";

/** File that says what a book is. */
export const MACHINE_FILE = "machine.json";

/** What a book without a readable `machine.json` is called. */
export const BLANK_MACHINE: Machine = {
  format: FORMAT,
  id: "unnamed",
  label: "Unnamed machine",
  label_zh: "",
  revision: "0",
  date: "1970-01-01",
  owner: "",
  approved: "",
  languages: ["en"],
  slope_deg: 6.5,
  ball_mm: 27,
};

/** What each key takes, in words; also the source of the documentation. */
export const MACHINE_TEXTS: Readonly<Record<keyof Machine, string>> = {
  format: `format number of the book, ${FORMAT} now; older ones are brought forward`,
  id: "short name of the machine: lower-case words joined by `.` or `-`",
  label: "name of the machine in English, 1 to 200 characters",
  label_zh: "name in Simplified Chinese, at most 200 characters",
  revision: "revision of the book, 1 to 40 characters",
  date: "date of the revision as year-month-day, such as 2026-03-31",
  owner: "who owns the design, at most 200 characters",
  approved: "who approved this revision, at most 200 characters; blank: nobody yet",
  languages: "languages of the sheets, first one first: a list of `en` and `zh`",
  slope_deg: "slope of the playfield in play, a number of degrees from 0 to 30",
  ball_mm: "diameter of the ball, a number of millimetres from 5 to 100",
};

/** A value of `machine.json` whose text is no JSON; no key takes it. */
export class NotJson {
  readonly text: string;

  constructor(text: string) {
    this.text = text;
  }
}

const show = (value: unknown): string =>
  typeof value === "string"
    ? value
    : value instanceof NotJson
      ? value.text
      : (JSON.stringify(value) ?? String(value));

/** Checks `machine.json` key by key; a key that is wrong or missing is a fault and takes its default. */
export function readMachine(raw: unknown, file: string, log: FaultLog): Machine {
  if (raw === undefined) return BLANK_MACHINE;
  if (typeof raw !== "object" || raw === null || Array.isArray(raw)) {
    log.add({
      code: "machine-json",
      file,
      value: show(raw),
      expected: "an object with the keys that `docs/book.md` lists",
    });
    return BLANK_MACHINE;
  }
  const found = new Map<string, unknown>(Object.entries(raw));
  const known = Object.keys(machineSchema.shape);
  for (const key of found.keys()) {
    if (known.includes(key)) continue;
    log.add({
      code: "machine-json",
      file,
      column: key,
      value: key,
      expected: `one of the keys ${known.join(", ")}`,
      nearest: nearest(key, known),
    });
  }
  const good: Record<string, unknown> = { ...BLANK_MACHINE };
  for (const [key, text] of Object.entries(MACHINE_TEXTS)) {
    const value = found.get(key);
    const only = machineSchema.safeParse({ ...BLANK_MACHINE, [key]: value });
    if (only.success) {
      Object.assign(good, Object.fromEntries(Object.entries(only.data).filter(([k]) => k === key)));
      continue;
    }
    log.add({
      code: "machine-json",
      file,
      column: key,
      value: value === undefined ? null : show(value),
      expected:
        value === undefined
          ? `the key \`${key}\`: ${text}`
          : value instanceof NotJson
            ? `${text}; written as JSON, so that a text stands in double quotes`
            : text,
    });
  }
  // What is in memory has the present format, whatever the file had.
  return { ...machineSchema.parse(good), format: FORMAT };
}
