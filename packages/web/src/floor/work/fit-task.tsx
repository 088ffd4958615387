import { useState } from "react";
import { usePick, useWords } from "../../app/words.tsx";
import { useUnitList } from "../records/use-units.ts";
import { CameraScan } from "../shell/camera.tsx";
import { unitInCode } from "../shell/scan.ts";
import { useScanner } from "../shell/use-scanner.ts";
import { useBench } from "./bench-context.tsx";
import { TaskFoot } from "./task-foot.tsx";
import { type Place, standingAt, type Task } from "./tasks.ts";

/** Boards and harnesses with numbers of their own go into their places: scanned, or tapped. */
export function FitTask({ task }: { readonly task: Extract<Task, { kind: "fit" }> }) {
  const { floor } = useWords();
  const own = floor.fit;
  const pick = usePick();
  const bench = useBench();
  const [machine = ""] = bench.unitIds;
  const state = bench.states.get(machine);
  const { units, look } = useUnitList();
  const [chosen, setChosen] = useState<Place | null>(null);
  const [says, setSays] = useState("");
  const isEmpty = ({ id }: Place): boolean => standingAt(state, id) === null;
  const filled = task.places.filter((place) => !isEmpty(place)).length;
  const inside = new Set(state?.inside.filter(({ until }) => until === null).map(({ unit }) => unit));
  const fit = async (unit: string, place: Place): Promise<void> => {
    setSays("");
    setChosen(null);
    await bench.record([{ kind: "fitted", unit, into: machine, place: place.id }]);
  };
  const scanned = async (text: string): Promise<void> => {
    const id = unitInCode(text);
    const find = (list: typeof units) => list?.find(({ unit }) => unit === id);
    const found = find(units) ?? find(await look());
    if (found === undefined) return setSays(floor.pick.unknown(text.trim().slice(0, 60)));
    const kin = task.places.filter(({ what, type }) => what === found.what && type === found.type);
    const place = chosen !== null && kin.includes(chosen) ? chosen : kin.find(isEmpty);
    if (kin.length === 0) setSays(own.notThisKind(found.unit));
    else if (place === undefined) setSays(own.full(found.unit));
    else await fit(found.unit, place);
  };
  useScanner((text) => void scanned(text));
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
