import type { SolderMinutes } from "@pinwright/engine";
import { useState } from "react";
import { useSearchParams } from "wouter";
import { useOne } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { MachinesField } from "../book/machines-field.tsx";
import { useAnswer } from "../book/use-answer.ts";
import { useAskedCount } from "../book/use-asked-count.ts";
import { usePick, useWords } from "../words.tsx";
import { SessionTable } from "./session-table.tsx";
import { SolderChart } from "./solder-chart.tsx";
import { SolderShifts } from "./solder-shifts.tsx";
import { countsIn, countsText, type Times } from "./solder-times.ts";
import { TimeFields } from "./time-fields.tsx";

const MOST_MACHINES = 10_000;
const ENTRIES = [
  "setup",
  "stuff",
  "solder",
  "mask",
  "wash",
  "mend",
  "afterWash",
] as const satisfies readonly (keyof SolderMinutes)[];
/** Points of the curve that are told of in figures. */
const TOLD = 8;

/** Whether the boards of one session are better soldered by hand or in the bath, and what the answer hangs on. */
export function SolderTab({ register }: { readonly register: Entries<"boardRegister"> }) {
  const words = useWords();
  const own = words.boards;
  const pick = usePick();
  const basis = useOne("solderBasis", null);
  const [machines, setMachines] = useAskedCount("machines", 1, MOST_MACHINES);
  const [params, setParams] = useSearchParams();
  const [times, setTimes] = useState<Times>({});
  const other = countsIn(params.get("counts"));
  const usual = new Map(basis?.kinds.map(({ typeId, perMachine }) => [typeId, perMachine * machines]));
  const counts = new Map([...usual].map(([typeId, count]) => [typeId, other.get(typeId) ?? count]));
  const question = {
    machines,
    counts: [...counts].map(([typeId, count]) => ({ typeId, count })),
    times,
  };
  const { answer, failed, isCurrent } = useAnswer(
    "soldering",
    basis === undefined || usual.size === 0 ? null : question,
    basis ?? null,
  );
  const putCounts = (next: ReadonlyMap<string, number>): void =>
    setParams(
      (before) => {
        const after = new URLSearchParams(before);
        if (next.size === 0) after.delete("counts");
        else after.set("counts", countsText(next));
        return after;
      },
      { replace: true },
    );
  const setCount = (typeId: string, count: number | null): void => {
    const next = new Map(other);
    if (count === null) next.delete(typeId);
    else next.set(typeId, count);
    putCounts(next);
  };
  if (basis === undefined) return <p className="dim">{words.common.loading}</p>;
  if (usual.size === 0)
    return (
      <>
        <h2>{own.solderTitle}</h2>
        <p>{own.noSolder}</p>
      </>
    );
  const boards = [...counts.values()].reduce((sum, count) => sum + count, 0);
  const nameOf = (typeId: string): string => {
    const kind = register.get(typeId);
    return kind === undefined ? typeId : pick(kind.label, kind.labelZh) || typeId;
  };
  return (
    <>
      <h2>{own.solderTitle}</h2>
      <p className="dim">{own.solderAbout}</p>
      {failed !== "" && <p className="error-text">{failed}</p>}
      <div className="question">
        <MachinesField label={own.machines} value={machines} most={MOST_MACHINES} onCount={setMachines} />
        <span className="session-sum">{own.together(boards)}</span>
      </div>
      {answer !== undefined && (
        <div className={isCurrent ? "" : "stale"}>
          <Result answer={answer} nameOf={nameOf} boards={boards} />
          <div className="solder">
            <div>
              <h3>{own.curveTitle}</h3>
              <SolderChart curve={answer.curve} crossing={answer.choice.crossing} machines={machines} />
              <Curve answer={answer} />
              <h3>{own.minutesTable}</h3>
              <MinutesTable hand={answer.choice.hand} bath={answer.choice.bath} />
            </div>
            <TimeFields shop={basis.times} times={times} setTimes={setTimes} />
          </div>
          <h3>{own.session}</h3>
          <p className="dim">{own.aloneAbout}</p>
          <SessionTable
            kinds={answer.kinds}
            counts={counts}
            usual={usual}
            setCount={setCount}
            setAll={(all) => putCounts(new Map(all ? [] : [...usual.keys()].map((typeId) => [typeId, 0])))}
            bathTypeIds={answer.choice.bathTypeIds}
            register={register}
          />
          <SolderShifts shifts={answer.shifts} crossing={answer.choice.crossing} />
        </div>
      )}
      <p className="caution">{own.caution}</p>
    </>
  );
}

