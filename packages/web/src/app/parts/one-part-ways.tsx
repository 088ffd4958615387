import { Button } from "@mantine/core";
import { decimal, divideDecimal, numberOfDecimal } from "@pinwright/kernel";
import { useState } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useOne } from "../book/desk.tsx";
import { useMay } from "../session/session.tsx";
import { useTrouble } from "../trouble.ts";
import { usePick, useWords } from "../words.tsx";
import { partAddress } from "./address.ts";
import { grouped, priceText, quantityText } from "./amounts.ts";
import { LineChart } from "./chart/line-chart.tsx";
import { TableScroll } from "./table-scroll.tsx";
import { TotalText } from "./total-text.tsx";
import { useWayName } from "./use-way-name.ts";

type Ways = ViewEntry<"partWays">;
type Curves = ViewEntry<"wayCurve">;

/** Quantities that the table tells of, beside that of the machines. */
const TOLD = [1, 10, 100, 1000, 10_000];
/** Breaks in the ways' own prices can make a way the cheapest again and again; more are not told one by one. */
const MOST_CHANGES = 8;

/** Cost of one of a part in each way, against the quantity, and the choice between them. */
export function OnePart({ part, machines }: { readonly part: Ways; readonly machines: number }) {
  const words = useWords();
  const own = words.parts;
  const pick = usePick();
  const { bookId } = useDesk();
  const wayName = useWayName();
  const curves = useOne("wayCurve", { id: part.id, machines });
  const name = pick(part.label, part.labelZh) || part.id;
  const pieces = Math.max(1, Math.round(numberOfDecimal(part.inMachine) * machines));
  return (
    <>
      <h3>
        {name} <span className="dim">{part.id}</span>
      </h3>
      <p>
        {own.perMachine(quantityText(part.inMachine, part.unit))}
        {" · "}
        {own.piecesFor(grouped(String(pieces)), machines)} {" · "}
        <Link href={partAddress(bookId, part.id)}>{own.tabs.bill}</Link>
      </p>
      {curves === undefined ? (
        <p className="dim">{words.common.loading}</p>
      ) : (
        <>
          <Choosing part={part} curves={curves} pieces={pieces} />
          <Changes part={part} curves={curves} />
          <Curves part={part} curves={curves} pieces={pieces} name={name} wayName={wayName} />
        </>
      )}
    </>
  );
}

/** What one costs when so many are got at once; null: the quantity was not asked about. */
function eachAt({ quantities, ways }: Curves, way: number, quantity: number) {
  const at = quantities.indexOf(quantity);
  const total = ways[way]?.costs[at];
  return total === undefined ? null : { ...total, value: divideDecimal(total.value, decimal(quantity)) };
}

function Curves({
  part,
  curves,
  pieces,
  name,
  wayName,
}: {
  readonly part: Ways;
  readonly curves: Curves;
  readonly pieces: number;
  readonly name: string;
  readonly wayName: (way: Ways["ways"][number]) => string;
}) {
  const own = useWords().parts;
  const { quantities, ways, changes, currency } = curves;
  const first = grouped(String(quantities[0] ?? 1));
  const last = grouped(String(quantities.at(-1) ?? 1));
  return (
    <LineChart
      label={own.waysChart(name, first, last)}
      xAxis="log"
      yAxis="log"
      xName={own.quantityAxis}
      yName={`${own.costAxis}, ${currency}`}
      xText={(value) => grouped(String(value))}
      yText={(value) => grouped(String(value))}
      curves={ways.flatMap((way, i) => {
        const shown = part.ways[i];
        // A cost that lacks something would be a curve of nothing.
        if (shown === undefined || way.costs.some(({ missing }) => missing.length > 0)) return [];
        return [
          {
            id: `${i}`,
            name: wayName(shown),
            points: way.costs.map(({ value }, n) => ({
              x: quantities[n] ?? 1,
              y: numberOfDecimal(value) / (quantities[n] ?? 1),
            })),
          },
        ];
      })}
      marks={[
        ...(changes.length > MOST_CHANGES
          ? []
          : changes.map(({ from }) => ({ x: from, text: `${own.breakEven} ${grouped(String(from))}` }))),
        { x: pieces, text: own.hereMark(grouped(String(pieces))) },
      ]}
    />
  );
}

