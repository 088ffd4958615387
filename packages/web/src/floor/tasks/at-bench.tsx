import type { Fact, FactBody } from "@pinwright/contract";
import type { UnitState } from "@pinwright/engine";
import { IconList, IconNote } from "@tabler/icons-react";
import { useMemo, useState } from "react";
import { Link, useLocation, useSearchParams } from "wouter";
import { call } from "../../api/call.ts";
import { useOne } from "../../app/book/desk.tsx";
import { useWords } from "../../app/words.tsx";
import { DefectPage } from "../defects/defect-page.tsx";
import { MendPage } from "../defects/mend-page.tsx";
import { GatePage } from "../gate/gate-page.tsx";
import { HistoryPage } from "../history/history-page.tsx";
import { workAddress } from "../pick/pick-page.tsx";
import { ProblemBand } from "../problems/problem-band.tsx";
import { ProblemPage } from "../problems/problem-page.tsx";
import { changeOf, revisionsOf } from "../revision.ts";
import { SheetsPage } from "../sheets/sheets-page.tsx";
import { useHere } from "../shell/at-place.tsx";
import { FloorHead } from "../shell/head.tsx";
import { unitInCode } from "../shell/scan.ts";
import { useScanner } from "../shell/use-scanner.ts";
import { type Bench, BenchContext, clockOf, useBench } from "./bench-context.tsx";
import { ClockButton } from "./clock-button.tsx";
import { HandPage } from "./hand-page.tsx";
import { NotePage } from "./note-page.tsx";
import { TaskList } from "./task-list.tsx";
import { TaskScreen } from "./task-screen.tsx";
import { doneTasks, openDefects, tasksOf } from "./tasks.ts";
import { takeMinutes, useClock } from "./use-clock.ts";
import { useStepsHere } from "./use-steps-here.ts";

export type Begun = NonNullable<UnitState["begun"]>;

/** The revision that is shown, large: the release that the units are built to, or that it is the draft. */
function RevisionText({
  release,
  states,
}: {
  readonly release: string | null;
  readonly states: ReadonlyMap<string, UnitState>;
}) {
  const own = useWords().floorRevision;
  if (release !== null) return <b className="floor-revision">{own.rev(release)}</b>;
  const [no] = revisionsOf(states).flatMap((revision) => changeOf(revision) ?? []);
  return (
    <span className="floor-revision" data-is="draft">
      {no === undefined ? own.draft : own.change(no)}
    </span>
  );
}

