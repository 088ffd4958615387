import { IconCheck } from "@tabler/icons-react";
import type { ReactNode } from "react";
import { useView } from "../../app/book/desk.tsx";
import { WireColour } from "../../app/wiring/wire-colour.tsx";
import { usePick, useSpeech } from "../../app/words.tsx";
import { useBench } from "./bench-context.tsx";
import { FinishStep } from "./finish-step.tsx";
import { TaskFoot } from "./task-foot.tsx";
import type { Task } from "./tasks.ts";
import { useAt } from "./use-ticked.ts";
import { type End, endsOf, Strip, type Wire } from "./wire-ends.tsx";

/** The wires of a harness one by one: cut reel by reel, or laid from holder to holder. */
export function WireByWire({
  task,
  change,
}: {
  readonly task: Extract<Task, { kind: "own" }>;
  readonly change: ReactNode;
}) {
  const { words } = useSpeech();
  const own = words.floor.wire;
  const { work, type, unitIds, states } = useBench();
  const wires = useView("harnessWires", type);
  const isCut = task.step === "cut";
  const laid = work.lay.flat();
  const ids = isCut ? work.cut.flatMap(({ wireIds }) => wireIds) : laid.map(({ wireId }) => wireId);
  const [at, go] = useAt(`${task.step} ${unitIds.join(" ")}`);
  const isDone = unitIds.every((unit) => states.get(unit)?.steps.has(task.step) === true);
  const wire = wires?.get(ids[at] ?? "");
  const before = wires?.get(ids[at - 1] ?? "");
  const isLast = at >= ids.length - 1;
  return (
    <>
      <div className="floor-body floor-wire">
        <h1>
          {words.floor.steps[isCut ? "cut" : "lay-up"]}{" "}
          <small className="dim" role="status">
            {own.of(Math.min(at + 1, ids.length), ids.length)}
          </small>
        </h1>
        {wires !== null && ids.length === 0 && <p>{own.none}</p>}
        {wire !== undefined && (
          <>
            <p className="floor-wire-name">
              <b>{wire.printed}</b>
              <span className="floor-wire-colour">
                <WireColour code={wire.colour} />
              </span>
              <span>{wire.gauge}</span>
              {isCut && before !== undefined && reel(before) !== reel(wire) && (
                <b className="floor-reel">{own.newReel}</b>
              )}
            </p>
            {isCut ? (
              <CutFigures wire={wire} times={unitIds.length} />
            ) : (
              <LaidEnds wire={wire} laid={laid[at]} />
            )}
          </>
        )}
        {change}
      </div>
      <TaskFoot>
        <button type="button" className="floor-plain" disabled={at === 0} onClick={() => go(at - 1)}>
          {own.before}
        </button>
        {isLast || isDone ? (
          <FinishStep
            taskKey={task.key}
            step={task.step}
            count={ids.length * unitIds.length}
            disabled={wires === null}
          />
        ) : (
          <button type="button" className="floor-main" onClick={() => go(at + 1)}>
            <IconCheck size={30} aria-hidden /> {isCut ? own.cutNext : own.laidNext}
          </button>
        )}
      </TaskFoot>
    </>
  );
}

const reel = ({ wireTypeId, colour }: Wire): string => `${wireTypeId} ${colour}`;
const mm = (value: number): string => String(Math.round(value * 10) / 10);

function CutFigures({ wire, times }: { readonly wire: Wire; readonly times: number }) {
  const pick = usePick();
  const end = (one: End) => (
    <p>
      <b>{pick(one.label.en, one.label.zh) || one.landingId} </b>
      <span className="floor-cavity">{one.cavity}</span>
      <Strip end={one} />
    </p>
  );
  return (
    <>
      <p className="floor-figure">
        {times > 1 && <span>{times} × </span>}
        {mm(wire.cutMm)} <small>mm</small>
      </p>
      <div className="floor-ends">
        {end(wire.from)}
        {end(wire.to)}
      </div>
    </>
  );
}

function LaidEnds({
  wire,
  laid,
}: {
  readonly wire: Wire;
  readonly laid: { readonly from: string; readonly to: string } | undefined;
}) {
  const { words } = useSpeech();
  const own = words.floor.wire;
  const pick = usePick();
  const { from, to } = endsOf(wire, laid);
  const end = (label: string, one: End) => (
    <div>
      <span className="dim">{label}</span>
      <b>{one.isSplice ? own.splice(one.cavity) : pick(one.label.en, one.label.zh) || one.landingId}</b>
      {!one.isSplice && <b className="floor-cavity">{one.cavity}</b>}
      <small>{one.landingId}</small>
      <small>{one.crimpedFirst ? "●" : `○ ${own.crimpLater}`}</small>
    </div>
  );
  return (
    <div className="floor-laid">
      {end(own.from, from)}
      <span aria-hidden>→</span>
      {end(own.to, to)}
    </div>
  );
}
