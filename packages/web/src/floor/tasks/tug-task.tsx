import type { FactBody } from "@pinwright/contract";
import type { Tug } from "@pinwright/engine";
import { useState } from "react";
import { useView } from "../../app/book/desk.tsx";
import { type Cavity, HousingView } from "../../app/wiring/housing-view.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import { madeUp } from "../outbox/outbox.ts";
import { atStation, useBench } from "./bench-context.tsx";
import { FinishStep } from "./finish-step.tsx";
import { TaskFoot } from "./task-foot.tsx";
import type { Task } from "./tasks.ts";
import { keepTugs, keptTugs } from "./tugs.ts";
import { useAt } from "./use-ticked.ts";

const RESULTS: readonly Tug[] = ["came-out", "nothing-there", "wire-missing", "held"];
const WHAT: Readonly<Record<Tug, string>> = {
  held: "other",
  "came-out": "contact-out",
  "nothing-there": "missing-wire",
  "wire-missing": "missing-wire",
};
const NOTHING_LIT = { pointId: null, wireId: null };

/** A tug on every contact, housing by housing; only what did not hold is tapped. */
export function TugTask({ task }: { readonly task: Extract<Task, { kind: "tug" }> }) {
  const { floor } = useWords();
  const own = floor.tug;
  const pick = usePick();
  const bench = useBench();
  const { unit } = task;
  const housings = useView("housings", { of: "harness", id: bench.type });
  const [at, go] = useAt(task.key);
  const [tugs, setTugs] = useState(() => keptTugs(unit));
  const list = [...(housings?.values() ?? [])].map((housing) => ({
    ...housing,
    cavities: housing.cavities.filter(({ state, wires }) => state === "wired" || wires.length > 0),
  }));
  const contacts = list.reduce((sum, { cavities }) => sum + cavities.length, 0);
  const housing = housings === null ? undefined : [...housings.values()][at];
  const bad = [...tugs].filter(([, tug]) => tug !== "held");
  const isLast = at >= list.length - 1;
  const tap = ({ pointId, state }: Cavity): void => {
    if (state !== "wired") return;
    const before = RESULTS.indexOf(tugs.get(pointId) ?? "held");
    const next = new Map(tugs).set(pointId, RESULTS[(before + 1) % RESULTS.length] ?? "held");
    keepTugs(unit, next);
    setTugs(next);
  };
  const recordBad = async (): Promise<void> => {
    const facts = bad.map(
      ([point, tug]): FactBody => ({
        kind: "defect",
        unit,
        defect: madeUp("d"),
        what: WHAT[tug],
        says: own.results[tug],
        where: { point },
        ...atStation(bench),
      }),
    );
    if (await bench.record(facts)) {
      // After mending, every contact is tugged again.
      go(0);
      keepTugs(unit, new Map());
      bench.show("/mend");
    }
  };
  const badHere = housing?.cavities.some(({ pointId }) => (tugs.get(pointId) ?? "held") !== "held") === true;
  return (
    <>
      <div className="floor-body">
        <h1>
          {floor.steps.tug}{" "}
          <small className="dim" role="status">
            {unit} · {own.housing(Math.min(at + 1, list.length), list.length)}
          </small>
        </h1>
        <p>{own.how}</p>
        {housing !== undefined && (
          <>
            <h2>
              {housing.landingId} <small>{pick(housing.item.en, housing.item.zh)}</small>
            </h2>
            <HousingView housing={housing} lit={NOTHING_LIT} onPoint={tap} onHover={() => undefined} />
          </>
        )}
        {bad.length > 0 && (
          <ul className="floor-bad">
            {bad.map(([point, tug]) => (
              <li key={point}>
                <b>{point}</b> {own.results[tug]}
              </li>
            ))}
          </ul>
        )}
      </div>
      <TaskFoot>
        <button type="button" className="floor-plain" disabled={at === 0} onClick={() => go(at - 1)}>
          {floor.back}
        </button>
        {!isLast ? (
          <button type="button" className="floor-main" onClick={() => go(at + 1)}>
            {badHere ? own.thisBad : own.nextHousing}
          </button>
        ) : bad.length > 0 ? (
          <button type="button" className="floor-main floor-bad-main" onClick={() => void recordBad()}>
            {own.bad(bad.length)}
          </button>
        ) : (
          <FinishStep
            taskKey={task.key}
            step={task.step}
            unitIds={[unit]}
            count={contacts}
            says={own.all(contacts)}
            disabled={housings === null}
          />
        )}
      </TaskFoot>
    </>
  );
}
