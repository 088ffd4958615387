import type { FactBody } from "@pinwright/contract";
import { IconCheck } from "@tabler/icons-react";
import { useState } from "react";
import { usePick, useWords } from "../../app/words.tsx";
import type { ViewEntry } from "../../worker/protocol.ts";
import { madeUp } from "../outbox/outbox.ts";
import { atStation, useBench } from "../tasks/bench-context.tsx";
import { TaskFoot } from "../tasks/task-foot.tsx";
import { useAt, useTicked } from "../tasks/use-ticked.ts";
import { readingFacts } from "./reading-facts.ts";
import { type TestOf, useCaution, useTestName } from "./told.tsx";
import { WalkMap } from "./walk-map.tsx";

type Stretch = ViewEntry<"floorTestWalk">;
type Item = Stretch["items"][number];

/** What is tried along a walk; anything else is `other`. */
const HOWS = ["switch", "lamp", "coil", "motor"] as const;

/**
 * A test of the machine that tries many devices one by one: stretch by stretch, each near the one before. One tap where all of
 * a stretch answer, one tap on each that does not; each of those is a defect at its place.
 */
export function Walk({ task, walk }: { readonly task: TestOf; readonly walk: readonly Stretch[] }) {
  const { floor, floorMeasure } = useWords();
  const own = floorMeasure.walk;
  const pick = usePick();
  const nameOf = useTestName();
  const bench = useBench();
  const caution = useCaution(task);
  const { unit, test } = task;
  const [kept, go] = useAt(`walk ${task.key}`);
  const { ticked: bad, toggle, clear } = useTicked(`walk ${task.key}`);
  const [busy, setBusy] = useState(false);
  const at = Math.min(kept, walk.length - 1);
  const stretch = walk[at];
  if (stretch === undefined) return null;
  const isLast = at === walk.length - 1;
  const how = HOWS.find((one) => one === test.purpose) ?? "other";
  const itemName = ({ id, label, labelZh }: Item): string => pick(label, labelZh) || id;
  const end = async (): Promise<void> => {
    const items = walk.flatMap((one) => one.items.map((item) => ({ ...item, panel: one.panelId })));
    const defects = items
      .filter(({ id }) => bad.has(id))
      .map(
        (item): FactBody => ({
          ...{ kind: "defect", unit, defect: madeUp("d"), what: "test-failed" },
          says: `${nameOf(test)}: ${itemName(item)}`,
          where: { panel: item.panel, item: item.id, xMm: item.xMm, yMm: item.yMm },
          ...atStation(bench),
        }),
      );
    setBusy(true);
    const isKept = await bench.record([
      ...readingFacts(bench, { unit, test: test.id, good: defects.length === 0 }),
      ...defects,
    ]);
    setBusy(false);
    if (!isKept) return;
    go(0);
    clear();
    if (defects.length === 0) bench.next();
    else bench.show("/mend");
  };
  const badHere = stretch.items.filter(({ id }) => bad.has(id)).length;
  return (
    <>
      <div className="floor-body floor-split floor-walk">
        <section>
          <h1>
            {nameOf(test)}{" "}
            <small className="dim" role="status">
              {floor.test.of(unit)} · {own.stretch(at + 1, walk.length)}
            </small>
          </h1>
          {caution !== "" && <p className="caution">{caution}</p>}
          <p>
            {own.how[how]} <span className="dim">{own.tap}</span>
          </p>
          <ol className="floor-walk-list">
            {stretch.items.map((item, i) => (
              <li key={item.id}>
                <button
                  type="button"
                  aria-pressed={bad.has(item.id)}
                  data-bad={bad.has(item.id) ? "" : undefined}
                  onClick={() => toggle(item.id)}
                >
                  <b>{i + 1}</b>
                  <span>
                    {itemName(item)}
                    <small>{bad.has(item.id) ? own.badOne : item.id}</small>
                  </span>
                </button>
              </li>
            ))}
          </ol>
        </section>
        <WalkMap stretch={stretch} badIds={bad} />
      </div>
      <TaskFoot>
        <button type="button" className="floor-plain" disabled={at === 0} onClick={() => go(at - 1)}>
          {own.before}
        </button>
        {isLast && bad.size > 0 ? (
          <button
            type="button"
            className="floor-main floor-bad-main"
            disabled={busy}
            onClick={() => void end()}
          >
            {own.record(bad.size)}
          </button>
        ) : (
          <button
            type="button"
            className="floor-main"
            disabled={busy}
            onClick={() => (isLast ? void end() : go(at + 1))}
          >
            <IconCheck size={30} aria-hidden />{" "}
            {badHere > 0 ? `${own.bad(badHere)} · ${own.next}` : own.allGood(stretch.items.length)}
          </button>
        )}
      </TaskFoot>
    </>
  );
}
