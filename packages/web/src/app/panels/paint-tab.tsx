import { Button } from "@mantine/core";
import { useState } from "react";
import { Link } from "wouter";
import { useDesk, useOne } from "../book/desk.tsx";
import { MachinesField } from "../book/machines-field.tsx";
import { useAnswer } from "../book/use-answer.ts";
import { useAskedCount } from "../book/use-asked-count.ts";
import { SheetLinks } from "../sheets/sheet-links.tsx";
import { DrawingScroll } from "../wiring/currents/drawing-scroll.tsx";
import { usePick, useWords } from "../words.tsx";
import { MOST_MACHINES } from "./cutting-tab.tsx";
import { PaintChart } from "./paint-chart.tsx";

/** Batches that are shown before all are asked for. */
const FIRST = 24;
const SAME_HOURS = 0.02;

/** How the cabinets of a run go over the rack. */
export function PaintTab() {
  const words = useWords();
  const own = words.panels;
  const pick = usePick();
  const { bookId } = useDesk();
  const basis = useOne("paintBasis", null);
  // One rack full, unless somebody asks for more.
  const [machines, setMachines] = useAskedCount("machines", basis?.rackCabinets ?? 1, MOST_MACHINES);
  const { answer: plan, failed, isCurrent } = useAnswer("paintOfRun", { machines }, basis ?? null);
  const [all, setAll] = useState(false);
  const tables = (
    <p className="way-links">
      {(["coats", "benches"] as const).map((table) => (
        <Link key={table} href={`/b/${bookId}/tables/${table}`}>
          {words.tableNames.tables[table]}
        </Link>
      ))}
      <Link href={`/b/${bookId}/tables/shop_settings?id=rack_cabinets`}>{own.shopSettings}</Link>
    </p>
  );
  const nameOf = (id: string): string => {
    const coat = basis?.coats.find((one) => one.id === id);
    return coat === undefined ? id : pick(coat.label, coat.labelZh) || id;
  };
  if (failed !== "") return <p className="error-text">{failed}</p>;
  if (basis === undefined || plan === undefined) return <p className="dim">{words.common.loading}</p>;
  if (plan === null)
    return (
      <>
        <h2>{own.paintTitle}</h2>
        <p>{own.noCoats}</p>
        {tables}
      </>
    );
  const shown = all ? plan.batches : plan.batches.slice(0, FIRST);
  return (
    <>
      <h2>{own.paintTitle}</h2>
      <p className="dim">{own.paintAbout(plan.rackCabinets, plan.hoursDay)}</p>
      <div className="question">
        <MachinesField label={own.cabinets} value={machines} most={MOST_MACHINES} onCount={setMachines} />
      </div>
      <div className={isCurrent ? "" : "stale"}>
        <dl className="plan-figures">
          <div>
            <dt>{own.batches}</dt>
            <dd>
              <b>{plan.batches.length}</b>
              <span className="dim">{own.batchSize(plan.batchSize, plan.batches.length > 1)}</span>
            </dd>
          </div>
          <div>
            <dt>{own.lastDry}</dt>
            <dd>
              <b>{own.clock(plan.endHour)}</b>
              <span className="dim">
                {plan.endHour - plan.earliestEndHour < SAME_HOURS
                  ? own.earliestMet
                  : own.earliest(own.clock(plan.earliestEndHour))}
              </span>
            </dd>
          </div>
        </dl>
        <PaintChart batches={shown} hoursDay={plan.hoursDay} endHour={plan.endHour} nameOf={nameOf} />
        <ul className="chart-legend">
          {(["worked", "drying", "night"] as const).map((kind) => (
            <li key={kind}>
              <i className={`key ${kind}`} aria-hidden /> {own[kind]}
            </li>
          ))}
        </ul>
        {shown.length < plan.batches.length && (
          <Button variant="subtle" onClick={() => setAll(true)}>
            {own.allBatches(plan.batches.length)}
          </Button>
        )}
        <p className="dim">{own.clockHelp}</p>
        <DrawingScroll>
          <table className="plain">
            <caption className="visually-hidden">{own.paintTitle}</caption>
            <thead>
              <tr>
                <th scope="col">{own.batch}</th>
                <th scope="col">{own.coat}</th>
                <th scope="col">{own.begins}</th>
                <th scope="col">{own.ends}</th>
                <th scope="col">{own.dry}</th>
              </tr>
            </thead>
            <tbody>
              {shown.flatMap((batch) =>
                batch.coats.map((coat, i) => (
                  <tr key={`${batch.number} ${coat.coatId}`}>
                    {i === 0 && (
                      <th scope="rowgroup" rowSpan={batch.coats.length}>
                        {own.batchOf(batch.number, batch.cabinets)}
                      </th>
                    )}
                    <td>{nameOf(coat.coatId)}</td>
                    <td>{own.clock(coat.startHour)}</td>
                    <td>{own.clock(coat.workEndHour)}</td>
                    <td>{own.clock(coat.dryHour)}</td>
                  </tr>
                )),
              )}
            </tbody>
          </table>
        </DrawingScroll>
      </div>
      <p className="caution">{own.caution}</p>
      <SheetLinks title={own.print} kinds={["paint-plan"]} machines={machines} />
      {tables}
    </>
  );
}
