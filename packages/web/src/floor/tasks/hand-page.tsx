import { IconCheck } from "@tabler/icons-react";
import { useState } from "react";
import { Link } from "wouter";
import { useView } from "../../app/book/desk.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useHere } from "../shell/at-place.tsx";
import { useBench } from "./bench-context.tsx";
import { useTaskName } from "./task-names.ts";
import { missingTasks, openDefects, type Task } from "./tasks.ts";

type Stage = ViewEntry<"floorStages">;

/** Stage in which each kind of unit is made. */
const MADE_IN = {
  board: "boards",
  harness: "harness",
  mechanism: "mechanisms",
  machine: "assembly",
} as const;
/** Missing things that are named; what is beyond is counted. */
const MOST_NAMED = 5;

/** Hands the units at the bench over to the next stage; says first whether they are complete, and names what is missing. */
export function HandPage({
  tasks,
  done,
}: {
  readonly tasks: readonly Task[];
  readonly done: ReadonlySet<string>;
}) {
  const { floor, floorBench } = useWords();
  const own = floor.hand;
  const pick = usePick();
  const { site } = useHere();
  const { unitIds, what, states, record, show } = useBench();
  const stages = useView("floorStages", null);
  const [handed, setHanded] = useState<string | null>(null);
  const now = states.get(unitIds[0] ?? "")?.stage ?? "";
  const nameOf = (id: string): string => {
    const stage = stages?.get(id);
    return stage === undefined ? id : pick(stage.label, stage.labelZh) || id;
  };
  const hand = async (stage: string): Promise<void> => {
    const at = site === "" ? {} : { site };
    if (await record(unitIds.map((unit) => ({ kind: "handed", unit, stage, ...at })))) setHanded(stage);
  };
  if (handed !== null)
    return (
      <>
        <div className="floor-body floor-end">
          <h1>{own.handed(nameOf(handed))}</h1>
          <p>{unitIds.join(", ")}</p>
        </div>
        <footer className="floor-foot">
          <Link className="floor-main" href="/floor">
            {own.nextUnit}
          </Link>
        </footer>
      </>
    );
  const all = [...(stages?.values() ?? [])];
  const { missing } = missingTasks(tasks, done, unitIds, states);
  const defects = unitIds.some((unit) => openDefects(states.get(unit)).length > 0);
  const nextIds = new Set(nextStages(all, what, now, missing.length === 0 && !defects));
  const tile = ({ id }: Stage) => (
    <button key={id} type="button" aria-pressed={id === now} onClick={() => void hand(id)}>
      {nameOf(id)}
    </button>
  );
  return (
    <>
      <div className="floor-body">
        <h1>
          {own.title} {now !== "" && <small className="dim">{own.now(nameOf(now))}</small>}
        </h1>
        <Complete tasks={tasks} done={done} />
        {stages?.size === 0 && <p>{own.noStages}</p>}
        {nextIds.size > 0 && (
          <>
            <h2>{floorBench.hand.next}</h2>
            <div className="floor-tiles floor-next">{all.filter(({ id }) => nextIds.has(id)).map(tile)}</div>
          </>
        )}
        <details className="floor-others" open={nextIds.size === 0}>
          <summary>{floorBench.hand.others}</summary>
          <div className="floor-tiles floor-small-tiles">
            {all.filter(({ id }) => !nextIds.has(id)).map(tile)}
          </div>
        </details>
      </div>
      <footer className="floor-foot">
        <button type="button" className="floor-plain" onClick={() => show("")}>
          {floor.back}
        </button>
        <button type="button" className="floor-plain" onClick={() => show("/gate")}>
          {floorBench.hand.ship}
        </button>
      </footer>
    </>
  );
}

/**
 * Stages that come after the one that units are at, or that they are made in. A machine that is complete was tested where it
 * was assembled: it goes on to what comes after the test.
 */
function nextStages(
  stages: readonly Stage[],
  what: keyof typeof MADE_IN,
  now: string,
  isComplete: boolean,
): readonly string[] {
  const nowKind = now === "" ? MADE_IN[what] : stages.find(({ id }) => id === now)?.kind;
  const isTested = what === "machine" && isComplete && nowKind === MADE_IN.machine;
  const at = stages.flatMap(({ id, kind }) => {
    const isAt = isTested ? kind === "test" : now === "" ? kind === nowKind : id === now;
    return isAt ? [id] : [];
  });
  return stages.flatMap(({ id, after }) => (after.some((before) => at.includes(before)) ? [id] : []));
}

function Complete({ tasks, done }: { readonly tasks: readonly Task[]; readonly done: ReadonlySet<string> }) {
  const own = useWords().floorBench.hand;
  const nameOf = useTaskName();
  const { unitIds, states, show } = useBench();
  const { missing, isBegun } = missingTasks(tasks, done, unitIds, states);
  const defects = unitIds.reduce((sum, unit) => sum + openDefects(states.get(unit)).length, 0);
  return (
    <>
      {missing.length === 0 && defects === 0 && (
        <p className="floor-complete" role="status">
          <IconCheck size={28} aria-hidden /> {own.complete}
        </p>
      )}
      {!isBegun && <p className="amber-text">{own.notBegun}</p>}
      {defects > 0 && <p className="amber-text">{own.defects(defects)}</p>}
      {missing.length > 0 && (
        <>
          <p className="amber-text">{own.missing(missing.length)}</p>
          <ul className="floor-missing">
            {missing.slice(0, MOST_NAMED).map((task) => (
              <li key={task.key}>
                <button type="button" onClick={() => show(`/k/${encodeURIComponent(task.key)}`)}>
                  {nameOf(task)}
                </button>
              </li>
            ))}
            {missing.length > MOST_NAMED && <li className="dim">{own.more(missing.length - MOST_NAMED)}</li>}
          </ul>
        </>
      )}
    </>
  );
}
