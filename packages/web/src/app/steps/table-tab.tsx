import { useMemo } from "react";
import { Link, useSearchParams } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { DataTable } from "../harnesses/data-table.tsx";
import { screwsAddress } from "../screws/use-screws-place.ts";
import { usePick, useWords } from "../words.tsx";
import { placesOfSteps, USUAL } from "./plan-rows.ts";
import { After, StepDetail } from "./step-detail.tsx";
import { usePlan } from "./use-plan.ts";

type Step = ViewEntry<"stepLines">;

/** Steps that are shown before more are asked for. */
const FIRST = 120;

/** Every step with its place, its time and what it comes after. */
export function TableTab({
  steps,
  figures,
}: {
  readonly steps: Entries<"stepLines">;
  readonly figures: ViewEntry<"stepFigures">;
}) {
  const words = useWords();
  const own = words.steps;
  const pick = usePick();
  const { bookId } = useDesk();
  const [params, setParams] = useSearchParams();
  const id = params.get("id");
  const { plan } = usePlan(USUAL);
  const places = useMemo(() => (plan === null ? null : placesOfSteps(plan)), [plan]);
  const chosen = steps.get(id ?? "");
  const rows = chosen === undefined ? [...steps.values()] : [chosen];
  const placeOf = (step: Step): string => {
    const load = places?.get(step.id);
    return load === undefined ? "" : pick(load.labels.en, load.labels.zh);
  };
  const motions = (step: Step): string =>
    step.motions
      .map((motion) => own.motion(own.motionNames[motion.kind], motion.count, motion.seconds))
      .join("\n");
  return (
    <>
      <h2>{own.tableTitle}</h2>
      <p className="dim">{own.tableAbout(figures.steps, own.hours(figures.seconds))}</p>
      {id !== null && (
        <p>
          {chosen === undefined && own.noSuchStep(id)}{" "}
          <button type="button" className="link-button" onClick={() => setParams({}, { replace: true })}>
            {own.allSteps}
          </button>
        </p>
      )}
      {chosen !== undefined && <StepDetail key={chosen.id} step={chosen} />}
      <DataTable
        caption={own.tableTitle}
        rows={rows}
        rowKey={(step) => step.id}
        first={FIRST}
        {...(chosen === undefined
          ? { detail: { label: own.unfold, of: (step: Step) => <StepDetail step={step} /> } }
          : {})}
        columns={[
          { key: "number", header: own.number, value: (step) => step.number, align: "end" },
          {
            key: "title",
            header: own.step,
            value: (step) => pick(step.label, step.labelZh) || step.id,
            cell: (step) => (
              <Link href={screwsAddress(bookId, { stepId: step.id })} title={step.id}>
                {pick(step.label, step.labelZh) || step.id}
              </Link>
            ),
          },
          {
            key: "kind",
            header: own.kind,
            value: (step) => own.kinds[step.kind],
            minor: true,
          },
          {
            key: "place",
            header: own.place,
            value: placeOf,
            text: placeOf,
            cell: (step) => (
              <>
                {placeOf(step)}
                {step.stationId !== null && <small>{own.pinned}</small>}
              </>
            ),
            minor: true,
          },
          {
            key: "time",
            header: own.time,
            value: (step) => step.seconds,
            text: (step) => own.minutes(step.seconds),
            cell: (step) => (
              <span title={motions(step)}>
                {own.minutes(step.seconds)}
                {step.secondsFrom === "designer" && <small>{own.timeSet}</small>}
              </span>
            ),
            align: "end",
          },
          {
            key: "after",
            header: own.after,
            value: (step) => step.after.map((one) => one.number).join(" "),
            cell: (step) => <After step={step} />,
            minor: true,
          },
        ]}
      />
    </>
  );
}
