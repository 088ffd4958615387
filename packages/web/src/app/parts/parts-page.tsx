import { useEffect } from "react";
import { Link, useLocation } from "wouter";
import { useDesk, useView } from "../book/desk.tsx";
import { OutsideTab } from "../outside/outside-tab.tsx";
import { useWords } from "../words.tsx";
import { TABS, tabAddress } from "./address.ts";
import { BillTab } from "./bill-tab.tsx";
import { StockTab } from "./stock-tab.tsx";
import { WaysTab } from "./ways-tab.tsx";
import "../wiring/currents/currents.css";
import "../wiring/currents/tables.css";
import "./parts.css";

/** Parts: the bill, what they cost, where they come from, and what lies on the shelf. */
export default function PartsPage() {
  const words = useWords();
  const { bookId } = useDesk();
  const [location] = useLocation();
  const nodes = useView("billNodes", null);
  const [, asked] = location.slice(`/b/${bookId}/parts`.length).split("/");
  const tab = TABS.find((one) => one === asked) ?? "bill";
  useEffect(() => {
    document.title = `${words.parts.tabs[tab]} · Pinwright`;
  }, [tab, words]);
  return (
    <div className="currents parts">
      <nav className="currents-tabs" aria-label={words.shell.sections.parts}>
        {TABS.map((one) => (
          <Link key={one} href={tabAddress(bookId, one)} aria-current={one === tab ? "page" : undefined}>
            {words.parts.tabs[one]}
          </Link>
        ))}
      </nav>
      <div className="currents-body">
        {nodes === null ? (
          <p className="dim">{words.common.loading}</p>
        ) : tab === "bill" ? (
          <BillTab nodes={nodes} />
        ) : tab === "ways" ? (
          <WaysTab />
        ) : tab === "stock" ? (
          <StockTab />
        ) : (
          <OutsideTab />
        )}
      </div>
    </div>
  );
}