function Changes({ part, curves }: { readonly part: Ways; readonly curves: Curves }) {
  const own = useWords().parts;
  const wayName = useWayName();
  const { changes } = curves;
  const inMachine = numberOfDecimal(part.inMachine);
  const name = (at: number): string => {
    const way = part.ways[at];
    return way === undefined ? "" : wayName(way);
  };
  if (part.ways.length < 2) return null;
  if (changes.length === 0) return <p>{own.noBreakEven}</p>;
  return (
    <>
      <h4>{own.breakEvens}</h4>
      <ul>
        {changes.slice(0, MOST_CHANGES).map(({ from, fromWay, toWay }) => (
          <li key={from}>
            {own.breakEvenAt(grouped(String(from)), name(fromWay), name(toWay))}
            {inMachine > 0 && (
              <span className="dim">
                {" "}
                ({own.breakEvenMachines(grouped(String(Math.ceil(from / inMachine))))})
              </span>
            )}
          </li>
        ))}
      </ul>
      {changes.length > MOST_CHANGES && <p className="dim">{own.andMore(changes.length - MOST_CHANGES)}</p>}
    </>
  );
}

/** The ways side by side, and the choice. */
function Choosing({
  part,
  curves,
  pieces,
}: {
  readonly part: Ways;
  readonly curves: Curves;
  readonly pieces: number;
}) {
  const own = useWords().parts;
  const pick = usePick();
  const desk = useDesk();
  const trouble = useTrouble();
  const wayName = useWayName();
  const mayEdit = useMay("designer");
  const [failed, setFailed] = useState("");
  const name = pick(part.label, part.labelZh) || part.id;
  const told = [...new Set([...TOLD, pieces])]
    .filter((n) => curves.quantities.includes(n))
    .sort((a, b) => a - b);
  const choose = (wayId: string | null, note: string): void => {
    setFailed("");
    const rows = part.ways.flatMap((way) =>
      way.wayId === null
        ? []
        : [
            {
              table: "ways",
              key: { part: part.id, way: way.wayId },
              cells: { chosen: way.wayId === wayId ? "yes" : "" },
            },
          ],
    );
    desk.edit(note, { kind: "put", rows }).catch((error: unknown) => setFailed(trouble(error)));
  };
  const cheapest = curves.cheapest[curves.quantities.indexOf(pieces)] ?? null;
  return (
    <>
      <TableScroll>
        <table className="plain">
          <caption className="visually-hidden">{own.waysTitle}</caption>
          <thead>
            <tr>
              <th scope="col">{own.way}</th>
              <th scope="col" className="end">
                {own.toolCost}
              </th>
              {told.map((n) => (
                <th key={n} scope="col" className={n === pieces ? "end" : "end minor"}>
                  {own.costAt(grouped(String(n)))}
                </th>
              ))}
              <th scope="col">{own.chosen}</th>
            </tr>
          </thead>
          <tbody>
            {part.ways.map((way, i) => {
              const curve = curves.ways[i];
              return (
                <tr key={`${way.wayId} ${way.kind}`} aria-current={i === part.current ? "true" : undefined}>
                  <th scope="row">
                    {wayName(way)}
                    <small>{own.sources[way.kind]}</small>
                    {i === cheapest && <small className="cheapest">{own.cheapest}</small>}
                  </th>
                  <td className="end">
                    {curve?.toolCost == null ? "–" : priceText(curve.toolCost, curves.currency)}
                    {curve?.toolLife != null && (
                      <small>{own.toolLife(grouped(String(curve.toolLife)))}</small>
                    )}
                  </td>
                  {told.map((n) => {
                    const each = eachAt(curves, i, n);
                    return (
                      <td key={n} className={n === pieces ? "end" : "end minor"}>
                        {each === null ? "" : <TotalText total={each} currency={curves.currency} isPrice />}
                      </td>
                    );
                  })}
                  <td>
                    {way.chosen ? (
                      <b>{own.byPerson}</b>
                    ) : (
                      <>
                        {i === part.current && !part.isDecided && (
                          <span className="dim">{own.byProgram} </span>
                        )}
                        {mayEdit && way.wayId !== null && part.ways.length > 1 && (
                          <Button
                            variant="default"
                            size="compact-sm"
                            aria-label={own.chooseWay(wayName(way))}
                            onClick={() => choose(way.wayId, own.notes.chooseWay(name, wayName(way)))}
                          >
                            {own.choose}
                          </Button>
                        )}
                      </>
                    )}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </TableScroll>
      {mayEdit && part.isDecided && (
        <Button variant="default" size="compact-sm" onClick={() => choose(null, own.notes.freeWay(name))}>
          {own.letProgram}
        </Button>
      )}
      {failed !== "" && <p className="error-text">{failed}</p>}
    </>
  );
}
