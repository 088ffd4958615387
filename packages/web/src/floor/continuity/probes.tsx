import { groupsOfProbes, type ProbeAnswer, probeWalk } from "@pinwright/engine";
import { IconCheck, IconX } from "@tabler/icons-react";
import { useEffect, useMemo, useState } from "react";
import { useWords } from "../../app/words.tsx";
import type { ViewEntry } from "../../worker/protocol.ts";
import { TaskFoot } from "../tasks/task-foot.tsx";
import { HousingMarks } from "./housing-marks.tsx";
import { type PlaceName, usePlaceNames } from "./places.ts";
import { keepAnswers, keptAnswers } from "./probe-answers.ts";

/**
 * The guided test with two probes: one pair a screen, answered with two large keys or with Y and N. What it must show is not
 * told, so that nobody hears what he expects.
 */
export function Probes({
  on: { bench, probes },
  unit,
  read,
  back,
}: {
  readonly on: ViewEntry<"floorBench">;
  readonly unit: string;
  /** Told the groups once every pair is answered. */
  readonly read: (groups: readonly number[]) => void;
  readonly back: () => void;
}) {
  const { floor, floorMeasure } = useWords();
  const own = floorMeasure.probes;
  const nameOf = usePlaceNames(bench);
  const [answers, setAnswers] = useState(() => keptAnswers(unit));
  const walk = useMemo(() => probeWalk(bench, probes, answers), [bench, probes, answers]);
  const { next } = walk;
  const put = (list: readonly ProbeAnswer[]): void => {
    keepAnswers(unit, list);
    setAnswers(list);
  };
  const answer = (joined: boolean): void => {
    if (next !== null) put([...answers, { a: next.a, b: next.b, joined }]);
  };
  const undo = (): void => put(answers.slice(0, -1));
  useProbeKeys(answer, undo);
  const before = answers.at(-1);
  return (
    <>
      <div className="floor-body floor-probes">
        <h1>
          {next === null ? own.done : own.asks}{" "}
          <small className="dim" role="status">
            {unit} · {own.of(Math.min(probes.length - walk.left + 1, probes.length), probes.length)}
            {walk.besides > 0 && ` · ${own.besides(walk.besides)}`}
          </small>
        </h1>
        {next === null ? (
          <p>{own.limit}</p>
        ) : (
          <div className="floor-pair" aria-live="polite">
            <Spot id={next.a} name={nameOf(next.a)} says={before?.a === next.a ? own.stays : ""} />
            <Spot id={next.b} name={nameOf(next.b)} says={before?.a === next.a ? own.moves : ""} />
          </div>
        )}
        <p className="dim">{own.keys}</p>
      </div>
      <TaskFoot>
        <button
          type="button"
          className="floor-plain"
          onClick={() => (answers.length === 0 ? back() : undo())}
        >
          {answers.length === 0 ? floor.back : own.before}
        </button>
        {next === null ? (
          <>
            <button type="button" className="floor-plain" onClick={() => put([])}>
              {own.start}
            </button>
            <button
              type="button"
              className="floor-main"
              onClick={() => {
                keepAnswers(unit, []);
                read(groupsOfProbes(bench, answers));
              }}
            >
              <IconCheck size={30} aria-hidden /> {own.done}
            </button>
          </>
        ) : (
          <>
            <button type="button" className="floor-plain floor-answer" onClick={() => answer(false)}>
              <IconX size={34} aria-hidden /> {own.no}
            </button>
            <button type="button" className="floor-main floor-answer" onClick={() => answer(true)}>
              <IconCheck size={34} aria-hidden /> {own.yes}
            </button>
          </>
        )}
      </TaskFoot>
    </>
  );
}

/** Y and N answer, the key that takes a sign back goes to the pair before. */
function useProbeKeys(answer: (joined: boolean) => void, undo: () => void): void {
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.repeat) return;
      const key = event.key.toLowerCase();
      if (key === "y") answer(true);
      else if (key === "n") answer(false);
      else if (key === "backspace") undo();
    };
    addEventListener("keydown", pressed);
    return () => removeEventListener("keydown", pressed);
  });
}

function Spot({ id, name, says }: { readonly id: string; readonly name: PlaceName; readonly says: string }) {
  const own = useWords().floorMeasure.probes;
  return (
    <div data-place={id}>
      <span className="dim">{says === "" ? " " : says}</span>
      <b>{name.housing}</b>
      <b className="floor-cavity">{name.cavity}</b>
      <span>
        {name.wires === "" ? own.empty : own.wire(name.wires)}
        {name.isLoose && ` · ${own.loose}`}
      </span>
      <small className="dim">{name.landingId}</small>
      <HousingMarks pointIds={new Set([name.pointId])} />
    </div>
  );
}
