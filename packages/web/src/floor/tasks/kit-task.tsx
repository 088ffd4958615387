import { IconCheck } from "@tabler/icons-react";
import { useOne } from "../../app/book/desk.tsx";
import { useAnswer } from "../../app/book/use-answer.ts";
import { usePick, useWords } from "../../app/words.tsx";
import { useBench } from "./bench-context.tsx";
import { FinishStep } from "./finish-step.tsx";
import { TaskFoot } from "./task-foot.tsx";
import type { Task } from "./tasks.ts";
import { useTicked } from "./use-ticked.ts";
import { withValue } from "./with-value.ts";

/** What is laid out for the boards at the bench, box by box, ticked off. */
export function KitTask({ task }: { readonly task: Extract<Task, { kind: "own" }> }) {
  const { floor } = useWords();
  const own = floor.kit;
  const pick = usePick();
  const { type, unitIds } = useBench();
  const basis = useOne("solderBasis", null);
  const { answer: kit, failed } = useAnswer(
    "boardKitFor",
    { typeId: type, boards: unitIds.length },
    basis ?? null,
  );
  const { ticked, toggle } = useTicked(`kit ${unitIds.join(" ")}`);
  const lines = kit?.lines ?? [];
  const done = lines.filter(({ partId }) => ticked.has(partId)).length;
  return (
    <>
      <div className="floor-body">
        <h1>
          {floor.steps.kit} <small className="dim">{floor.work.doneOf(done, lines.length)}</small>
        </h1>
        {failed !== "" && <p className="error-text">{failed}</p>}
        <ul className="floor-ticks">
          {lines.map((line) => (
            <li key={line.partId}>
              <button
                type="button"
                aria-pressed={ticked.has(line.partId)}
                onClick={() => toggle(line.partId)}
              >
                <span className="tick-box" aria-hidden>
                  {ticked.has(line.partId) && <IconCheck size={28} stroke={3} />}
                </span>
                <b className="floor-count">{line.total} ×</b>
                <span>
                  {withValue(pick(line.labels.en, line.labels.zh) || line.partId, line.value)}
                  <small>
                    {own.box(line.box)} · {own.each(line.perBoard)}
                    {line.extra > 0 && ` · ${own.extra(line.extra)}`}
                  </small>
                </span>
              </button>
            </li>
          ))}
        </ul>
      </div>
      <TaskFoot>
        <FinishStep taskKey={task.key} step={task.step} says={own.done} disabled={lines.length === 0} />
      </TaskFoot>
    </>
  );
}
