import { IconArrowLeft } from "@tabler/icons-react";
import { useEffect, useRef } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { usePick, useWords } from "../words.tsx";
import { runAddress, runsAddress, TABS, type Tab } from "./address.ts";
import { CashTab } from "./cash-tab.tsx";
import { NeedsTab } from "./needs-tab.tsx";
import { OrdersTab } from "./orders-tab.tsx";
import { OverviewTab } from "./overview-tab.tsx";
import { PlanProgress } from "./plan-progress.tsx";
import { QuantityTab } from "./quantity-tab.tsx";
import type { RunTab } from "./run-tab.ts";
import { ScheduleTab } from "./schedule-tab.tsx";
import { ShortagesTab } from "./shortages-tab.tsx";
import { today } from "./today.ts";
import { type Preparing, usePlanAnswer } from "./use-prepared.ts";
import { WhatIfTab } from "./what-if-tab.tsx";

type Run = ViewEntry<"runs">;

const BODIES: Readonly<Record<Tab, (tab: RunTab) => React.ReactNode>> = {
  overview: OverviewTab,
  needs: NeedsTab,
  orders: OrdersTab,
  schedule: ScheduleTab,
  cash: CashTab,
  quantity: QuantityTab,
  "what-if": WhatIfTab,
  shortages: ShortagesTab,
};

/** One run: what it needs, when, and what it costs. */
export function RunPage({
  runId,
  run,
  tab,
  runs,
  ground,
  preparing,
}: {
  readonly runId: string;
  readonly run: Run | undefined;
  readonly tab: Tab;
  readonly runs: Entries<"runs">;
  readonly ground: ViewEntry<"planGround">;
  readonly preparing: Preparing;
}) {
  const words = useWords();
  const own = words.runs;
  const pick = usePick();
  const { bookId } = useDesk();
  const isPlanned = run?.isOfBook === true && run.state !== "done";
  const day = today();
  const answering = usePlanAnswer(
    "runPlan",
    isPlanned ? { runId, today: day, change: null } : null,
    preparing,
  );
  const tabs = useRef<HTMLElement>(null);
  // On a phone the tabs are pushed sideways: the one that is open comes into sight.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another tab is brought into sight
  useEffect(() => {
    tabs.current?.querySelector("[aria-current]")?.scrollIntoView({ block: "nearest", inline: "center" });
  }, [tab]);
  const Body = BODIES[tab];
  const plan = answering.answer;
  return (
    <div className="currents runs">
      <nav className="currents-tabs" aria-label={own.run} ref={tabs}>
        <Link href={runsAddress(bookId)}>
          <IconArrowLeft size={16} aria-hidden /> {own.all}
        </Link>
        {TABS.map((one) => (
          <Link
            key={one}
            href={runAddress(bookId, runId, one)}
            aria-current={one === tab ? "page" : undefined}
          >
            {own.tabs[one]}
          </Link>
        ))}
      </nav>
      <div className="currents-body">
        {run === undefined ? (
          <p>{own.noSuchRun(runId)}</p>
        ) : (
          <>
            <h2>
              {pick(run.label, run.labelZh) || run.id}{" "}
              <small className="dim">
                {own.machines} {run.machines} · {own.ship} {run.ship} · {own.states[run.state]}
              </small>
            </h2>
            {isPlanned ? (
              <PlanProgress preparing={preparing} answering={answering} />
            ) : (
              <p>{own.notPlanned}</p>
            )}
            {!isPlanned && tab === "overview" && (
              <Body run={run} runs={runs} ground={ground} plan={null} day={day} preparing={preparing} />
            )}
            {plan !== undefined && (
              <div className={answering.working || preparing.working ? "stale" : ""}>
                <Body run={run} runs={runs} ground={ground} plan={plan} day={day} preparing={preparing} />
              </div>
            )}
          </>
        )}
      </div>
    </div>
  );
}
