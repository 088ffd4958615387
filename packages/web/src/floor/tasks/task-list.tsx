import { IconCheck } from "@tabler/icons-react";
import { useWords } from "../../app/words.tsx";
import { sheetsView } from "../sheets/sheets-page.tsx";
import { useBench } from "./bench-context.tsx";
import { useTaskName } from "./task-names.ts";
import type { Task } from "./tasks.ts";

/** All that is to do, ticked as far as it is done; a tap goes there. */
export function TaskList({
  tasks,
  done,
  everywhere,
}: {
  readonly tasks: readonly Task[];
  readonly done: ReadonlySet<string>;
  readonly everywhere: (() => void) | null;
}) {
  const { floor, floorBench, floorRevision } = useWords();
  const nameOf = useTaskName();
  const { show, release } = useBench();
  return (
    <>
      <div className="floor-body">
        <h1>{floor.work.list}</h1>
        <ol className="floor-ticks">
          {tasks.map((task, i) => (
            <li key={task.key}>
              <button
                type="button"
                data-done={done.has(task.key) ? "" : undefined}
                onClick={() => show(`/t/${i + 1}`)}
              >
                <span className="tick-box" aria-hidden>
                  {done.has(task.key) && <IconCheck size={28} stroke={3} />}
                </span>
                <b className="floor-count">{i + 1}</b>
                <span>
                  {nameOf(task)}
                  {done.has(task.key) && <span className="visually-hidden"> {floor.work.done}</span>}
                </span>
              </button>
            </li>
          ))}
        </ol>
        {everywhere !== null && (
          <button type="button" className="floor-plain" onClick={everywhere}>
            {floor.work.everywhere}
          </button>
        )}
      </div>
      <footer className="floor-foot">
        <button type="button" className="floor-plain" onClick={() => show("")}>
          {floor.back}
        </button>
        {release !== null && (
          <button type="button" className="floor-plain" onClick={() => show(sheetsView())}>
            {floorRevision.sheets(release)}
          </button>
        )}
        <button type="button" className="floor-plain" onClick={() => show("/history")}>
          {floorBench.history.open}
        </button>
        <button type="button" className="floor-main" onClick={() => show("/hand")}>
          {floor.work.handOver}
        </button>
      </footer>
    </>
  );
}
