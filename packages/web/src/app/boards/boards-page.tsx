import { useEffect } from "react";
import { Link, Redirect, useLocation, useSearchParams } from "wouter";
import { useDesk, useView } from "../book/desk.tsx";
import { OpenCount } from "../findings/section-findings.tsx";
import { usePick, useWords } from "../words.tsx";
import { boardAddress, TABS, tabAddress } from "./address.ts";
import { BoardPage } from "./board-page.tsx";
import { RegisterTab } from "./register-tab.tsx";
import { SolderTab } from "./solder-tab.tsx";
import { TestsTab } from "./tests-tab.tsx";
import "../wiring/currents/currents.css";
import "../wiring/currents/tables.css";
import "../steps/steps.css";
import "../panels/panels.css";
import "./boards.css";

/** Boards: which there are, how each kind is stuffed and kitted, how they are soldered and tested. */
export default function BoardsPage() {
  const words = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const [location] = useLocation();
  const [params] = useSearchParams();
  const register = useView("boardRegister", null);
  const findings = useView("boardFindings", null);
  const [, asked = ""] = location.slice(`/b/${bookId}/boards`.length).split("/");
  const tab = TABS.find((one) => one === asked) ?? (asked === "" ? "register" : null);
  const typeId = decodeURIComponent(asked);
  const kind = register?.get(typeId);
  const title =
    tab === null
      ? kind === undefined
        ? typeId
        : pick(kind.label, kind.labelZh) || typeId
      : words.boards.tabs[tab];
  useEffect(() => {
    document.title = `${words.shell.sections.boards}: ${title} · Pinwright`;
  }, [title, words]);
  const sought = params.get("id");
  if (asked === "" && sought !== null) return <Redirect to={boardAddress(bookId, sought)} replace />;
  if (register === null || findings === null) return <p className="page dim">{words.common.loading}</p>;
  return (
    <div className="currents boards">
      <nav className="currents-tabs" aria-label={words.shell.sections.boards}>
        {TABS.map((one) => (
          <Link key={one} href={tabAddress(bookId, one)} aria-current={one === tab ? "page" : undefined}>
            {words.boards.tabs[one]}
            {one === "register" && <OpenCount findings={findings} />}
          </Link>
        ))}
      </nav>
      <div className="currents-body">
        {tab === "register" && <RegisterTab register={register} findings={findings} />}
        {tab === "solder" && <SolderTab register={register} />}
        {tab === "tests" && <TestsTab register={register} />}
        {tab === null && <BoardPage key={typeId} typeId={typeId} kind={kind} findings={findings} />}
      </div>
    </div>
  );
}
