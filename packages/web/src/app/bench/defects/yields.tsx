import { type AnswerOf, UNIT_KINDS, type UnitKind } from "@pinwright/contract";
import { defectsPerUnit } from "@pinwright/engine";
import { proportion } from "@pinwright/kernel";
import { type ReactNode, useMemo } from "react";
import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { DataTable } from "../../harnesses/data-table.tsx";
import { TableScroll } from "../../parts/table-scroll.tsx";
import { useWords } from "../../words.tsx";
import { unitAddress } from "../address.ts";
import { useNames, useWhen } from "../names.tsx";
import { rolledByType, yieldsBy } from "./yield-rows.ts";

type Passes = AnswerOf<"passes">;

const FIRST = 10;

/** How much comes through at the first try: by kind of unit, by test and by station. */
export function Yields({
  passes,
  kind,
  defects,
}: {
  readonly passes: Passes;
  readonly kind: UnitKind | "";
  /** Defects of the same units and time. */
  readonly defects: number;
}) {
  const { benchQuality } = useWords();
  const own = benchQuality.yields;
  const names = useNames();
  const tests = useMemo(
    () => passes.tests.filter(({ what }) => kind === "" || what === kind),
    [passes.tests, kind],
  );
  const types = useMemo(
    () => passes.types.filter(({ what }) => kind === "" || what === kind),
    [passes.types, kind],
  );
  const rolled = useMemo(() => rolledByType(tests), [tests]);
  const units = types.reduce((sum, type) => sum + type.units, 0);
  return (
    <section aria-labelledby="yields">
      <h3 id="yields">{own.title}</h3>
      <p className="dim">{own.about}</p>
      {units === 0 ? (
        <p>{own.none}</p>
      ) : (
        <>
          <PerUnit defects={defects} units={units} />
          <div className="quality-beside">
            <YieldTable
              caption={own.byType}
              head={own.type}
              note={own.rolledAbout}
              rows={types.map(({ what, type, units: count, first }) => ({
                key: `${what} ${type}`,
                name: names.type(what, type),
                ...{ units: count, first },
                last: null,
                rolled: rolled.get(`${what} ${type}`) ?? null,
              }))}
            />
            <YieldTable
              caption={own.byTest}
              head={own.test}
              rows={[...yieldsBy(tests, ({ what, type, test }) => `${what} ${type} ${test}`)].map(
                ([key, count]) => {
                  const [, type = "", test = ""] = key.split(" ");
                  const what = UNIT_KINDS.find((one) => key.startsWith(`${one} `)) ?? "machine";
                  return {
                    ...{ key, name: names.test(test), under: names.type(what, type) },
                    ...{ ...count, rolled: null },
                  };
                },
              )}
            />
            <YieldTable
              caption={own.byStation}
              head={own.station}
              rows={[...yieldsBy(tests, ({ station }) => station)].map(([key, count]) => ({
                key,
                name: key === "" ? own.noStation : names.station(key),
                ...count,
                rolled: null,
              }))}
            />
          </div>
          <Failed passes={passes} kind={kind} />
        </>
      )}
    </section>
  );
}

function PerUnit({ defects, units }: { readonly defects: number; readonly units: number }) {
  const { benchQuality } = useWords();
  const own = benchQuality.yields;
  const { perUnit, expectedShare } = defectsPerUnit(defects, units);
  return (
    <p title={String(perUnit)}>
      {own.perUnit}: <b>{Number(perUnit.toPrecision(2))}</b>{" "}
      <span className="dim">({own.expected(benchQuality.percent(expectedShare))})</span>
    </p>
  );
}

interface YieldRow {
  readonly key: string;
  readonly name: string;
  readonly under?: string;
  readonly units: number;
  readonly first: number;
  /** Null: not counted. */
  readonly last: number | null;
  readonly rolled: number | null;
}

function YieldTable({
  caption,
  head,
  rows,
  note,
}: {
  readonly caption: string;
  readonly head: string;
  readonly rows: readonly YieldRow[];
  readonly note?: ReactNode;
}) {
  const { benchQuality } = useWords();
  const own = benchQuality.yields;
  const hasLast = rows.some(({ last }) => last !== null);
  const hasRolled = rows.some(({ rolled }) => rolled !== null);
  const cell = (text: string) => <td className="end">{text}</td>;
  return (
    <TableScroll>
      <table className="plain">
        <caption>
          {caption}
          {note !== undefined && <small>{note}</small>}
        </caption>
        <thead>
          <tr>
            <th scope="col">{head}</th>
            <th scope="col" className="end">
              {own.first}
            </th>
            <th scope="col" className="end">
              {own.share}
            </th>
            <th scope="col" className="end">
              {own.interval}
            </th>
            {hasLast && (
              <th scope="col" className="end">
                {own.last}
              </th>
            )}
            {hasRolled && (
              <th scope="col" className="end">
                {own.rolled}
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, name, under, units, first, last, rolled }) => {
            const { value, low, high } = proportion(first, units);
            return (
              <tr key={key}>
                <th scope="row">
                  {name}
                  {under !== undefined && <small className="dim quality-under">{under}</small>}
                </th>
                {cell(benchQuality.of(first, units))}
                <td className="end" title={String(value)}>
                  {benchQuality.percent(value)}
                </td>
                {cell(benchQuality.between(benchQuality.percent(low), benchQuality.percent(high)))}
                {hasLast && cell(last === null ? "" : benchQuality.of(last, units))}
                {hasRolled && cell(rolled === null ? "" : benchQuality.percent(rolled))}
              </tr>
            );
          })}
        </tbody>
      </table>
    </TableScroll>
  );
}

/** Units that failed a test at the first try, the last ones first. */
function Failed({ passes, kind }: { readonly passes: Passes; readonly kind: UnitKind | "" }) {
  const own = useWords().benchQuality.yields;
  const { bookId } = useDesk();
  const names = useNames();
  const when = useWhen();
  const rows = passes.failed.filter(({ what }) => kind === "" || what === kind);
  if (rows.length === 0) return null;
  return (
    <>
      <h3>{own.failed}</h3>
      {passes.fails > passes.failed.length && (
        <p className="dim">{own.failedSome(passes.failed.length, passes.fails)}</p>
      )}
      <DataTable
        caption={own.failed}
        rows={rows}
        rowKey={({ unit, test }) => `${unit} ${test}`}
        first={FIRST}
        columns={[
          {
            key: "unit",
            header: own.units,
            value: ({ unit }) => unit,
            cell: ({ unit, what, type }) => (
              <>
                <Link className="quality-unit" href={unitAddress(bookId, unit)}>
                  {unit}
                </Link>
                <small className="dim quality-under">{names.type(what, type)}</small>
              </>
            ),
          },
          { key: "test", header: own.test, value: ({ test }) => names.test(test) },
          {
            key: "station",
            header: own.station,
            value: ({ station }) => names.station(station),
            minor: true,
          },
          { key: "at", header: own.first, value: ({ at }) => at, cell: ({ at }) => when(at) },
          {
            key: "now",
            header: own.last,
            value: ({ isGoodNow }) => (isGoodNow ? own.nowGood : own.nowBad),
            cell: ({ isGoodNow }) => (isGoodNow ? own.nowGood : <b className="amber-text">{own.nowBad}</b>),
          },
        ]}
      />
    </>
  );
}
