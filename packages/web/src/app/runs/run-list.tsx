import { Button } from "@mantine/core";
import { decimal, numberOfDecimal, timesDecimal } from "@pinwright/kernel";
import { IconPlus } from "@tabler/icons-react";
import { useState } from "react";
import { Link, useLocation } from "wouter";
import type { AskAnswer, ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { DataTable } from "../harnesses/data-table.tsx";
import { moneyText } from "../parts/amounts.ts";
import { TotalText } from "../parts/total-text.tsx";
import { useMay } from "../session/session.tsx";
import { usePick, useWords } from "../words.tsx";
import { compareAddress, runAddress } from "./address.ts";
import { CashPart } from "./cash-tab.tsx";
import { dayText } from "./days.ts";
import { PickRun } from "./pick-run.tsx";
import { PlanFindings } from "./plan-findings.tsx";
import { PlanProgress } from "./plan-progress.tsx";
import { RunForm } from "./run-form.tsx";
import { today } from "./today.ts";
import { type Preparing, usePlanAnswer } from "./use-prepared.ts";

type Run = ViewEntry<"runs">;
type Figures = AskAnswer<"runsFigures">;

/** All runs with what they cost and whether their day can be kept, the money of all of them, and the form for a new one. */
export function RunList({
  runs,
  ground,
  preparing,
}: {
  readonly runs: Entries<"runs">;
  readonly ground: ViewEntry<"planGround">;
  readonly preparing: Preparing;
}) {
  const words = useWords();
  const own = words.runs;
  const { bookId } = useDesk();
  const [, go] = useLocation();
  const mayEdit = useMay("designer");
  const [isNew, setNew] = useState(runs.size === 0);
  const isAny = [...runs.values()].some(({ isOfBook, state }) => isOfBook && state !== "done");
  const answering = usePlanAnswer("runsFigures", isAny ? { today: today(), change: null } : null, preparing);
  const figures = answering.answer;
  return (
    <>
      <h2>{own.title}</h2>
      <p>{own.about}</p>
      {isAny && <PlanProgress preparing={preparing} answering={answering} />}
      {runs.size === 0 ? (
        <p>{own.empty}</p>
      ) : (
        <Table runs={runs} figures={figures} currency={ground.currency} />
      )}
      {mayEdit && !isNew && (
        <p className="run-new">
          <Button leftSection={<IconPlus size={16} />} onClick={() => setNew(true)}>
            {own.form.new}
          </Button>
        </p>
      )}
      {mayEdit && isNew && (
        <RunForm
          run={null}
          runs={runs}
          ground={ground}
          done={(id) => {
            setNew(false);
            if (id !== null) go(runAddress(bookId, id));
          }}
        />
      )}
      {[...runs.values()].some(({ isOfBook, state }) => !isOfBook || state === "done") && (
        <p className="dim">{own.notPlanned}</p>
      )}
      {runs.size > 1 && <Compare runs={runs} />}
      {figures !== undefined && isAny && (
        <>
          <h3>{own.tabs.cash}</h3>
          <CashPart cash={figures.cash} currency={figures.currency} />
          <h3>{own.overview.findings}</h3>
          <PlanFindings findings={figures.findings} none={own.overview.noFindings} />
        </>
      )}
    </>
  );
}

function Table({
  runs,
  figures,
  currency,
}: {
  readonly runs: Entries<"runs">;
  readonly figures: Figures | undefined;
  readonly currency: string;
}) {
  const own = useWords().runs;
  const pick = usePick();
  const { bookId } = useDesk();
  const timings = new Map(figures?.timings.map((timing) => [timing.runId, timing]));
  const costs = new Map(figures?.costs.map((cost) => [cost.runId, cost]));
  const readyOf = ({ id }: Run): string => {
    const day = timings.get(id)?.readyDay;
    return day == null ? "" : dayText(day);
  };
  return (
    <DataTable
      caption={own.title}
      rows={[...runs.values()]}
      rowKey={({ id }) => id}
      columns={[
        {
          key: "run",
          header: own.run,
          value: (run) => pick(run.label, run.labelZh) || run.id,
          cell: (run) => (
            <Link href={runAddress(bookId, run.id)}>
              {pick(run.label, run.labelZh) || run.id}
              <small>{run.isOfBook ? own.states[run.state] : own.otherBook(run.bookId)}</small>
            </Link>
          ),
        },
        { key: "machines", header: own.machines, value: (run) => run.machines, align: "end" },
        {
          key: "ship",
          header: own.ship,
          value: (run) => run.ship,
          cell: (run) => <span className="amount">{run.ship}</span>,
        },
        {
          key: "ready",
          header: own.ready,
          value: readyOf,
          cell: (run) => {
            const timing = timings.get(run.id);
            return (
              <>
                <span className="amount">{readyOf(run)}</span>
                {timing?.readyDay != null && (
                  <small className={timing.isLate ? "amber-text" : ""}>
                    {timing.isLate ? own.late : own.inTime}
                  </small>
                )}
              </>
            );
          },
          minor: true,
        },
        {
          key: "each",
          header: own.costEach,
          value: (run) => numberOfDecimal(costs.get(run.id)?.each.value ?? 0n),
          text: (run) => {
            const cost = costs.get(run.id);
            return cost === undefined ? "" : moneyText(cost.each.value, currency);
          },
          cell: (run) => {
            const cost = costs.get(run.id);
            return cost === undefined ? "" : <TotalText total={cost.each} currency={currency} />;
          },
          align: "end",
        },
        {
          key: "all",
          header: own.costAll,
          value: (run) => numberOfDecimal(costs.get(run.id)?.each.value ?? 0n) * run.machines,
          text: (run) => {
            const cost = costs.get(run.id);
            return cost === undefined
              ? ""
              : moneyText(timesDecimal(cost.each.value, decimal(run.machines)), currency);
          },
          cell: (run) => {
            const cost = costs.get(run.id);
            return cost === undefined
              ? ""
              : moneyText(timesDecimal(cost.each.value, decimal(run.machines)), currency);
          },
          align: "end",
          minor: true,
        },
      ]}
    />
  );
}

function Compare({ runs }: { readonly runs: Entries<"runs"> }) {
  const own = useWords().runs;
  const { bookId } = useDesk();
  const [, go] = useLocation();
  const ids = [...runs.values()]
    .filter(({ isOfBook, state }) => isOfBook && state !== "done")
    .map(({ id }) => id);
  const [a, setA] = useState(ids[0] ?? "");
  const [b, setB] = useState(ids[1] ?? "");
  if (ids.length < 2) return null;
  return (
    <form
      className="question"
      onSubmit={(event) => {
        event.preventDefault();
        go(compareAddress(bookId, a, b));
      }}
    >
      <PickRun label={own.compareTwo} runs={runs} value={a} onPick={setA} />
      <PickRun label={own.compareWith} runs={runs} value={b} onPick={setB} />
      <Button type="submit" variant="default" disabled={a === b}>
        {own.compare}
      </Button>
    </form>
  );
}
