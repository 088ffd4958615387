import { useEffect } from "react";
import { useLocation, useSearchParams } from "wouter";
import { useDesk, useOne, useView } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { TABS } from "./address.ts";
import { CompareRuns } from "./compare-runs.tsx";
import { RunList } from "./run-list.tsx";
import { RunPage } from "./run-page.tsx";
import { usePrepared } from "./use-prepared.ts";
import "../wiring/currents/currents.css";
import "../wiring/currents/tables.css";
import "../parts/parts.css";
import "./runs.css";

/** Runs: what a batch needs, when, and what it costs. */
export default function RunsPage() {
  const words = useWords();
  const { bookId } = useDesk();
  const [location] = useLocation();
  const [params] = useSearchParams();
  const runs = useView("runs", null);
  const ground = useOne("planGround", null);
  const preparing = usePrepared();
  const [, asked = "", askedTab] = location.slice(`/b/${bookId}/runs`.length).split("/");
  const runId = decodeURIComponent(asked);
  const tab = TABS.find((one) => one === askedTab) ?? "overview";
  const [a, b] = [params.get("a"), params.get("b")];
  useEffect(() => {
    document.title = `${runId === "" ? words.runs.title : words.runs.tabs[tab]} · Pinwright`;
  }, [runId, tab, words]);
  if (runs === null || ground === undefined) return <p className="page dim">{words.common.loading}</p>;
  if (runId !== "")
    return (
      <RunPage
        key={runId}
        runId={runId}
        run={runs.get(runId)}
        tab={tab}
        runs={runs}
        ground={ground}
        preparing={preparing}
      />
    );
  return (
    <div className="currents runs">
      <div className="currents-body">
        {a !== null && b !== null ? (
          <CompareRuns a={a} b={b} runs={runs} preparing={preparing} />
        ) : (
          <RunList runs={runs} ground={ground} preparing={preparing} />
        )}
      </div>
    </div>
  );
}
