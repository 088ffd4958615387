import { z } from "zod";
import { bookRowsSchema } from "./books.ts";
import { UNIT_KINDS } from "./facts.ts";
import { type Route, route } from "./route.ts";
import { plainText, utcTime } from "./text.ts";

const name = plainText(120).min(1);
const what = z.enum(UNIT_KINDS);

/** Most defects that are told of at once; of more, the last ones. */
export const MOST_DEFECTS = 5000;
/** Most tests failed at the first try that are told of at once; of more, the last ones. */
export const MOST_FAILS = 2000;

/** Records of a book in a time: `from` is included, `to` is not; what is not given is not asked. */
const spanQuery = z.strictObject({ book: name, from: utcTime.optional(), to: utcTime.optional() });

/** Where on a drawing it was seen. */
const spotSchema = z.object({
  panel: z.string().optional(),
  item: z.string().optional(),
  point: z.string().optional(),
  xMm: z.number().optional(),
  yMm: z.number().optional(),
});

const keptDefectSchema = z.object({
  unit: z.string(),
  what,
  type: z.string(),
  run: z.string(),
  defect: z.string(),
  /** What is wrong. */
  kind: z.string(),
  says: z.string(),
  where: spotSchema,
  station: z.string(),
  picture: z.string().nullable(),
  at: utcTime,
  person: z.string(),
  mended: z
    .object({
      cause: z.string(),
      says: z.string(),
      /** Null: nobody wrote them down. */
      minutes: z.number().nullable(),
      at: utcTime,
      person: z.string(),
    })
    .nullable(),
  /** What the tests since the mend said; `none`: there was no test since; null: it is not mended. */
  retest: z.enum(["passed", "failed", "none"]).nullable(),
});
export type KeptDefect = z.infer<typeof keptDefectSchema>;

/** Units that took a test, by where they took it first. */
const testYieldSchema = z.object({
  what,
  type: z.string(),
  test: z.string(),
  station: z.string(),
  units: z.number().int(),
  /** Of them: good at the first reading, and at the last. */
  first: z.number().int(),
  last: z.number().int(),
});
export type TestYield = z.infer<typeof testYieldSchema>;

/** Units of a type that took a test. */
const typeYieldSchema = z.object({
  what,
  type: z.string(),
  units: z.number().int(),
  /** Of them: every first reading good, and no defect. */
  first: z.number().int(),
});
export type TypeYield = z.infer<typeof typeYieldSchema>;

const failedFirstSchema = z.object({
  unit: z.string(),
  what,
  type: z.string(),
  test: z.string(),
  station: z.string(),
  at: utcTime,
  /** Whether its last reading is good. */
  isGoodNow: z.boolean(),
});
export type FailedFirst = z.infer<typeof failedFirstSchema>;

const floorUnitSchema = z.object({
  unit: z.string(),
  what,
  type: z.string(),
  run: z.string(),
  stage: z.string(),
  site: z.string(),
  onTheWay: z.object({ transport: z.string(), to: z.string(), at: utcTime }).nullable(),
  within: z.object({ unit: z.string(), place: z.string() }).nullable(),
  /** Places of it that hold a unit. */
  filled: z.array(z.string()),
  open: z.array(z.object({ defect: z.string(), kind: z.string(), at: utcTime })),
  failed: z.array(z.object({ test: z.string(), at: utcTime })),
  begunAt: utcTime,
  lastAt: utcTime,
  lastPerson: z.string(),
});
export type FloorUnit = z.infer<typeof floorUnitSchema>;

/** How the floor stands, and how well the work goes. */
export const FLOOR_ROUTES = {
  floorNow: route({
    method: "get",
    path: "/api/floor",
    about:
      "Units of a book that are in work: where each is and what keeps it; how many were released; how many passed at the first try since a time.",
    role: "viewer",
    query: z.strictObject({ book: name, since: utcTime }),
    answer: z.object({
      /** When this was so. */
      at: utcTime,
      units: z.array(floorUnitSchema),
      /** Units that were counted in from a transport of which others are still on the way. */
      countedIn: z.array(
        z.object({ unit: z.string(), what, type: z.string(), transport: z.string(), at: utcTime }),
      ),
      released: z.array(z.object({ run: z.string(), what, units: z.number().int() })),
      /** Since the time that was asked for. */
      today: z.object({
        yields: z.array(typeYieldSchema.omit({ type: true }).extend({ run: z.string() })),
        defects: z.number().int(),
      }),
    }),
  }),
  releasedLine: route({
    method: "get",
    path: "/api/books/:book/releases/:release/line",
    about:
      "All cells of the book, and what its line uses of the shop, as a release keeps them: what units of that revision are built by.",
    role: "viewer",
    answer: z.object({ tables: bookRowsSchema.shape.tables, shop: bookRowsSchema.shape.tables }),
  }),
  defects: route({
    method: "get",
    path: "/api/defects",
    about: `Defects of the units of a book, the last ones first, at most ${MOST_DEFECTS}, with what was mended and how the tests went since.`,
    role: "viewer",
    query: spanQuery,
    answer: z.object({ all: z.number().int(), defects: z.array(keptDefectSchema) }),
  }),
  passes: route({
    method: "get",
    path: "/api/passes",
    about:
      "First and last result of each test of each unit whose first result is of a time, counted by test and station and by type; and the units that failed at the first try.",
    role: "viewer",
    query: spanQuery,
    answer: z.object({
      tests: z.array(testYieldSchema),
      types: z.array(typeYieldSchema),
      /** How many there are, and the last of them. */
      fails: z.number().int(),
      failed: z.array(failedFirstSchema),
    }),
  }),
} as const satisfies Readonly<Record<string, Route>>;
