import { type FactBody, factBodySchema, type UnitKind } from "@pinwright/contract";
import { type Kysely, type RawBuilder, sql } from "kysely";
import { z } from "zod";
import type { Database } from "../database/database.ts";
import { inChunks } from "../database/in-chunks.ts";
import { comparable } from "../database/number.ts";
import type { Tables } from "../database/schema.ts";

/** Records of a book in a time: the first is included, the second not. */
export interface Span {
  readonly book: string;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

type Body<K extends FactBody["kind"]> = Extract<FactBody, { kind: K }>;
interface Written {
  readonly at: string;
  readonly person: string;
}

/** A defect as it was recorded, with the last mend that was. */
export interface RecordedDefect extends Omit<Body<"defect">, "kind">, Written {
  readonly kind: UnitKind;
  readonly type: string;
  readonly run: string;
  readonly mended: (Omit<Body<"mended">, "kind" | "unit" | "defect"> & Written) | null;
}

/** Units that took a test, by where they took it first. */
export interface TestYieldRow {
  readonly what: UnitKind;
  readonly type: string;
  readonly test: string;
  readonly station: string;
  readonly units: number;
  readonly first: number;
  readonly last: number;
}

/** Whether a unit was good in every test at the first try. */
export interface UnitFirst {
  readonly unit: string;
  readonly what: UnitKind;
  readonly type: string;
  readonly isGood: boolean;
}

/** A test that a unit failed at the first try. */
export interface FailedFirstRow {
  readonly unit: string;
  readonly what: UnitKind;
  readonly type: string;
  readonly test: string;
  readonly station: string;
  readonly at: string;
  readonly isGoodNow: boolean;
}

/** What is asked of the records to say how well the work goes. */
export interface QualityStore {
  /** Defects that were found in a time and not taken back, the last ones first. */
  defects(span: Span): Promise<readonly RecordedDefect[]>;
  /** Tests of some units that were taken after a time, and whether the last reading is good. */
  lastResults(
    units: readonly string[],
  ): Promise<readonly { readonly unit: string; readonly at: string; readonly good: boolean }[]>;
  /** Units that a defect was ever found on, and not taken back; of some units, or of all. */
  unitsWithDefect(units?: readonly string[]): Promise<ReadonlySet<string>>;
  testYields(span: Span): Promise<readonly TestYieldRow[]>;
  unitFirsts(span: Span): Promise<readonly UnitFirst[]>;
  /** How many tests were failed at the first try, and the last of them. */
  failedFirst(
    span: Span,
    limit: number,
  ): Promise<{ readonly all: number; readonly failed: readonly FailedFirstRow[] }>;
}

const VALUES_AT_ONCE = 500;

export function qualityStore({ db }: Database): QualityStore {
  return {
    defects: (span) => defectsOf(db, span),
    async lastResults(units) {
      const found: { unit: string; at: string; good: boolean }[] = [];
      for (const some of inChunks(units, VALUES_AT_ONCE)) {
        const rows = await db
          .selectFrom("passes")
          .select(["unit", "last_at", "last_good"])
          .where("unit", "in", [...some])
          .execute();
        for (const { unit, last_at, last_good } of rows)
          found.push({ unit, at: last_at, good: last_good === 1 });
      }
      return found;
    },
    unitsWithDefect: (units) => unitsWithDefect(db, units),
    async testYields(span) {
      const found: TestYieldRow[] = [];
      for (const only of await pieces(db, span)) {
        const { rows } = await sql<TestCounts>`
          select what, type, test, first_station as station, count(*) as units,
            sum(first_good) as first, sum(last_good) as last
          from passes where ${inSpan(span)} ${only}
          group by type, test, first_station, what`.execute(db);
        for (const { what, type, test, station, units, first, last } of rows)
          found.push({
            ...{ what: what as UnitKind, type, test, station },
            ...{ units: Number(units), first: Number(first), last: Number(last) },
          });
        await pause();
      }
      return found.sort(byName);
    },
    async unitFirsts(span) {
      const found: UnitFirst[] = [];
      for (const only of await pieces(db, span)) {
        const { rows } = await sql<{ unit: string; what: string; type: string; good: number }>`
          select unit, what, type, min(first_good) as good from passes where ${inSpan(span)} ${only}
          group by unit, what, type`.execute(db);
        for (const { unit, what, type, good } of rows)
          found.push({ unit, what: what as UnitKind, type, isGood: Number(good) === 1 });
        await pause();
      }
      return found;
    },
    async failedFirst(span, limit) {
      const failed = sql`from passes where first_good = 0 and ${inSpan(span)}`;
      const { rows: counts } = await sql<{ all: number }>`select count(*) as "all" ${failed}`.execute(db);
      const { rows } = await sql<Tables["passes"]>`
        select * ${failed} order by first_at desc, unit, test limit ${comparable(limit)}`.execute(db);
      return {
        all: Number(counts[0]?.all ?? 0),
        failed: rows.map(({ unit, what, type, test, first_station, first_at, last_good }) => ({
          ...{ unit, what: what as UnitKind, type, test, station: first_station, at: first_at },
          isGoodNow: last_good === 1,
        })),
      };
    },
  };
}

interface TestCounts {
  readonly what: string;
  readonly type: string;
  readonly test: string;
  readonly station: string;
  readonly units: number | string;
  readonly first: number | string;
  readonly last: number | string;
}

const byName = (a: TestYieldRow, b: TestYieldRow): number =>
  compareText(a.what, b.what) ||
  compareText(a.type, b.type) ||
  compareText(a.test, b.test) ||
  compareText(a.station, b.station);

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Results that are counted by one statement; of more, each kind of unit by itself. */
const AT_ONCE = 30_000;

/** Lets others have their turn: a statement on SQLite stops everything else in this program. */
const pause = (): Promise<void> => new Promise((done) => setImmediate(done));

/** Conditions that divide the results of a time into pieces which do not take long. */
async function pieces(db: Kysely<Tables>, span: Span): Promise<readonly RawBuilder<unknown>[]> {
  const { rows } = await sql<{ all: number | string }>`
    select count(*) as "all" from (select 1 from passes where ${inSpan(span)} limit ${AT_ONCE + 1}) as piece`.execute(
    db,
  );
  if (Number(rows[0]?.all ?? 0) <= AT_ONCE) return [sql``];
  const types = await db
    .selectFrom("units")
    .select("type")
    .distinct()
    .where("book", "=", span.book)
    .execute();
  return types.map(({ type }) => sql`and type = ${type}`);
}

const inSpan = ({ book, from, to }: Span) => sql`book = ${book}
  ${from === undefined ? sql`` : sql`and first_at >= ${from}`}
  ${to === undefined ? sql`` : sql`and first_at < ${to}`}`;

/** Asked here and not of the database, which would else take the index of all facts that count, and read them all. */
const counts = ({ aside }: Pick<Tables["facts"], "aside">): boolean => aside === null;

interface Row extends Written, Pick<Tables["facts"], "aside"> {
  readonly stream: string;
  readonly seq: number;
  readonly body: string;
}

async function defectsOf(db: Kysely<Tables>, { book, from, to }: Span): Promise<readonly RecordedDefect[]> {
  // The list of kinds is word for word that of the index, or it would not be used. What is mended or corrected is so later
  // than it was found, so all from the first day on is enough.
  const { rows } = await sql<Row>`
    select stream, seq, at, person, body, aside from facts
    where kind in ('defect', 'mended', 'correction')
      ${from === undefined ? sql`` : sql`and at >= ${from}`}
    order by at, stream, seq`.execute(db);
  const read = rows
    .filter(counts)
    .map((row) => ({ ...row, body: factBodySchema.parse(JSON.parse(row.body)) }));
  const gone = new Set(
    read.flatMap(({ body }) => (body.kind === "correction" ? [`${body.stream} ${body.seq}`] : [])),
  );
  const found = new Map<
    string,
    { defect: Body<"defect"> & Written; mended: (Body<"mended"> & Written) | null }
  >();
  for (const { stream, seq, at, person, body } of read) {
    if (gone.has(`${stream} ${seq}`) || body.kind === "correction") continue;
    if (body.kind === "defect") {
      const key = `${body.unit} ${body.defect}`;
      if ((to === undefined || at < to) && !found.has(key))
        found.set(key, { defect: { ...body, at, person }, mended: null });
    } else if (body.kind === "mended") {
      const known = found.get(`${body.unit} ${body.defect}`);
      if (known !== undefined) known.mended = { ...body, at, person };
    }
  }
  const units = await unitsOfBook(db, book, [
    ...new Set([...found.values()].map(({ defect }) => defect.unit)),
  ]);
  return [...found.values()]
    .flatMap(({ defect: { kind: _, ...defect }, mended }): readonly RecordedDefect[] => {
      const unit = units.get(defect.unit);
      if (unit === undefined) return [];
      return [{ ...defect, kind: unit.what as UnitKind, type: unit.type, run: unit.run, mended }];
    })
    .reverse();
}

const defectBody = z.object({ unit: z.string() });
const correctionBody = z.object({ stream: z.string(), seq: z.number() });

type DefectRow = Pick<Tables["facts"], "stream" | "seq" | "kind" | "body" | "aside">;

async function unitsWithDefect(
  db: Kysely<Tables>,
  units: readonly string[] | undefined,
): Promise<ReadonlySet<string>> {
  if (units === undefined || units.length > MOST_BY_UNIT) {
    const { rows } = await sql<DefectRow>`
      select stream, seq, kind, body, aside from facts
      where kind in ('defect', 'mended', 'correction') and kind <> 'mended'`.execute(db);
    return defectUnits(rows.filter(counts));
  }
  const rows: DefectRow[] = [];
  for (const some of inChunks(units, VALUES_AT_ONCE))
    rows.push(
      ...(await db
        .selectFrom("fact_units")
        .innerJoin("facts", "facts.no", "fact_units.no")
        .select(["facts.stream", "facts.seq", "facts.kind", "facts.body", "facts.aside"])
        .where("fact_units.unit", "in", [...some])
        .where("facts.kind", "in", ["defect", "correction"])
        .where("facts.aside", "is", null)
        .execute()),
    );
  return defectUnits(rows);
}

/** Units that are asked for by their own records; of more, all defects are read. */
const MOST_BY_UNIT = 1000;

function defectUnits(rows: readonly DefectRow[]): ReadonlySet<string> {
  const gone = new Set<string>();
  for (const { kind, body } of rows)
    if (kind === "correction") {
      const { stream, seq } = correctionBody.parse(JSON.parse(body));
      gone.add(`${stream} ${seq}`);
    }
  return new Set(
    rows.flatMap(({ stream, seq, kind, body }) =>
      kind === "defect" && !gone.has(`${stream} ${seq}`) ? [defectBody.parse(JSON.parse(body)).unit] : [],
    ),
  );
}

async function unitsOfBook(
  db: Kysely<Tables>,
  book: string,
  ids: readonly string[],
): Promise<ReadonlyMap<string, Tables["units"]>> {
  const found = new Map<string, Tables["units"]>();
  for (const some of inChunks(ids, VALUES_AT_ONCE)) {
    const rows = await db
      .selectFrom("units")
      .selectAll()
      .where("unit", "in", [...some])
      .where("book", "=", book)
      .execute();
    for (const row of rows) found.set(row.unit, row);
  }
  return found;
}
