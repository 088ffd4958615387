import { Button } from "@mantine/core";
import { IconArrowLeft, IconChevronLeft, IconChevronRight, IconPrinter } from "@tabler/icons-react";
import { useState } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { useMay } from "../session/session.tsx";
import { fixed } from "../wiring/number-text.ts";
import { usePick, useWords } from "../words.tsx";
import { ContinuityTab } from "./continuity-tab.tsx";
import { FiguresTab } from "./figures-tab.tsx";
import { FindingCounts } from "./harness-list.tsx";
import { HousingsTab } from "./housings-tab.tsx";
import { PinboardTab } from "./pinboard-tab.tsx";
import { PrintDialog } from "./print-dialog.tsx";
import { SheetsTab } from "./sheets-tab.tsx";
import { CutTab, FromToTab } from "./wire-tabs.tsx";

export const TABS = ["pinboard", "housings", "from-to", "cut", "continuity", "figures", "sheets"] as const;
export type Tab = (typeof TABS)[number];

/** One harness: its head, and one of its tabs. */
export function OneHarness({
  figures,
  tab,
  previousId,
  nextId,
}: {
  readonly figures: ViewEntry<"harness">;
  readonly tab: Tab;
  readonly previousId: string | null;
  readonly nextId: string | null;
}) {
  const words = useWords().harnesses;
  const pick = usePick();
  const { bookId } = useDesk();
  const mayPrint = useMay("viewer");
  const [printing, setPrinting] = useState(false);
  const base = `/b/${bookId}/harnesses`;
  const name = `H${figures.number} ${pick(figures.label.en, figures.label.zh)}`;
  const to = (id: string): string => `${base}/${encodeURIComponent(id)}/${tab}`;
  return (
    <div className="harness" data-tab={tab}>
      <header className="harness-head">
        <Link href={base} className="harness-step" aria-label={words.all} title={words.all}>
          <IconArrowLeft size={20} />
        </Link>
        {previousId !== null && (
          <Link
            href={to(previousId)}
            className="harness-step"
            aria-label={words.previous}
            title={words.previous}
          >
            <IconChevronLeft size={20} />
          </Link>
        )}
        <span className="harness-no">H{figures.number}</span>
        <h2>{pick(figures.label.en, figures.label.zh)}</h2>
        {nextId !== null && (
          <Link href={to(nextId)} className="harness-step" aria-label={words.next} title={words.next}>
            <IconChevronRight size={20} />
          </Link>
        )}
        <span>{words.facts(figures.wires, fixed(figures.metres, 2), fixed(figures.minutes, 1))}</span>
        <Link href={`/b/${bookId}/findings?id=${encodeURIComponent(figures.id)}`}>
          <FindingCounts of={figures} />
        </Link>
        <span style={{ flex: 1 }} />
        {mayPrint && (
          <Button leftSection={<IconPrinter size={18} />} onClick={() => setPrinting(true)}>
            {words.print.open}
          </Button>
        )}
      </header>
      <nav className="harness-tabs" aria-label={name}>
        {TABS.map((one) => (
          <Link
            key={one}
            href={`${base}/${encodeURIComponent(figures.id)}/${one}`}
            replace
            aria-current={one === tab ? "page" : undefined}
          >
            {words.tabs[one]}
          </Link>
        ))}
      </nav>
      <div className="harness-body">
        <TabBody key={figures.id} figures={figures} tab={tab} />
      </div>
      {printing && <PrintDialog harnessId={figures.id} name={name} onClose={() => setPrinting(false)} />}
    </div>
  );
}

function TabBody({ figures, tab }: { readonly figures: ViewEntry<"harness">; readonly tab: Tab }) {
  switch (tab) {
    case "pinboard":
      return <PinboardTab harnessId={figures.id} />;
    case "housings":
      return <HousingsTab harnessId={figures.id} />;
    case "from-to":
      return <FromToTab harnessId={figures.id} />;
    case "cut":
      return <CutTab harnessId={figures.id} />;
    case "continuity":
      return <ContinuityTab harnessId={figures.id} number={figures.number} />;
    case "figures":
      return <FiguresTab figures={figures} />;
    case "sheets":
      return <SheetsTab harnessId={figures.id} />;
  }
}
