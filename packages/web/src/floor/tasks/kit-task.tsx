import { IconCheck, IconExchange } from "@tabler/icons-react";
import { useMemo, useState } from "react";
import { useOne } from "../../app/book/desk.tsx";
import { useAnswer } from "../../app/book/use-answer.ts";
import { usePick, useWords } from "../../app/words.tsx";
import { insteadOf } from "../lots/instead.ts";
import { InsteadPage } from "../lots/instead-page.tsx";
import { LotEntry } from "../lots/lot-entry.tsx";
import { type LotPart, useLots } from "../lots/use-lots.ts";
import { useBench } from "./bench-context.tsx";
import { FinishStep } from "./finish-step.tsx";
import { TaskFoot } from "./task-foot.tsx";
import type { Task } from "./tasks.ts";
import { useTicked } from "./use-ticked.ts";
import { withValue } from "./with-value.ts";

/** What is laid out for the boards at the bench, box by box, ticked off, each with the lot that it is of. */
export function KitTask({ task }: { readonly task: Extract<Task, { kind: "own" }> }) {
  const { floor, floorBench } = useWords();
  const own = floor.kit;
  const pick = usePick();
  const { type, unitIds, states } = useBench();
  const basis = useOne("solderBasis", null);
  const { answer: kit, failed } = useAnswer(
    "boardKitFor",
    { typeId: type, boards: unitIds.length },
    basis ?? null,
  );
  const { ticked, toggle } = useTicked(`kit ${unitIds.join(" ")}`);
  const lines = useMemo(() => kit?.lines ?? [], [kit]);
  const parts = useMemo(
    () =>
      lines.map(({ partId, perBoard }): LotPart => {
        const used = insteadOf(states, unitIds, partId) ?? partId;
        return { of: used, partId: used, quantity: perBoard };
      }),
    [lines, states, unitIds],
  );
  const lots = useLots(`kit ${unitIds.join(" ")}`, task.step, parts);
  const [asked, setAsked] = useState<{ readonly at: number; readonly what: "lot" | "instead" } | null>(null);
  const done = lines.filter(({ partId }) => ticked.has(partId)).length;
  const line = lines[asked?.at ?? -1];
  const part = parts[asked?.at ?? -1];
  const nameOf = ({ labels, partId, value }: (typeof lines)[number]): string =>
    withValue(pick(labels.en, labels.zh) || partId, value);
  if (asked?.what === "lot" && line !== undefined && part !== undefined)
    return (
      <LotEntry
        name={nameOf(line)}
        partId={part.partId}
        last={lots.lastOf(part)}
        take={(lot) => {
          setAsked(null);
          // Whoever scans its lot has laid it out.
          if (!ticked.has(line.partId)) toggle(line.partId);
          void lots.take(part, lot);
        }}
        leave={() => setAsked(null)}
      />
    );
  if (asked?.what === "instead" && line !== undefined)
    return <InsteadPage partId={line.partId} name={nameOf(line)} leave={() => setAsked(null)} />;
  const without = parts.filter((one) => lots.lotOf(one) === null).length;
  return (
    <>
      <div className="floor-body">
        <h1>
          {floor.steps.kit} <small className="dim">{floor.work.doneOf(done, lines.length)}</small>
        </h1>
        {failed !== "" && <p className="error-text">{failed}</p>}
        <ul className="floor-ticks floor-kit">
          {lines.map((one, at) => {
            const { partId } = one;
            const own1 = parts[at];
            const lot = own1 === undefined ? null : lots.lotOf(own1);
            const instead = insteadOf(states, unitIds, partId);
            return (
              <li key={partId}>
                <button type="button" aria-pressed={ticked.has(partId)} onClick={() => toggle(partId)}>
                  <span className="tick-box" aria-hidden>
                    {ticked.has(partId) && <IconCheck size={28} stroke={3} />}
                  </span>
                  <b className="floor-count">{one.total} ×</b>
                  <span>
                    {nameOf(one)}
                    <small>
                      {own.box(one.box)} · {own.each(one.perBoard)}
                      {one.extra > 0 && ` · ${own.extra(one.extra)}`}
                    </small>
                    {instead !== null && (
                      <small className="amber-text">{floorBench.alternates.taken(instead)}</small>
                    )}
                  </span>
                </button>
                <button
                  type="button"
                  className="floor-plain floor-lot-chip"
                  data-empty={lot === null ? "" : undefined}
                  aria-label={`${floorBench.lots.lot} ${nameOf(one)} ${lot ?? ""}`.trim()}
                  onClick={() => setAsked({ at, what: "lot" })}
                >
                  {lot ?? floorBench.lots.lot}
                </button>
                <button
                  type="button"
                  className="floor-square"
                  aria-label={`${floorBench.alternates.another}: ${nameOf(one)}`}
                  title={floorBench.alternates.another}
                  onClick={() => setAsked({ at, what: "instead" })}
                >
                  <IconExchange size={28} />
                </button>
              </li>
            );
          })}
        </ul>
        {without > 0 && <p className="dim">{floorBench.lots.missing(without)}</p>}
      </div>
      <TaskFoot>
        <FinishStep
          taskKey={task.key}
          step={task.step}
          says={own.done}
          disabled={lines.length === 0}
          also={lots}
        />
      </TaskFoot>
    </>
  );
}
