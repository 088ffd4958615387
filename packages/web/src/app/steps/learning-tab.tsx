import { NumberInput } from "@mantine/core";
import { useState } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useOne } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { LearningChart } from "./learning-chart.tsx";
import { USUAL } from "./plan-rows.ts";
import { usePlan } from "./use-plan.ts";

const USUAL_RUN = 100;
const LONGEST_RUN = 5_000;
/** Machines that are told of in figures. */
const TOLD = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/** How the time for a machine falls over a run, and the takt with it. */
export function LearningTab({ figures }: { readonly figures: ViewEntry<"stepFigures"> }) {
  const words = useWords();
  const own = words.steps;
  const { bookId } = useDesk();
  const [units, setUnits] = useState(USUAL_RUN);
  const learnt = useOne("learning", { units });
  const { plan } = usePlan(USUAL);
  return (
    <>
      <h2>{own.learningTitle}</h2>
      <p>
        {own.learningAbout(figures.learningPct)}{" "}
        <Link href={`/b/${bookId}/tables/shop_settings?id=learning_pct`}>{own.toSetting}</Link>
      </p>
      <div className="question">
        <NumberInput
          label={own.run}
          min={1}
          max={LONGEST_RUN}
          allowDecimal={false}
          value={units}
          onChange={(value) => {
            const count = Math.round(Number(value));
            if (count >= 1 && count <= LONGEST_RUN) setUnits(count);
          }}
        />
      </div>
      {learnt === undefined ? (
        <p className="dim">{words.common.loading}</p>
      ) : (
        <>
          <dl className="plan-figures">
            <div>
              <dt>{own.firstMachine}</dt>
              <dd>
                <b>{own.hours(learnt.firstMinutes * 60)}</b>
              </dd>
            </div>
            <div>
              <dt>{own.lastMachine(units)}</dt>
              <dd>
                <b>{own.hours((learnt.units.at(-1)?.minutes ?? 0) * 60)}</b>
              </dd>
            </div>
            <div>
              <dt>{own.wholeRun}</dt>
              <dd>
                <b>{own.hours(learnt.runHours * 3600)}</b>
              </dd>
            </div>
          </dl>
          <LearningChart learnt={learnt} />
          <table className="plain learnt-table">
            <caption className="visually-hidden">{own.learningTitle}</caption>
            <thead>
              <tr>
                <th scope="col" className="end">
                  {own.machine}
                </th>
                <th scope="col" className="end">
                  {own.alone}
                </th>
                <th scope="col" className="end">
                  {own.average}
                </th>
                {plan !== null && plan.loads.length > 0 && (
                  <th scope="col" className="end">
                    {own.takt}
                  </th>
                )}
              </tr>
            </thead>
            <tbody>
              {learnt.units
                .filter(({ unit }) => TOLD.includes(unit) || unit === units)
                .map(({ unit, minutes, averageMinutes }) => (
                  <tr key={unit}>
                    <th scope="row" className="end">
                      {unit}
                    </th>
                    <td className="end">{own.hours(minutes * 60)}</td>
                    <td className="end">{own.hours(averageMinutes * 60)}</td>
                    {plan !== null && plan.loads.length > 0 && (
                      <td className="end">{own.minutes((plan.taktS * minutes) / learnt.firstMinutes)}</td>
                    )}
                  </tr>
                ))}
            </tbody>
          </table>
        </>
      )}
    </>
  );
}
