import { sheetWords } from "@pinwright/words";
import { IconCheck } from "@tabler/icons-react";
import { useOne } from "../../app/book/desk.tsx";
import { usePick, useSpeech } from "../../app/words.tsx";
import { useBench } from "./bench-context.tsx";
import { FinishStep } from "./finish-step.tsx";
import { PagePicture } from "./page-picture.tsx";
import { TaskFoot } from "./task-foot.tsx";
import type { Task } from "./tasks.ts";
import { useTicked } from "./use-ticked.ts";
import { withValue } from "./with-value.ts";

/** A stage of stuffing: the picture of it, and its parts in the order in which they go in. */
export function StageTask({ task }: { readonly task: Extract<Task, { kind: "stage" }> }) {
  const { words, language } = useSpeech();
  const { floor } = words;
  const own = floor.stage;
  const marks: Readonly<Record<string, string>> = sheetWords(language).boards.marks;
  const pick = usePick();
  const { type, unitIds, name } = useBench();
  const stage = useOne("floorStage", { typeId: type, stage: task.stage });
  const { ticked, toggle } = useTicked(`${task.key} ${unitIds.join(" ")}`);
  return (
    <>
      <div className="floor-body floor-split">
        {stage?.picture == null ? (
          <p className="dim">{floor.loading}</p>
        ) : (
          <PagePicture svg={stage.picture.svg} says={own.picture(name, task.stage)} />
        )}
        <section>
          <h1>{floor.steps.stage(task.stage)}</h1>
          {stage !== undefined && (
            <p className="dim">
              {[own.upTo(stage.upToMm), own.when[stage.when], own.parts(stage.parts.length)].join(" · ")}
            </p>
          )}
          <ul className="floor-ticks">
            {stage?.parts.map((part) => (
              <li key={part.reference}>
                <button
                  type="button"
                  aria-pressed={ticked.has(part.reference)}
                  onClick={() => toggle(part.reference)}
                >
                  <span className="tick-box" aria-hidden>
                    {ticked.has(part.reference) && <IconCheck size={28} stroke={3} />}
                  </span>
                  <b className="floor-count">{part.reference}</b>
                  <span>
                    {own.box(part.box)}: {withValue(pick(part.part, part.partZh), part.value)}
                    {part.polarity !== "" && (
                      <small className="amber-text">
                        {own.way}: {marks[part.polarity] ?? part.polarity}
                      </small>
                    )}
                  </span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      </div>
      <TaskFoot>
        <FinishStep
          taskKey={task.key}
          step={task.step}
          count={(stage?.parts.length ?? 0) * unitIds.length}
          disabled={stage === undefined}
        />
      </TaskFoot>
    </>
  );
}
