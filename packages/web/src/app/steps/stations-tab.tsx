import { Button } from "@mantine/core";
import { useState } from "react";
import { Link, useSearchParams } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useView } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { useMay } from "../session/session.tsx";
import { usePick, useWords } from "../words.tsx";
import { PlaceSteps } from "./place-steps.tsx";
import { PlanFigures } from "./plan-figures.tsx";
import { isUsual, onUsualDay, type Plan, type Question, USUAL, withMoved } from "./plan-rows.ts";
import { QuestionForm } from "./question-form.tsx";
import { StationChart } from "./station-chart.tsx";
import { useChoose } from "./use-choose.ts";
import { type Planning, usePlan } from "./use-plan.ts";

type Step = ViewEntry<"stepLines">;

/** A step that was given to another place just now, until the balance has looked again. */
interface Moved {
  readonly plan: Plan;
  readonly step: Step;
  readonly placeId: string;
}

/** The steps shared out to people, place by place, against the takt. */
export function StationsTab({
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
  const stations = useView("stations", null);
  const mayEdit = useMay("designer");
  const { choose, failed } = useChoose();
  const [params, setParams] = useSearchParams();
  const hasStations = stations !== null && stations.size > 0;
  const [asked, setAsked] = useState<Question | null>(null);
  const question =
    asked ??
    (hasStations ? USUAL : { ...USUAL, ask: { kind: "fewest-places", taktS: figures.taktMin * 60 } });
  const usual = usePlan(stations === null ? null : onUsualDay(question));
  const other = usePlan(isUsual(question) ? null : question);
  const planning = isUsual(question) ? usual : other;
  const [moved, setMoved] = useState<Moved | null>(null);
  const plan =
    planning.plan !== null && moved?.plan === planning.plan
      ? withMoved(moved.plan, moved.step, moved.placeId)
      : planning.plan;
  const placeId =
    params.get("place") ??
    plan?.loads.find(({ stepIds, beside }) => stepIds.length > 0 && !beside)?.placeId ??
    null;
  const stepId = params.get("step");
  const select = (place: string, step: string | null): void =>
    setParams({ place, ...(step === null ? {} : { step }) }, { replace: true });
  const onBook = question.ask.kind === "book-stations";
  const move = (step: Step, to: string | null, stationId: string | null): void => {
    const station = stations?.get(stationId ?? "");
    const name = pick(step.label, step.labelZh) || step.id;
    if (planning.plan !== null && to !== null) setMoved({ plan: planning.plan, step, placeId: to });
    if (to !== null) select(to, step.id);
    const note =
      stationId === null
        ? own.notes.free(step.number, name)
        : own.notes.move(step.number, name, pick(station?.label ?? "", station?.labelZh ?? "") || stationId);
    choose("station", step.id, stationId, note);
  };
  if (stations === null) return <p className="dim">{words.common.loading}</p>;
  return (
    <>
      <div className="steps-head">
        <h2>{own.stationsTitle}</h2>
        <Progress planning={planning} />
      </div>
      <QuestionForm
        key={figures.taktMin}
        question={question}
        ask={setAsked}
        stations={stations}
        plan={usual.plan}
        taktMin={figures.taktMin}
      />
      {failed !== "" && <p className="error-text">{failed}</p>}
      {plan === null ? (
        planning.isCurrent && !planning.working && <p>{own.nobody}</p>
      ) : (
        <div className={planning.isCurrent ? "" : "stale"}>
          <PlanFigures
            plan={plan}
            usual={isUsual(question) ? null : usual.plan}
            steps={steps}
            taktMin={figures.taktMin}
          />
          <div className="chart-and-place">
            <div>
              <StationChart
                plan={plan}
                usual={isUsual(question) ? null : usual.plan}
                steps={steps}
                placeId={placeId}
                stepId={stepId}
                select={select}
                move={mayEdit && onBook ? move : null}
              />
              {!onBook && <p className="dim">{own.notOnBook}</p>}
            </div>
            <PlaceSteps
              plan={plan}
              steps={steps}
              stations={stations}
              placeId={placeId}
              stepId={stepId}
              select={select}
              move={mayEdit && onBook ? move : null}
            />
          </div>
        </div>
      )}
      {!hasStations && (
        <p>
          {own.noStations}{" "}
          <Link href={`/b/${bookId}/tables/stations`}>{words.tableNames.tables.stations}</Link>
        </p>
      )}
    </>
  );
}

/** That the balance is being looked for, and a way to leave it at what is there. */
function Progress({ planning }: { readonly planning: Planning }) {
  const words = useWords();
  return (
    <div className="plan-progress" role="status">
      {planning.working && (
        <>
          <progress aria-label={words.steps.looking} />
          <span>{words.steps.looking}</span>
          <Button variant="default" size="compact-sm" onClick={planning.stop}>
            {words.common.cancel}
          </Button>
        </>
      )}
      {planning.failed !== "" && <span className="error-text">{planning.failed}</span>}
    </div>
  );
}
