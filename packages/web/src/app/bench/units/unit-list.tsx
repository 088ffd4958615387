import type { UnitSummary } from "@pinwright/contract";
import { useRef } from "react";
import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { useCoarsePointer } from "../../tables/grid/coarse-pointer.ts";
import { useWords } from "../../words.tsx";
import { unitAddress } from "../address.ts";
import { useNames, useWhen } from "../names.tsx";
import { stateOf } from "./hold.ts";
import { useRowWindow } from "./use-row-window.ts";

const ROW_PX = 34;
const COARSE_ROW_PX = 46;

interface Extra {
  readonly header: string;
  readonly of: (unit: UnitSummary) => string;
}

/** Units one a row. Only the rows that are seen are drawn, so that ten thousand are as quick as ten. */
export function UnitList({
  units,
  extra,
}: {
  readonly units: readonly UnitSummary[];
  /** A column more. */
  readonly extra?: Extra;
}) {
  const { benchUnits: own } = useWords();
  const rowPx = useCoarsePointer() ? COARSE_ROW_PX : ROW_PX;
  const box = useRef<HTMLDivElement>(null);
  const { from, to } = useRowWindow(box, units.length, rowPx);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reached by keyboard
    <section className="bench-rows" ref={box} tabIndex={0} aria-label={own.list}>
      <table aria-rowcount={units.length + 1}>
        <caption className="visually-hidden">{own.list}</caption>
        <thead>
          <tr aria-rowindex={1}>
            <th scope="col">{own.unit}</th>
            <th scope="col">{own.type}</th>
            {extra !== undefined && <th scope="col">{extra.header}</th>}
            <th scope="col" className="minor">
              {own.run}
            </th>
            <th scope="col">{own.state}</th>
            <th scope="col" className="minor">
              {own.stage}
            </th>
            <th scope="col" className="minor">
              {own.site}
            </th>
            <th scope="col" className="minor">
              {own.within}
            </th>
            <th scope="col" className="minor">
              {own.last}
            </th>
          </tr>
        </thead>
        <tbody>
          <Space px={from * rowPx} />
          {units.slice(from, to).map((unit, i) => (
            <Row
              key={unit.unit}
              unit={unit}
              index={from + i + 2}
              rowPx={rowPx}
              {...(extra === undefined ? {} : { extra: extra.of(unit) })}
            />
          ))}
          <Space px={(units.length - to) * rowPx} />
        </tbody>
      </table>
    </section>
  );
}

/** As high as the rows that are not drawn. */
function Space({ px }: { readonly px: number }) {
  return px <= 0 ? null : (
    <tr>
      <td colSpan={9} style={{ height: px, padding: 0, border: 0 }} />
    </tr>
  );
}

function Row({
  unit,
  index,
  rowPx,
  extra,
}: {
  readonly unit: UnitSummary;
  readonly index: number;
  readonly rowPx: number;
  readonly extra?: string;
}) {
  const { benchUnits: own } = useWords();
  const { bookId } = useDesk();
  const names = useNames();
  const when = useWhen();
  return (
    <tr aria-rowindex={index} style={{ height: rowPx }}>
      <th scope="row">
        <Link href={unitAddress(bookId, unit.unit)}>{unit.unit}</Link>
      </th>
      <td>
        {names.type(unit.what, unit.type)} <span className="dim">{own.oneKind[unit.what]}</span>
      </td>
      {extra !== undefined && <td>{extra}</td>}
      <td className="minor">{unit.run === "" ? "" : names.run(unit.run)}</td>
      <td>
        <StateText unit={unit} />
      </td>
      <td className="minor">{names.stage(unit.stage)}</td>
      <td className="minor">
        {unit.onTheWay === null ? names.site(unit.site) : own.onTheWay(names.site(unit.onTheWay.to))}
      </td>
      <td className="minor">
        {unit.within !== null && (
          <Link href={unitAddress(bookId, unit.within.unit)} title={names.place(unit.within.place)}>
            {unit.within.unit}
          </Link>
        )}
      </td>
      <td className="minor dim">{when(unit.lastAt)}</td>
    </tr>
  );
}

/** In work, on hold and why, or released. */
function StateText({ unit }: { readonly unit: UnitSummary }) {
  const { benchUnits: own } = useWords();
  const names = useNames();
  const state = stateOf(unit);
  if (state !== "on-hold")
    return <span className={state === "released" ? "bench-released" : "dim"}>{own.states[state]}</span>;
  const { openDefects, failedTests, recalls } = unit;
  const [test = ""] = failedTests;
  const why = [
    ...(openDefects > 0 ? [own.holds.defects(openDefects)] : []),
    ...(failedTests.length === 1 ? [own.holds.test(names.test(test))] : []),
    ...(failedTests.length > 1 ? [own.holds.tests(failedTests.length)] : []),
    ...(recalls.length > 0 ? [own.holds.recall] : []),
  ].join(" · ");
  return (
    <span className="amber-text" title={why}>
      <b>{own.states[state]}</b> {why}
    </span>
  );
}
