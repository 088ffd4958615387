import { Button, NumberInput, TextInput } from "@mantine/core";
import { useState } from "react";
import { useSearchParams } from "wouter";
import { CountField } from "../book/count-field.tsx";
import { useDesk } from "../book/desk.tsx";
import { useMay } from "../session/session.tsx";
import { useTrouble } from "../trouble.ts";
import { usePick, useWords } from "../words.tsx";
import { ComparePlans } from "./compare-plans.tsx";
import { PlanProgress } from "./plan-progress.tsx";
import { MOST_MACHINES } from "./run-draft.ts";
import type { RunTab } from "./run-tab.ts";
import { usePlanAnswer } from "./use-prepared.ts";

const ALL_PCT = 100;
const MOST_PCT = 1000;

/** Another number, another day, other prices: what would be, beside what is planned. */
export function WhatIfTab({ run, plan, day, preparing }: RunTab) {
  const words = useWords().runs;
  const own = words.whatIf;
  const pick = usePick();
  const desk = useDesk();
  const trouble = useTrouble();
  const mayEdit = useMay("designer");
  const [params, setParams] = useSearchParams();
  const [failed, setFailed] = useState("");
  const asked = (name: string, usual: number): number => {
    const value = Number(params.get(name) ?? usual);
    return value > 0 ? value : usual;
  };
  const machines = Math.min(MOST_MACHINES, Math.round(asked("machines", run.machines)));
  const pricesPct = Math.min(MOST_PCT, asked("prices", ALL_PCT));
  const ship = params.get("ship") ?? run.ship;
  const isSame = machines === run.machines && pricesPct === ALL_PCT && ship === run.ship;
  const set = (name: string, value: string, usual: string): void =>
    setParams(
      (before) => {
        const now = new URLSearchParams(before);
        if (value === usual) now.delete(name);
        else now.set(name, value);
        return now;
      },
      { replace: true },
    );
  const answering = usePlanAnswer(
    "runPlan",
    isSame
      ? null
      : {
          runId: run.id,
          today: day,
          change: {
            runId: run.id,
            ...(machines === run.machines ? {} : { machines }),
            ...(ship === run.ship ? {} : { ship }),
            ...(pricesPct === ALL_PCT ? {} : { pricesPct }),
          },
        },
    preparing,
  );
  if (plan === null) return null;
  const keep = (): void => {
    setFailed("");
    const name = pick(run.label, run.labelZh) || run.id;
    desk
      .edit(words.notes.try(name), {
        kind: "put",
        rows: [
          { table: "runs", key: { id: run.id }, cells: { machines: String(machines), ship } },
          // The mix grows and shrinks with the run, as it did in what was tried.
          ...run.mix.map(({ options, machines: count }) => ({
            table: "run_mix",
            key: { run: run.id, options },
            cells: { machines: String(Math.floor((count * machines) / run.machines)) },
          })),
        ],
      })
      .then(
        () => setParams({}, { replace: true }),
        (error: unknown) => setFailed(trouble(error)),
      );
  };
  return (
    <>
      <p>{own.about}</p>
      <div className="question">
        <CountField
          label={own.machines}
          value={machines}
          most={MOST_MACHINES}
          onCount={(count) => set("machines", String(count), String(run.machines))}
        />
        <TextInput
          label={own.ship}
          type="date"
          value={ship}
          onChange={(event) => {
            const { value } = event.currentTarget;
            if (value !== "") set("ship", value, run.ship);
          }}
        />
        <NumberInput
          className="count-field"
          label={own.prices}
          suffix=" %"
          min={1}
          max={MOST_PCT}
          value={pricesPct}
          onChange={(value) => Number(value) > 0 && set("prices", String(value), String(ALL_PCT))}
        />
        {!isSame && (
          <Button variant="default" onClick={() => setParams({}, { replace: true })}>
            {own.reset}
          </Button>
        )}
      </div>
      {isSame ? (
        <p className="dim">{own.same}</p>
      ) : (
        <>
          <PlanProgress preparing={preparing} answering={answering} />
          {answering.answer !== undefined && (
            <div className={answering.isCurrent ? "" : "stale"}>
              <ComparePlans
                a={plan}
                b={answering.answer}
                aName={own.base}
                bName={own.tried}
                aRun={run}
                bRun={{ ...run, machines, ship }}
              />
              {mayEdit && (machines !== run.machines || ship !== run.ship) && (
                <p>
                  <Button variant="default" disabled={!answering.isCurrent} onClick={keep}>
                    {own.keep}
                  </Button>{" "}
                  <span className="dim">{own.keepAbout}</span>
                </p>
              )}
            </div>
          )}
        </>
      )}
      {failed !== "" && <p className="error-text">{failed}</p>}
    </>
  );
}
