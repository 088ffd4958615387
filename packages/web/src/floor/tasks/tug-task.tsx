import "../continuity/continuity.css";
import type { FactBody } from "@pinwright/contract";
import type { Tug } from "@pinwright/engine";
import { IconAlertTriangle, IconCheck } from "@tabler/icons-react";
import { useState } from "react";
import { useView } from "../../app/book/desk.tsx";
import { type Cavity, HousingView } from "../../app/wiring/housing-view.tsx";
import { useWords } from "../../app/words.tsx";
import { type Housing, useHousingName } from "../continuity/places.ts";
import { madeUp } from "../outbox/outbox.ts";
import { atStation, useBench } from "./bench-context.tsx";
import { FinishStep } from "./finish-step.tsx";
import { TaskFoot } from "./task-foot.tsx";
import type { Task } from "./tasks.ts";
import { keepTugs, keptTugs } from "./tugs.ts";

const RESULTS: readonly Tug[] = ["came-out", "nothing-there", "wire-missing", "held"];
const WHAT: Readonly<Record<Tug, string>> = {
  held: "other",
  "came-out": "contact-out",
  "nothing-there": "missing-wire",
  "wire-missing": "missing-wire",
};
const NOTHING_LIT = { pointId: null, wireId: null };

/** A tug on every contact: one tap for a housing whose contacts all held, and only what did not hold is told by itself. */
export function TugTask({ task }: { readonly task: Extract<Task, { kind: "tug" }> }) {
  const { floor, floorMeasure } = useWords();
  const own = floorMeasure.tug;
  const bench = useBench();
  const nameOf = useHousingName();
  const { unit } = task;
  const housings = useView("housings", { of: "harness", id: bench.type });
  const [openId, setOpenId] = useState<string | null>(null);
  const [tugs, setTugs] = useState(() => keptTugs(unit));
  const list = [...(housings?.values() ?? [])].filter((one) => contactsOf(one, bench.type).length > 0);
  const contacts = list.reduce((sum, one) => sum + contactsOf(one, bench.type).length, 0);
  const bad = [...tugs].filter(([, tug]) => tug !== "held");
  const isTold = (one: Housing): boolean =>
    contactsOf(one, bench.type).every(({ pointId }) => tugs.has(pointId));
  const told = list.filter(isTold).length;
  const put = (entries: readonly (readonly [string, Tug | null])[]): void => {
    const next = new Map(tugs);
    for (const [point, tug] of entries)
      if (tug === null) next.delete(point);
      else next.set(point, tug);
    keepTugs(unit, next);
    setTugs(next);
  };
  /** What was told of single contacts stays; all others held. */
  const rest = (one: Housing): readonly (readonly [string, Tug])[] =>
    contactsOf(one, bench.type).map(({ pointId }) => [pointId, tugs.get(pointId) ?? "held"]);
  const recordBad = async (): Promise<void> => {
    const facts = bad.map(
      ([point, tug]): FactBody => ({
        ...{ kind: "defect", unit, defect: madeUp("d"), what: WHAT[tug] },
        says: floor.tug.results[tug],
        where: { point },
        ...atStation(bench),
      }),
    );
    if (!(await bench.record(facts))) return;
    // After mending, every contact is tugged again.
    keepTugs(unit, new Map());
    bench.show("/mend");
  };
  const open = list.find(({ landingId }) => landingId === openId);
  if (open !== undefined)
    return (
      <OpenHousing
        housing={open}
        tugs={tugs}
        tap={({ pointId, state }) => {
          if (state !== "wired") return;
          const before = RESULTS.indexOf(tugs.get(pointId) ?? "held");
          put([[pointId, RESULTS[(before + 1) % RESULTS.length] ?? "held"]]);
        }}
        close={() => {
          put(rest(open));
          setOpenId(null);
        }}
      />
    );
  return (
    <>
      <div className="floor-body">
        <h1>
          {floor.steps.tug}{" "}
          <small className="dim" role="status">
            {unit} · {own.told(told, list.length)}
          </small>
        </h1>
        <p>{own.how}</p>
        <ul className="floor-tugs">
          {list.map((one) => (
            <li key={one.landingId} data-bad={hasBad(one, tugs) ? "" : undefined}>
              <button
                type="button"
                className="floor-tug-all"
                aria-pressed={isTold(one)}
                onClick={() => put(isTold(one) ? rest(one).map(([point]) => [point, null]) : rest(one))}
              >
                <b>{nameOf(one)}</b>
                <small>
                  {one.landingId} · {countText(one, contactsOf(one, bench.type).length, own)}
                </small>
              </button>
              <button
                type="button"
                className="floor-wrong"
                aria-label={own.bad(nameOf(one))}
                onClick={() => setOpenId(one.landingId)}
              >
                <IconAlertTriangle size={26} aria-hidden />
              </button>
            </li>
          ))}
        </ul>
        {list.map((one) => (
          <BadList key={one.landingId} housing={one} tugs={tugs} />
        ))}
      </div>
      <TaskFoot>
        {told < list.length || housings === null ? (
          <button type="button" className="floor-main" disabled>
            {own.left(list.length - told)}
          </button>
        ) : bad.length > 0 ? (
          <button type="button" className="floor-main floor-bad-main" onClick={() => void recordBad()}>
            {floor.tug.bad(bad.length)}
          </button>
        ) : (
          <FinishStep
            taskKey={task.key}
            step={task.step}
            unitIds={[unit]}
            count={contacts}
            says={floor.tug.all(contacts)}
            disabled={false}
          />
        )}
      </TaskFoot>
    </>
  );
}

