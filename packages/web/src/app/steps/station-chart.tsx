import { memo, useRef } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import type { Entries } from "../book/desk-client.ts";
import { usePick, useWords } from "../words.tsx";
import { type Load, type Plan, secondsOn, withMoved, wrongWayRound } from "./plan-rows.ts";
import { useStepDrag } from "./use-step-drag.ts";

type Step = ViewEntry<"stepLines">;

/** Gives a step to a place; the station is the one that is written down. */
export type MoveStep = (step: Step, placeId: string | null, stationId: string | null) => void;

/** Room beyond the longest bar, so that its figure has a place. */
const AIR = 1.04;

/**
 * A bar for every place, with its steps one after the other; lines stand at the takt and at what no plan can beat. A
 * step can be drawn to another station. What a pointer does here, the list of a place does for keyboard and finger.
 */
export const StationChart = memo(function StationChart({
  plan,
  usual,
  steps,
  placeId,
  stepId,
  select,
  move,
}: {
  readonly plan: Plan;
  readonly usual: Plan | null;
  readonly steps: Entries<"stepLines">;
  readonly placeId: string | null;
  readonly stepId: string | null;
  readonly select: (placeId: string, stepId: string | null) => void;
  /** Null: nothing can be moved. */
  readonly move: MoveStep | null;
}) {
  const words = useWords().steps;
  const chart = useRef<HTMLDivElement>(null);
  const drag = useStepDrag(chart, stepId, {
    tapped: (id, place) => select(place, id),
    dropped: (id, place) => {
      const step = steps.get(id);
      const load = plan.loads.find((one) => one.placeId === place);
      if (step !== undefined && load?.stationId != null) move?.(step, place, load.stationId);
    },
    mayDrag: move !== null,
  });
  const dragged = drag === null ? undefined : steps.get(drag.stepId);
  const preview =
    dragged === undefined || drag?.overId == null ? plan : withMoved(plan, dragged, drag.overId);
  const crossed =
    dragged === undefined || drag?.overId == null
      ? 0
      : wrongWayRound(plan, steps, dragged, drag.overId).length;
  const fewest = plan.question.ask.kind === "fewest-places";
  const asked = plan.question.ask.kind === "fewest-places" ? plan.question.ask.taktS : 0;
  const lineS = fewest ? asked : preview.taktS;
  const boundS = fewest ? null : plan.lowerBound;
  const most = Math.max(plan.taktS, preview.taktS, usual?.taktS ?? 0, lineS, boundS ?? 0, 1) * AIR;
  const usualOf = new Map(usual?.loads.map((load) => [load.placeId, load.seconds]));
  const rows = (loads: readonly Load[]) =>
    loads.map((load) => (
      <PlaceBar
        key={load.placeId}
        load={load}
        steps={steps}
        plan={preview}
        mostS={most}
        lineS={lineS}
        boundS={boundS}
        usualS={usualOf.get(load.placeId) ?? null}
        chosen={load.placeId === placeId}
        stepId={drag?.stepId ?? stepId}
        over={drag?.overId === load.placeId}
        select={select}
      />
    ));
  const beside = preview.loads.filter((load) => load.beside);
  const along = preview.loads.filter((load) => !load.beside);
  return (
    <div className={drag === null ? "station-chart" : "station-chart dragging"} ref={chart}>
      {along.length > 0 && beside.length > 0 && <h3>{words.along}</h3>}
      {rows(along)}
      {beside.length > 0 && <h3>{words.beside}</h3>}
      {rows(beside)}
      <ul className="chart-legend">
        <li>
          <i className="key takt" aria-hidden /> {words.legendTakt(words.minutes(lineS))}
        </li>
        {boundS !== null && (
          <li>
            <i className="key bound" aria-hidden /> {words.legendBound(words.minutes(boundS))}
          </li>
        )}
        {usual !== null && (
          <li>
            <i className="key usual" aria-hidden /> {words.legendUsual}
          </li>
        )}
        <li>
          <i className="key pinned" aria-hidden /> {words.legendPinned}
        </li>
      </ul>
      {dragged !== undefined && drag !== null && (
        <p className="drag-tag" style={{ left: drag.x, top: drag.y }} role="status">
          {words.dragged(dragged.number, words.minutes(preview.taktS), preview.taktS - plan.taktS)}
          {crossed > 0 && <small>{words.crossed(crossed)}</small>}
        </p>
      )}
    </div>
  );
});

function PlaceBar({
  load,
  steps,
  plan,
  mostS,
  lineS,
  boundS,
  usualS,
  chosen,
  stepId,
  over,
  select,
}: {
  readonly load: Load;
  readonly steps: Entries<"stepLines">;
  readonly plan: Plan;
  readonly mostS: number;
  readonly lineS: number;
  readonly boundS: number | null;
  readonly usualS: number | null;
  readonly chosen: boolean;
  readonly stepId: string | null;
  readonly over: boolean;
  readonly select: (placeId: string, stepId: string | null) => void;
}) {
  const words = useWords().steps;
  const pick = usePick();
  const at = (seconds: number): string => `${(100 * seconds) / mostS}%`;
  let from = 0;
  return (
    <div className={over ? "place-row over" : "place-row"} data-place={load.placeId}>
      <button
        type="button"
        className="place-name"
        aria-pressed={chosen}
        onClick={() => select(load.placeId, null)}
      >
        <b>{pick(load.labels.en, load.labels.zh) || load.placeId}</b>
        <span className="dim">{words.placeSays(load.stepIds.length, words.minutes(load.seconds))}</span>
      </button>
      <div className="place-bar" aria-hidden>
        {load.stepIds.map((id) => {
          const step = steps.get(id);
          if (step === undefined) return null;
          const seconds = secondsOn(plan.question, step);
          const left = from;
          from += seconds;
          return (
            <span
              key={id}
              data-step={id}
              className={`piece${step.stationId === null ? "" : " pinned"}${id === stepId ? " chosen" : ""}`}
              style={{ left: at(left), width: at(seconds) }}
              title={words.pieceSays(step.number, pick(step.label, step.labelZh), words.minutes(seconds))}
            >
              <b>{step.number}</b>
            </span>
          );
        })}
        <i className="line takt" style={{ left: at(lineS) }} />
        {boundS !== null && <i className="line bound" style={{ left: at(boundS) }} />}
        {usualS !== null && <i className="line usual" style={{ left: at(usualS) }} />}
      </div>
    </div>
  );
}