/** What is to do at this station, and the one thing of it that is on the screen. */
export function AtBench({
  unitIds,
  begun: { what, type, options, revision },
  name,
  states,
  facts,
  view,
  record,
  release,
  notice,
  trouble,
}: {
  readonly unitIds: readonly string[];
  readonly begun: Begun;
  readonly name: string;
  readonly states: ReadonlyMap<string, UnitState>;
  readonly facts: readonly Fact[];
  /** What of them is shown: `t/3`, `list`, `defect` …; blank: the first thing that is not done. */
  readonly view: string;
  readonly record: Bench["record"];
  readonly release: string | null;
  readonly notice: string;
  readonly trouble: string;
}) {
  const { floor, floorBench } = useWords();
  const [search] = useSearchParams();
  const here = useHere();
  const [, goTo] = useLocation();
  const work = useOne("floorWork", { what, type, options });
  const [everywhere, setEverywhere] = useState(false);
  const hereIds = useStepsHere(what === "machine" && !everywhere ? here.station : "");
  const tasks = useMemo(
    () =>
      work === undefined || hereIds === "asking" ? null : tasksOf({ what, type }, work, unitIds, hereIds),
    [what, type, work, unitIds, hereIds],
  );
  // Wherever it is done: what is missing of a unit is not only what is missing at this station.
  const all = useMemo(
    () => (work === undefined ? [] : tasksOf({ what, type }, work, unitIds, null)),
    [what, type, work, unitIds],
  );
  const allDone = useMemo(
    () => (work === undefined ? new Set<string>() : doneTasks(all, work, unitIds, states)),
    [all, work, unitIds, states],
  );
  const done = useMemo(
    () => new Set(tasks?.flatMap(({ key }) => (allDone.has(key) ? [key] : []))),
    [tasks, allDone],
  );
  const show = (rest: string): void => goTo(workAddress(unitIds, rest), { replace: true });
  const asked = /^t\/(\d+)$/u.exec(view)?.[1];
  const firstLeft = tasks?.findIndex(({ key }) => !done.has(key)) ?? -1;
  const at = asked === undefined ? firstLeft : Number(asked) - 1;
  const named = /^k\/(.+)$/u.exec(view)?.[1];
  const sheetOf = /^sheets(?:\/(.+))?$/u.test(view) ? decodeURIComponent(view.slice(7)) : undefined;
  const task =
    named !== undefined
      ? all.find(({ key }) => key === decodeURIComponent(named))
      : view === "" || asked !== undefined
        ? tasks?.[at]
        : undefined;
  const clock = useClock(clockOf(unitIds, task?.key ?? ""));
  const fits =
    task?.kind === "fit" ||
    (task?.kind === "step" && work?.places.some(({ stepId }) => stepId === task.step) === true);
  const isFresh = what !== "machine" && work !== undefined && allDone.size === 0 && view === "";
  const before = isFresh ? (search.get("with") ?? "") : "";
  const others = before === "" ? [] : before.split("+").filter((unit) => !unitIds.includes(unit));
  useOtherUnit(unitIds, fits, isFresh ? { what, type, revision } : null);
  if (work === undefined || tasks === null)
    return (
      <>
        <FloorHead back="/floor" backLabel={floor.close}>
          <b>{unitIds.join(", ")}</b> {name}
        </FloorHead>
        <p className="floor-body dim">{floor.loading}</p>
      </>
    );
  const next = (): void => {
    const later = tasks.findIndex(({ key }, i) => i > at && !done.has(key));
    const anywhere = later >= 0 ? later : tasks.findIndex(({ key }, i) => i !== at && !done.has(key));
    show(anywhere >= 0 ? `/t/${anywhere + 1}` : "/hand");
  };
  const recordTimed = async (bodies: readonly FactBody[]): Promise<boolean> => {
    const isTimed = bodies.some(({ kind }) => kind === "reading");
    const minutes = isTimed && task !== undefined ? takeMinutes(clockOf(unitIds, task.key)) : 0;
    return record(
      bodies.map((body) => (body.kind === "reading" && minutes > 0 ? { minutes, ...body } : body)),
    );
  };
  const bench: Bench = {
    ...{ unitIds, what, type, name, release, work, states, station: here.station, next, show },
    record: recordTimed,
    back: at > 0 ? () => show(`/t/${at}`) : null,
  };
  const open = unitIds.reduce((sum, unit) => sum + openDefects(states.get(unit)).length, 0);
  return (
    <BenchContext value={bench}>
      <FloorHead back="/floor" backLabel={floor.close}>
        <b>{unitIds.length === 1 ? unitIds[0] : floor.work.units(unitIds.length)}</b>
        <span className="floor-name">{name}</span>
        <RevisionText release={release} states={states} />
        <Link className="floor-plain" href={workAddress(unitIds, "/list")} replace>
          <IconList size={26} aria-hidden />
          <span>
            {floor.work.doneOf(done.size, tasks.length)}
            <span className="visually-hidden"> {floor.work.list}</span>
          </span>
        </Link>
        <Link
          className="floor-square"
          href={workAddress(unitIds, "/note")}
          aria-label={floor.work.note}
          replace
        >
          <IconNote size={26} aria-hidden />
        </Link>
        {task !== undefined && <ClockButton clock={clock} />}
      </FloorHead>
      {(trouble !== "" || notice !== "" || open > 0 || others.length > 0) && (
        <div className="floor-notices">
          {others.length > 0 && (
            <button
              type="button"
              className="floor-plain"
              onClick={() => goTo(workAddress([...others, ...unitIds]), { replace: true })}
            >
              {floorBench.together(others.join(", "))}
            </button>
          )}
          {trouble !== "" && (
            <p role="alert" className="error-text">
              {trouble}
            </p>
          )}
          {notice !== "" && <p className="amber-text">{notice}</p>}
          {open > 0 && view !== "mend" && (
            <button type="button" className="floor-open" onClick={() => show("/mend")}>
              {floor.work.openDefects(open)} · {floor.work.mend}
            </button>
          )}
        </div>
      )}
      {task !== undefined && <ProblemBand task={task} />}
      {view === "defect" ? (
        <DefectPage />
      ) : view === "problem" ? (
        <ProblemPage />
      ) : view === "mend" ? (
        <MendPage />
      ) : view === "note" ? (
        <NotePage />
      ) : view === "hand" ? (
        <HandPage tasks={all} done={allDone} />
      ) : view === "gate" ? (
        <GatePage />
      ) : view === "history" ? (
        <HistoryPage facts={facts} />
      ) : sheetOf !== undefined && release !== null ? (
        <SheetsPage release={release} sheet={sheetOf} step={search.get("step") ?? ""} />
      ) : view === "list" ? (
        <TaskList
          tasks={tasks}
          done={done}
          everywhere={everywhere || here.station === "" ? null : () => setEverywhere(true)}
        />
      ) : task !== undefined ? (
        <TaskScreen key={task.key} task={task} />
      ) : (
        <NothingLeft none={tasks.length === 0} everywhere={() => setEverywhere(true)} />
      )}
    </BenchContext>
  );
}

/**
 * A label that is scanned during work brings its unit onto the screen, unless it can be fitted. Of another of the same kind,
 * before anything was done, it is asked whether they are built together: a hand scans its batch one label after the other,
 * but it also scans the wrong one first.
 * @param together kind of the units at the bench, as long as nothing was done on them
 */
function useOtherUnit(
  unitIds: readonly string[],
  fits: boolean,
  together: Pick<Begun, "what" | "type" | "revision"> | null,
): void {
  const [, goTo] = useLocation();
  const bring = async (unit: string): Promise<void> => {
    const known = together === null ? [] : await call("units", { parts: {} }).catch(() => []);
    const found = known.find((one) => one.unit === unit);
    const joins =
      found !== undefined &&
      found.what === together?.what &&
      found.type === together.type &&
      found.revision === together.revision;
    goTo(workAddress([unit]) + (joins ? `?with=${encodeURIComponent(unitIds.join("+"))}` : ""));
  };
  useScanner((text) => {
    const unit = unitInCode(text);
    if (!fits && unit !== null && !unitIds.includes(unit)) void bring(unit);
  });
}

function NothingLeft({ none, everywhere }: { readonly none: boolean; readonly everywhere: () => void }) {
  const { floor } = useWords();
  const { station, show } = useBench();
  return (
    <>
      <div className="floor-body floor-end">
        <h1>{none ? floor.work.nothing : floor.work.allDone}</h1>
        {station !== "" && (
          <button type="button" className="floor-plain" onClick={everywhere}>
            {floor.work.everywhere}
          </button>
        )}
      </div>
      <footer className="floor-foot">
        <button type="button" className="floor-main" onClick={() => show("/hand")}>
          {floor.work.handOver}
        </button>
      </footer>
    </>
  );
}
