import { IconCheck } from "@tabler/icons-react";
import { type ReactNode, useMemo, useState } from "react";
import { useView } from "../../app/book/desk.tsx";
import { WireColour } from "../../app/wiring/wire-colour.tsx";
import { usePick, useSpeech } from "../../app/words.tsx";
import { InsteadPage } from "../lots/instead-page.tsx";
import { LotEntry } from "../lots/lot-entry.tsx";
import { type LotPart, useLots } from "../lots/use-lots.ts";
import { useBench } from "./bench-context.tsx";
import { FinishStep } from "./finish-step.tsx";
import { TaskFoot } from "./task-foot.tsx";
import type { Task } from "./tasks.ts";
import { useAt, useTicked } from "./use-ticked.ts";
import { type End, endsOf, Strip, type Wire } from "./wire-ends.tsx";
import { cutGroups, layGroups } from "./wire-groups.ts";

/** The wires of a harness reel by reel, or run by run: one tap for all that are on the screen. */
export function WireTogether({
  task,
  change,
}: {
  readonly task: Extract<Task, { kind: "own" }>;
  readonly change: ReactNode;
}) {
  const { words } = useSpeech();
  const own = words.floorBench.groups;
  const { work, type, unitIds, states } = useBench();
  const wires = useView("harnessWires", type);
  const isCut = task.step === "cut";
  const groups = useMemo(() => (isCut ? cutGroups(work) : layGroups(work)), [isCut, work]);
  const parts = useMemo(() => (isCut ? work.cut.map(lotPart) : []), [isCut, work]);
  const list = `${task.step} ${unitIds.join(" ")}`;
  const lots = useLots(list, task.step, parts);
  const [at, go] = useAt(`groups ${list}`);
  const { ticked, toggle } = useTicked(list);
  const [asked, setAsked] = useState<"lot" | "instead" | null>(null);
  const isDone = unitIds.every((unit) => states.get(unit)?.steps.has(task.step) === true);
  const group = groups[Math.min(at, Math.max(0, groups.length - 1))];
  const reel = group?.reel ?? null;
  const part = reel === null ? null : lotPart(reel);
  const isLast = at >= groups.length - 1;
  const own1 = group?.wireIds.flatMap((id) => wires?.get(id) ?? []) ?? [];
  const first = own1[0];
  const laidOf = new Map(work.lay.flat().map((laid) => [laid.wireId, laid]));
  const all = groups.reduce((sum, { wireIds }) => sum + wireIds.length, 0);
  const metres = own1.reduce((sum, { cutMm }) => sum + cutMm / 1000, 0) * unitIds.length;
  const reelName = first === undefined ? "" : `${first.gauge} ${reel?.colour ?? ""}`.trim();
  if (asked === "lot" && part !== null)
    return (
      <LotEntry
        name={reelName}
        partId={part.partId}
        last={lots.lastOf(part)}
        take={(lot) => {
          setAsked(null);
          void lots.take(part, lot);
        }}
        leave={() => setAsked(null)}
      />
    );
  if (asked === "instead" && part !== null)
    return <InsteadPage partId={part.partId} name={reelName} leave={() => setAsked(null)} />;
  return (
    <>
      <div className="floor-body floor-wires">
        <h1>
          {words.floor.steps[isCut ? "cut" : "lay-up"]}{" "}
          <small className="dim" role="status">
            {own.title(Math.min(at + 1, groups.length), groups.length)} · {own.wires(own1.length)}
            {isCut && ` · ${own.total(metres)}`}
          </small>
        </h1>
        {wires !== null && groups.length === 0 && <p>{words.floor.wire.none}</p>}
        {isCut && first !== undefined && (
          <div className="floor-reel-line">
            <span className="floor-wire-colour">
              <WireColour code={first.colour} />
            </span>
            <b>{first.gauge}</b>
            {part !== null && (
              <button type="button" className="floor-plain" onClick={() => setAsked("lot")}>
                {lots.lotOf(part) === null
                  ? words.floorBench.lots.lot
                  : words.floorBench.lots.of(lots.lotOf(part) ?? "")}
              </button>
            )}
            <button type="button" className="floor-plain" onClick={() => setAsked("instead")}>
              {words.floorBench.alternates.another}
            </button>
          </div>
        )}
        <ul className="floor-ticks floor-wire-rows">
          {own1.map((wire) => (
            <li key={wire.id}>
              <button type="button" aria-pressed={ticked.has(wire.id)} onClick={() => toggle(wire.id)}>
                <span className="tick-box" aria-hidden>
                  {ticked.has(wire.id) && <IconCheck size={28} stroke={3} />}
                </span>
                <b className="floor-count">{wire.printed}</b>
                {isCut ? (
                  <CutRow wire={wire} times={unitIds.length} />
                ) : (
                  <LaidRow wire={wire} laid={laidOf.get(wire.id)} />
                )}
              </button>
            </li>
          ))}
        </ul>
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
            count={all * unitIds.length}
            disabled={wires === null}
            also={lots}
          />
        ) : (
          <button type="button" className="floor-main" onClick={() => go(at + 1)}>
            <IconCheck size={30} aria-hidden /> {isCut ? own.all : own.laid}
          </button>
        )}
      </TaskFoot>
    </>
  );
}

const lotPart = ({ partId, colour }: { readonly partId: string; readonly colour: string }): LotPart => ({
  of: `${partId} ${colour}`.trim(),
  partId,
});

function CutRow({ wire, times }: { readonly wire: Wire; readonly times: number }) {
  const pick = usePick();
  const end = (one: End) => (
    <span>
      {pick(one.label.en, one.label.zh) || one.landingId || one.id} <b>{one.cavity}</b> <Strip end={one} />
    </span>
  );
  return (
    <>
      <b className="floor-length">
        {times > 1 && `${times} × `}
        {Math.round(wire.cutMm)} <small>mm</small>
      </b>
      {end(wire.from)}
      {end(wire.to)}
    </>
  );
}

function LaidRow({
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
  const end = (one: End) => (
    <span>
      {one.isSplice ? own.splice(one.cavity) : pick(one.label.en, one.label.zh) || one.landingId}{" "}
      {!one.isSplice && <b>{one.cavity}</b>}
      <small>
        {one.landingId ?? ""} {one.crimpedFirst ? "●" : `○ ${own.crimpLater}`}
      </small>
    </span>
  );
  return (
    <>
      <span className="floor-wire-colour">
        <WireColour code={wire.colour} />
      </span>
      {end(from)}
      <span aria-hidden>→</span>
      {end(to)}
    </>
  );
}