type Answer = NonNullable<ReturnType<typeof useAnswer<"soldering">>["answer"]>;

/** What comes out: the better way, both totals, and from where on the bath pays. */
function Result({
  answer: { choice, kinds },
  nameOf,
  boards,
}: {
  readonly answer: Answer;
  readonly nameOf: (typeId: string) => string;
  readonly boards: number;
}) {
  const words = useWords().boards;
  const { hand, bath, better, crossing, crossingBoards, bathTypeIds } = choice;
  const figure = (name: string, value: string, note: string, isBetter = false) => (
    <div className={isBetter ? "better" : ""}>
      <dt>{name}</dt>
      <dd>
        <b>{value}</b>
        <span className="dim">{note}</span>
      </dd>
    </div>
  );
  const less = Math.abs(hand.total - bath.total);
  return (
    <>
      {boards > 0 && (
        <p className="solder-says">
          <b>{words.better[better]}</b>: {words.fewerBy(words.minutes(less))}
        </p>
      )}
      <dl className="plan-figures">
        {figure(words.byHand, words.minutes(hand.total), "", better === "hand")}
        {figure(words.inBath, words.minutes(bath.total), "", better === "bath")}
        {crossing === null
          ? figure(words.crossing, words.noCrossing, words.noCrossingNote)
          : figure(
              words.crossing,
              words.crossingAt(crossing),
              crossingBoards === null ? "" : words.crossingBoards(crossingBoards),
            )}
      </dl>
      {boards > 0 && (
        <p className="dim">
          {bathTypeIds.length === kinds.length
            ? words.allInBath
            : words.bathKinds(bathTypeIds.map(nameOf).join(", "))}
        </p>
      )}
    </>
  );
}

/** The curve in figures. */
function Curve({ answer: { curve } }: { readonly answer: Answer }) {
  const words = useWords().boards;
  const every = Math.max(1, Math.ceil(curve.length / TOLD));
  return (
    <details className="curve-figures">
      <summary>{words.curveFigures}</summary>
      <table className="plain">
        <caption className="visually-hidden">{words.curveTitle}</caption>
        <thead>
          <tr>
            {[words.machines, words.boardCount, words.byHand, words.inBath].map((name) => (
              <th key={name} scope="col" className="end">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {curve
            .filter((_, i) => i % every === 0 || i === curve.length - 1)
            .map((point) => (
              <tr key={point.machines}>
                <th scope="row" className="end">
                  {point.machines}
                </th>
                <td className="end">{point.boards}</td>
                <td className="end">{words.minutes(point.handMinutes)}</td>
                <td className="end">{words.minutes(point.bathMinutes)}</td>
              </tr>
            ))}
        </tbody>
      </table>
    </details>
  );
}

function MinutesTable({ hand, bath }: { readonly hand: SolderMinutes; readonly bath: SolderMinutes }) {
  const words = useWords().boards;
  const text = (value: number): string => (value === 0 ? "–" : words.minutes(value));
  return (
    <table className="plain">
      <caption className="visually-hidden">{words.minutesTable}</caption>
      <thead>
        <tr>
          <th scope="col">{words.entry}</th>
          <th scope="col" className="end">
            {words.byHand}
          </th>
          <th scope="col" className="end">
            {words.inBath}
          </th>
        </tr>
      </thead>
      <tbody>
        {[...ENTRIES, "total" as const].map((entry) => (
          <tr key={entry} className={entry === "total" ? "sum" : ""}>
            <th scope="row">{words.entries[entry]}</th>
            <td className="end">{text(hand[entry])}</td>
            <td className="end">{text(bath[entry])}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
