import { z } from "zod";
import { UNIT_KINDS } from "./facts.ts";
import { type Route, route } from "./route.ts";
import { bookId, plainText } from "./text.ts";

const name = plainText(120).min(1);
const language = z.enum(["en", "zh", "both"]);
/** Day of issue where the reader is; absent: the server's own, in UTC. */
const date = z.iso.date().optional();

/** Most labels that are made at once. */
export const MOST_LABELS = 1000;
/** Longest list of serial numbers in an address. */
const LONGEST_LIST = 8000;
/** Least and most that a label of a roll measures, in mm: the code and the serial number still fit the least. */
export const LABEL_WIDTH_MM = { least: 25, most: 120 } as const;
export const LABEL_HEIGHT_MM = { least: 12, most: 80 } as const;

const size = ({ least, most }: { readonly least: number; readonly most: number }) =>
  z.coerce.number().min(least).max(most).optional();

const labelsQuery = z.strictObject({
  /** Book whose units are labelled. */
  book: bookId,
  language,
  date,
  /** `a4`: sheets to be cut; `roll`: a page for each label. */
  paper: z.enum(["a4", "roll"]).default("a4"),
  /** First place of the first sheet that is still free, from 1, row by row: a sheet that was begun is used up. */
  start: z.coerce.number().int().min(1).max(200).default(1),
  /** Size of a label of a roll; absent: 62 × 29 mm. */
  widthMm: size(LABEL_WIDTH_MM),
  heightMm: size(LABEL_HEIGHT_MM),
  /** Serial numbers with commas between, in the order of the labels; absent: what the others say. */
  units: plainText(LONGEST_LIST).min(1).optional(),
  run: name.optional(),
  what: z.enum(UNIT_KINDS).optional(),
  type: name.optional(),
});

const ofUnit = z.strictObject({ language, date });

/** Sheets that are printed of the floor's records: PDF. */
export const RECORD_SHEET_ROUTES = {
  unitLabels: route({
    method: "get",
    path: "/api/record-sheets/labels",
    about: "Labels of units, each with a code that holds the serial number, as a PDF.",
    role: "viewer",
    query: labelsQuery,
  }),
  unitCertificate: route({
    method: "get",
    path: "/api/record-sheets/certificate/:unit",
    about:
      "The test certificate of a unit and of everything inside it, as a PDF; says so when it is not released.",
    role: "viewer",
    query: ofUnit,
  }),
  crateChecklist: route({
    method: "get",
    path: "/api/record-sheets/crate/:unit",
    about: "What goes into the crate with a machine, as a PDF; locked while the machine may not ship.",
    role: "viewer",
    query: ofUnit,
  }),
  transportList: route({
    method: "get",
    path: "/api/record-sheets/transport",
    about: "What is on the way from site to site, to be ticked and counted in, as a PDF.",
    role: "viewer",
    query: z.strictObject({
      /** Book that names what is on the way. */
      book: bookId,
      language,
      date,
      /** One transport; absent: all that is on the way. */
      transport: name.optional(),
    }),
  }),
} as const satisfies Readonly<Record<string, Route>>;
