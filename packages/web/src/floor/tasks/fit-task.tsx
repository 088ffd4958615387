import { useState } from "react";
import { usePick, useWords } from "../../app/words.tsx";
import { CameraScan } from "../shell/camera.tsx";
import { useScanner } from "../shell/use-scanner.ts";
import { useBench } from "./bench-context.tsx";
import { TaskFoot } from "./task-foot.tsx";
import { type Place, standingAt, type Task } from "./tasks.ts";
import { useFit } from "./use-fit.ts";

/** Boards and harnesses with numbers of their own go into their places: scanned, or tapped. */
export function FitTask({ task }: { readonly task: Extract<Task, { kind: "fit" }> }) {
  const { floor } = useWords();
  const own = floor.fit;
  const pick = usePick();
  const bench = useBench();
  const [chosen, setChosen] = useState<Place | null>(null);
  const { units, says, fit: fitAt, scanned, state, machine } = useFit(task.places, chosen);
  const filled = task.places.filter(({ id }) => standingAt(state, id) !== null).length;
  const inside = new Set(state?.inside.filter(({ until }) => until === null).map(({ unit }) => unit));
  const fit = async (unit: string, place: Place): Promise<void> => {
    setChosen(null);
    await fitAt(unit, place);
  };
  useScanner((text) => {
    setChosen(null);
    void scanned(text);
  });
  const choices =
    chosen === null
      ? []
      : (units ?? []).filter(
          ({ what, type, unit }) => what === chosen.what && type === chosen.type && !inside.has(unit),
        );
  return (
    <>
      <div className="floor-body">
        <div className="floor-title">
          <h1>
            {floor.steps.fit} <small className="dim">{own.filled(filled, task.places.length)}</small>
          </h1>
          <CameraScan scanned={(text) => void scanned(text)} />
        </div>
        <p>{own.how}</p>
        <p role="alert" className="error-text">
          {says}
        </p>
        {chosen === null ? (
          <ul className="floor-places">
            {task.places.map((place) => {
              const unit = standingAt(state, place.id);
              return (
                <li key={place.id} data-filled={unit === null ? undefined : ""}>
                  <button type="button" disabled={unit !== null} onClick={() => setChosen(place)}>
                    <b>{unit ?? own.empty}</b>
                    <span>
                      {pick(place.label, place.labelZh) || place.id} <small>{place.id}</small>
                    </span>
                  </button>
                  {unit !== null && (
                    <button
                      type="button"
                      className="floor-plain"
                      onClick={() =>
                        void bench.record([
                          { kind: "removed", unit, from: machine, place: place.id, why: own.takeOutWhy },
                        ])
                      }
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
              {choices.map(({ unit }) => (
                <button key={unit} type="button" onClick={() => void fit(unit, chosen)}>
                  {unit}
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
