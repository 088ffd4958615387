import { useEffect } from "react";
import { Link, useLocation } from "wouter";
import { useDesk, useView } from "../book/desk.tsx";
import { OpenCount } from "../findings/section-findings.tsx";
import { useWords } from "../words.tsx";
import { TABS, tabAddress } from "./address.ts";
import { CuttingTab } from "./cutting-tab.tsx";
import { FitsTab } from "./fits-tab.tsx";
import { NoPanels } from "./no-panels.tsx";
import { PaintTab } from "./paint-tab.tsx";
import { SizesTab } from "./sizes-tab.tsx";
import "../wiring/currents/currents.css";
import "../wiring/currents/tables.css";
import "../steps/steps.css";
import "./panels.css";

/** Panels: what they are cut to, how the sheets are cut, whether the box fits, and how it is painted. */
export default function PanelsPage() {
  const words = useWords();
  const { bookId } = useDesk();
  const [location] = useLocation();
  const sizes = useView("panelSizes", null);
  const fits = useView("panelFits", null);
  const findings = useView("panelFindings", null);
  const [, asked] = location.slice(`/b/${bookId}/panels`.length).split("/");
  const tab = TABS.find((one) => one === asked) ?? "sizes";
  useEffect(() => {
    document.title = `${words.shell.sections.panels}: ${words.panels.tabs[tab]} · Pinwright`;
  }, [tab, words]);
  if (sizes === null || fits === null || findings === null)
    return <p className="page dim">{words.common.loading}</p>;
  return (
    <div className="currents panels">
      <nav className="currents-tabs" aria-label={words.shell.sections.panels}>
        {TABS.map((one) => (
          <Link key={one} href={tabAddress(bookId, one)} aria-current={one === tab ? "page" : undefined}>
            {words.panels.tabs[one]}
            {one === "sizes" && <OpenCount findings={findings} />}
          </Link>
        ))}
      </nav>
      <div className="currents-body">
        {tab === "sizes" && <SizesTab sizes={sizes} findings={findings} />}
        {tab === "cutting" && (sizes.size === 0 ? <NoPanels /> : <CuttingTab sizes={sizes} />)}
        {tab === "fits" && <FitsTab fits={fits} sizes={sizes} />}
        {tab === "paint" && <PaintTab />}
      </div>
    </div>
  );
}
