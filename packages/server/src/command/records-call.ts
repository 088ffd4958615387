import { resolve } from "node:path";
import { parseArgs } from "node:util";
import { ROUTES } from "@pinwright/contract";
import type { StorePlace } from "@pinwright/store";
import type { z } from "zod";
import { placeOf, WrongCall } from "../settings.ts";

export const RECORDS_USAGE = `pinwright-server records verify [HEADS]          read every record again, and hold the chains against heads
pinwright-server records releases                read every byte of every released revision again
pinwright-server records certificate UNIT FILE   test certificate of a unit, as a PDF
pinwright-server records crate UNIT FILE         crate checklist of a machine
pinwright-server records labels BOOK FILE        labels of units of a book
pinwright-server records transport BOOK FILE     what is on the way from site to site

HEADS is a file with what the codes on certificates hold, or lines copied from one: stream, number, hash (12 digits at
least). Exit status of verify and releases: 0 all is as it was written; 1 something is not.

  --data DIR, --store PLACE   where the records are kept; else ./data
  --back-up FILE          a back-up instead
  --language LANGUAGE     en, zh or both; else en
  --date DAY              day of issue, as year-month-day; else today, in UTC
  labels: --units A,B … or --run ID, --what KIND, --type ID; --paper a4 | roll; --start PLACE; --width MM, --height MM
  transport: --transport ID
`;

const OPTIONS = {
  data: { type: "string" },
  store: { type: "string" },
  "back-up": { type: "string" },
  language: { type: "string" },
  date: { type: "string" },
  units: { type: "string" },
  run: { type: "string" },
  what: { type: "string" },
  type: { type: "string" },
  paper: { type: "string" },
  start: { type: "string" },
  width: { type: "string" },
  height: { type: "string" },
  transport: { type: "string" },
  help: { type: "boolean" },
} as const;

/** A store, or a back-up that is read instead. */
export type RecordsPlace = StorePlace | { readonly kind: "back-up"; readonly file: string };

/** What is done with the records. */
export type RecordsCall =
  | { readonly act: "help" }
  | { readonly act: "releases" }
  | { readonly act: "verify"; readonly heads: string | null }
  | {
      readonly act: "certificate" | "crate";
      readonly unit: string;
      readonly file: string;
      readonly query: OfUnit;
    }
  | {
      readonly act: "labels";
      readonly file: string;
      readonly query: z.output<typeof ROUTES.unitLabels.query>;
    }
  | {
      readonly act: "transport";
      readonly file: string;
      readonly query: z.output<typeof ROUTES.transportList.query>;
    };
type OfUnit = z.output<typeof ROUTES.unitCertificate.query>;

/** What was asked, and of which records. */
export interface RecordsSettings {
  readonly call: RecordsCall;
  readonly place: RecordsPlace;
}

function parsed(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true, strict: true });
  } catch (error) {
    throw new WrongCall(error instanceof Error ? error.message : String(error));
  }
}

/** A query of a route, checked as the server checks it. */
function checked<S extends z.ZodType>(
  schema: S,
  given: Readonly<Record<string, string | undefined>>,
): z.output<S> {
  const result = schema.safeParse(
    Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)),
  );
  if (result.success) return result.data;
  const [issue] = result.error.issues;
  throw new WrongCall(`--${issue?.path.join(".") ?? ""}: ${issue?.message ?? "not as expected"}`);
}

/** Reads a call of `records`. @throws WrongCall */
export function recordsSettings(
  args: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
): RecordsSettings {
  const { values, positionals } = parsed(args);
  const data = resolve(values.data ?? (env.PINWRIGHT_DATA || "data"));
  const backUp = values["back-up"];
  const place: RecordsPlace =
    backUp === undefined
      ? placeOf(values.store ?? (env.PINWRIGHT_STORE || undefined), data)
      : { kind: "back-up", file: resolve(backUp) };
  if (values.help === true) return { place, call: { act: "help" } };
  const [act = "", first, second, ...rest] = positionals;
  const wrong = new WrongCall(`records ${positionals.join(" ")}: expected one of the calls below`);
  if (act === "verify") {
    if (second !== undefined) throw wrong;
    return { place, call: { act, heads: first === undefined ? null : resolve(first) } };
  }
  if (act === "releases") {
    if (first !== undefined) throw wrong;
    return { place, call: { act } };
  }
  if (first === undefined || second === undefined || rest.length > 0) throw wrong;
  const file = resolve(second);
  const common = { language: values.language ?? "en", date: values.date };
  switch (act) {
    case "certificate":
    case "crate":
      return {
        place,
        call: { act, unit: first, file, query: checked(ROUTES.unitCertificate.query, common) },
      };
    case "labels": {
      const { units, run, what, type, paper, start, width, height } = values;
      const asked = { ...common, book: first, units, run, what, type, paper, start };
      const query = checked(ROUTES.unitLabels.query, { ...asked, widthMm: width, heightMm: height });
      return { place, call: { act, file, query } };
    }
    case "transport": {
      const asked = { ...common, book: first, transport: values.transport };
      return { place, call: { act, file, query: checked(ROUTES.transportList.query, asked) } };
    }
    default:
      throw wrong;
  }
}
