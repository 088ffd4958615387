import { useEffect } from "react";
import { Link, useLocation } from "wouter";
import { useDesk, useOne, useView } from "../book/desk.tsx";
import { OpenCount } from "../findings/section-findings.tsx";
import { useWords } from "../words.tsx";
import { TABS, tabAddress } from "./address.ts";
import { LearningTab } from "./learning-tab.tsx";
import { OrderTab } from "./order-tab.tsx";
import { StationsTab } from "./stations-tab.tsx";
import { TableTab } from "./table-tab.tsx";
import "../wiring/currents/currents.css";
import "../screws/screws.css";
import "./steps.css";

/** The steps of assembly: shared out to people, as a table, over a run, and in their order. */
export default function StepsPage() {
  const words = useWords();
  const { bookId } = useDesk();
  const [location] = useLocation();
  const steps = useView("stepLines", null);
  const figures = useOne("stepFigures", null);
  const findings = useView("stepFindings", null);
  const [, asked] = location.slice(`/b/${bookId}/steps`.length).split("/");
  const tab = TABS.find((one) => one === asked) ?? "stations";
  useEffect(() => {
    document.title = `${words.steps.tabs[tab]} · Pinwright`;
  }, [tab, words]);
  if (steps === null || figures === undefined || findings === null)
    return <p className="page dim">{words.common.loading}</p>;
  return (
    <div className="currents steps">
      <nav className="currents-tabs" aria-label={words.shell.sections.steps}>
        {TABS.map((one) => (
          <Link key={one} href={tabAddress(bookId, one)} aria-current={one === tab ? "page" : undefined}>
            {words.steps.tabs[one]}
            {one === "order" && <OpenCount findings={findings} />}
          </Link>
        ))}
      </nav>
      <div className="currents-body">
        {steps.size === 0 && tab !== "order" ? (
          <Nothing />
        ) : tab === "stations" ? (
          <StationsTab steps={steps} figures={figures} />
        ) : tab === "table" ? (
          <TableTab steps={steps} figures={figures} />
        ) : tab === "learning" ? (
          <LearningTab figures={figures} />
        ) : (
          <OrderTab figures={figures} findings={findings} />
        )}
      </div>
    </div>
  );
}

/** What belongs here, and where it is put in. */
function Nothing() {
  const words = useWords();
  const { bookId } = useDesk();
  const to = (table: "fasteners" | "mechanisms" | "steps") => (
    <Link href={`/b/${bookId}/tables/${table}`}>{words.tableNames.tables[table]}</Link>
  );
  return (
    <>
      <h2>{words.shell.sections.steps}</h2>
      <p>{words.steps.empty}</p>
      <p className="way-links">
        {to("fasteners")} {to("mechanisms")} {to("steps")}
      </p>
    </>
  );
}
