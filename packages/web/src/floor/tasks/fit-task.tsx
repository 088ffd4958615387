import { useState } from "react";
import { usePick, useWords } from "../../app/words.tsx";
import { FitQuestion } from "../fit/fit-question.tsx";
import { useFit } from "../fit/use-fit.ts";
import { CameraScan } from "../shell/camera.tsx";
import { useScanner } from "../shell/use-scanner.ts";
import { useBench } from "./bench-context.tsx";
import { TaskFoot } from "./task-foot.tsx";
import { type Place, standingAt, type Task } from "./tasks.ts";

/** Boards and harnesses with numbers of their own go into their places: scanned, or tapped. */
export function FitTask({ task }: { readonly task: Extract<Task, { kind: "fit" }> }) {
  const { floor, floorBench } = useWords();
  const own = floor.fit;
  const pick = usePick();
  const bench = useBench();
  const [chosen, setChosen] = useState<Place | null>(null);
  const fit = useFit(task.places, chosen);
  const { units, says, scanned, state, looking, question } = fit;
  const filled = task.places.filter(({ id }) => standingAt(state, id) !== null).length;
  const inside = new Set(state?.inside.filter(({ until }) => until === null).map(({ unit }) => unit));
  const heard = (text: string): void => {
    setChosen(null);
    void scanned(text);
  };
  useScanner(heard);
  const choices =
    chosen === null
      ? []
      : (units ?? []).filter(
          ({ what, type, unit }) => what === chosen.what && type === chosen.type && !inside.has(unit),
        );
  if (question !== null) return <FitQuestion fit={fit} question={question} />;
  return (
    <>
      <div className="floor-body">
        <div className="floor-title">
          <h1>
            {floor.steps.fit} <small className="dim">{own.filled(filled, task.places.length)}</small>
          </h1>
          <CameraScan scanned={heard} />
        </div>
        <p role="status">{looking ? floorBench.fitting.looking : own.how}</p>
        <p role="alert" className="error-text">
          {says}
        </p>
        {chosen === null ? (
          <ul className="floor-places">
            {task.places.map((place) => {
              const unit = standingAt(state, place.id);
              return (
                <li key={place.id} data-filled={unit === null ? undefined : ""}>
                  <button type="button" onClick={() => setChosen(place)}>
                    <b>{unit ?? own.empty}</b>
                    <span>
                      {pick(place.label, place.labelZh) || place.id} <small>{place.id}</small>
                    </span>
                  </button>
                  {unit !== null && (
                    <button
                      type="button"
                      className="floor-plain"
                      onClick={() => fit.ask({ unit: null, place, places: [], warnings: [] })}
                    >
                      {own.takeOut}
                    </button>
                  )}
                </li>
              );
            })}
          </ul>
        ) : (
          <>
            <h2>{own.place(pick(chosen.label, chosen.labelZh) || chosen.id)}</h2>
            <div className="floor-tiles">
              {choices.map((unit) => (
                <button
                  key={unit.unit}
                  type="button"
                  onClick={() => {
                    setChosen(null);
                    void fit.bring(unit, chosen);
                  }}
                >
                  {unit.unit}
                </button>
              ))}
              <button type="button" onClick={() => setChosen(null)}>
                {floor.back}
              </button>
            </div>
            {choices.length === 0 && <p>{floor.pick.none[chosen.what]}</p>}
          </>
        )}
      </div>
      <TaskFoot>
        <button type="button" className="floor-main" onClick={bench.next}>
          {floor.work.next}
        </button>
      </TaskFoot>
    </>
  );
}
