import { IconCheck, IconExchange } from "@tabler/icons-react";
import { type ReactNode, useMemo, useState } from "react";
import { useView } from "../../app/book/desk.tsx";
import { WireColour } from "../../app/wiring/wire-colour.tsx";
import { usePick, useSpeech } from "../../app/words.tsx";
import { insteadOf } from "../lots/instead.ts";
import { InsteadPage } from "../lots/instead-page.tsx";
import { LotEntry } from "../lots/lot-entry.tsx";
import { type LotPart, useLots } from "../lots/use-lots.ts";
import { useBench } from "./bench-context.tsx";
import { FinishStep } from "./finish-step.tsx";
import { TaskFoot } from "./task-foot.tsx";
import type { Task } from "./tasks.ts";
import { useAt, useTicked } from "./use-ticked.ts";
import { type End, endsOf, Strip, type Wire } from "./wire-ends.tsx";
import { cutGroups, layGroups, type Reel, wiresOf } from "./wire-groups.ts";

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
  const pick = usePick();
  const known = useView("floorParts", null);
  const nameOfPart = (id: string): string => {
    const part = known?.get(id);
    return part === undefined ? id : pick(part.label, part.labelZh) || id;
  };
  const isCut = task.step === "cut";
  const groups = useMemo(() => (isCut ? cutGroups(work) : layGroups(work)), [isCut, work]);
  const parts = useMemo(() => (isCut ? work.cut.map(lotPart) : []), [isCut, work]);
  const list = `${task.step} ${unitIds.join(" ")}`;
  const lots = useLots(list, task.step, parts);
  const [at, go] = useAt(`groups ${list}`);
  const { ticked, toggle } = useTicked(list);
  const [asked, setAsked] = useState<{ readonly reel: Reel; readonly what: "lot" | "instead" } | null>(null);
  const isDone = unitIds.every((unit) => states.get(unit)?.steps.has(task.step) === true);
  const group = groups[Math.min(at, Math.max(0, groups.length - 1))];
  const isLast = at >= groups.length - 1;
  const here = group === undefined ? [] : wiresOf(group);
  const laidOf = new Map(work.lay.flat().map((laid) => [laid.wireId, laid]));
  const all = groups.reduce((sum, own1) => sum + wiresOf(own1).length, 0);
  const metresOf = (ids: readonly string[]): number =>
    ids.reduce((sum, id) => sum + (wires?.get(id)?.cutMm ?? 0) / 1000, 0) * unitIds.length;
  const reelName = ({ partId, colour }: Reel): string => `${nameOfPart(partId)} ${colour}`.trim();
  if (asked?.what === "lot") {
    const part = lotPart(asked.reel);
    return (
      <LotEntry
        name={reelName(asked.reel)}
        partId={part.partId}
        last={lots.lastOf(part)}
        take={(lot) => {
          setAsked(null);
          void lots.take(part, lot);
        }}
        leave={() => setAsked(null)}
      />
    );
  }
  if (asked?.what === "instead")
    return (
      <InsteadPage partId={asked.reel.partId} name={reelName(asked.reel)} leave={() => setAsked(null)} />
    );
  return (
    <>
      <div className="floor-body floor-wires">
        <h1>
          {words.floor.steps[isCut ? "cut" : "lay-up"]}{" "}
          <small className="dim" role="status">
            {own.title(Math.min(at + 1, groups.length), groups.length)} · {own.wires(here.length)}
          </small>
        </h1>
        {wires !== null && groups.length === 0 && <p>{words.floor.wire.none}</p>}
        {group?.sections.map(({ reel, wireIds }) => (
          <section key={wireIds[0]}>
            {reel !== null && (
              <ReelLine
                reel={reel}
                gauge={wires?.get(wireIds[0] ?? "")?.gauge ?? ""}
                says={own.total(metresOf(wireIds))}
                lot={lots.lotOf(lotPart(reel))}
                instead={insteadOf(states, unitIds, reel.partId)}
                ask={(what) => setAsked({ reel, what })}
              />
            )}
            <ul className="floor-ticks floor-wire-rows">
              {wireIds.flatMap((id) => {
                const wire = wires?.get(id);
                return wire === undefined
                  ? []
                  : [
                      <li key={id}>
                        <button type="button" aria-pressed={ticked.has(id)} onClick={() => toggle(id)}>
                          <span className="tick-box" aria-hidden>
                            {ticked.has(id) && <IconCheck size={28} stroke={3} />}
                          </span>
                          <b className="floor-count">{wire.printed}</b>
                          {isCut ? (
                            <CutRow wire={wire} times={unitIds.length} />
                          ) : (
                            <LaidRow wire={wire} laid={laidOf.get(id)} />
                          )}
                        </button>
                      </li>,
                    ];
              })}
            </ul>
          </section>
        ))}
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

/** The reel that the next wires come from, with its lot. */
function ReelLine({
  reel,
  gauge,
  says,
  lot,
  instead,
  ask,
}: {
  readonly reel: Reel;
  readonly gauge: string;
  readonly says: string;
  readonly lot: string | null;
  readonly instead: string | null;
  readonly ask: (what: "lot" | "instead") => void;
}) {
  const { lots, alternates } = useSpeech().words.floorBench;
  return (
    <div className="floor-reel-line">
      {reel.colour !== "" && (
        <span className="floor-wire-colour">
          <WireColour code={reel.colour} />
        </span>
      )}
      <b>{gauge}</b>
      <span className="dim">{says}</span>
      {instead !== null && <span className="amber-text">{alternates.taken(instead)}</span>}
      <span className="floor-gap" />
      <button
        type="button"
        className="floor-plain floor-lot-chip"
        data-empty={lot === null ? "" : undefined}
        aria-label={`${lots.lot} ${gauge} ${reel.colour} ${lot ?? ""}`.trim()}
        onClick={() => ask("lot")}
      >
        {lot === null ? lots.lot : lots.of(lot)}
      </button>
      <button
        type="button"
        className="floor-square"
        aria-label={`${alternates.another} ${gauge} ${reel.colour}`.trim()}
        title={alternates.another}
        onClick={() => ask("instead")}
      >
        <IconExchange size={28} />
      </button>
    </div>
  );
}

const lotPart = ({ partId, colour }: Reel): LotPart => ({
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