/** Cavities of a housing that a wire of a harness goes into. */
const contactsOf = ({ cavities }: Housing, harnessId: string): readonly Cavity[] =>
  cavities.filter(({ wires }) => wires.some((wire) => wire.harnessId === harnessId));

const hasBad = ({ cavities }: Housing, tugs: ReadonlyMap<string, Tug>): boolean =>
  cavities.some(({ pointId }) => (tugs.get(pointId) ?? "held") !== "held");

const countText = (
  { isHousing }: Housing,
  count: number,
  words: { readonly contacts: (count: number) => string; readonly ends: (count: number) => string },
): string => (isHousing ? words.contacts(count) : words.ends(count));

/** What did not hold in a housing, and what was seen. */
function BadList({ housing, tugs }: { readonly housing: Housing; readonly tugs: ReadonlyMap<string, Tug> }) {
  const { tug: words, continuity } = useWords().floor;
  const nameOf = useHousingName();
  const bad = housing.cavities.filter(({ pointId }) => (tugs.get(pointId) ?? "held") !== "held");
  if (bad.length === 0) return null;
  return (
    <ul className="floor-bad">
      {bad.map(({ pointId, name }) => (
        <li key={pointId}>
          <b>{continuity.placeOf(nameOf(housing), name)}</b> {words.results[tugs.get(pointId) ?? "held"]}
        </li>
      ))}
    </ul>
  );
}

/** One housing, large: each tap on a contact says another thing that was seen. */
function OpenHousing({
  housing,
  tugs,
  tap,
  close,
}: {
  readonly housing: Housing;
  readonly tugs: ReadonlyMap<string, Tug>;
  readonly tap: (cavity: Cavity) => void;
  readonly close: () => void;
}) {
  const { floorMeasure } = useWords();
  const own = floorMeasure.tug;
  const nameOf = useHousingName();
  return (
    <>
      <div className="floor-body floor-tug-open">
        <h1>
          {nameOf(housing)} <small className="dim">{housing.landingId}</small>
        </h1>
        <p>{own.tap}</p>
        <HousingView housing={housing} lit={NOTHING_LIT} onPoint={tap} onHover={() => undefined} />
        <BadList housing={housing} tugs={tugs} />
      </div>
      <TaskFoot>
        <button type="button" className="floor-main" onClick={close}>
          <IconCheck size={30} aria-hidden /> {own.back}
        </button>
      </TaskFoot>
    </>
  );
}
