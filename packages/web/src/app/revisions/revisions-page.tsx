import { type ComponentType, lazy, Suspense, useEffect, useRef } from "react";
import { Link, useLocation } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { revisionsAddress, TABS, type Tab } from "./address.ts";
import "../wiring/currents/currents.css";
import "../wiring/currents/tables.css";

/** What stands below each tab; it loads when it is entered. */
const BODIES: Readonly<Record<Tab, ComponentType>> = {
  releases: lazy(() => import("./releases/releases-tab.tsx")),
  compare: lazy(() => import("./compare/compare-tab.tsx")),
};

/** Revisions: what was released, and what differs. */
export default function RevisionsPage() {
  const words = useWords();
  const { bookId } = useDesk();
  const [location] = useLocation();
  const [, asked] = location.slice(`/b/${bookId}/revisions`.length).split("/");
  const tab = TABS.find((one) => one === asked) ?? "releases";
  const tabs = useRef<HTMLElement>(null);
  useEffect(() => {
    document.title = `${words.revisions.tabs[tab]} · Pinwright`;
    // On a phone the tabs are pushed sideways: the one that is open comes into sight.
    tabs.current?.querySelector("[aria-current]")?.scrollIntoView({ block: "nearest", inline: "center" });
  }, [tab, words]);
  const Body = BODIES[tab];
  return (
    <div className="currents revisions">
      <nav className="currents-tabs" aria-label={words.shell.sections.revisions} ref={tabs}>
        {TABS.map((one) => (
          <Link
            key={one}
            href={revisionsAddress(bookId, one)}
            aria-current={one === tab ? "page" : undefined}
          >
            {words.revisions.tabs[one]}
          </Link>
        ))}
      </nav>
      <Suspense fallback={<p className="page dim">{words.common.loading}</p>}>
        <Body />
      </Suspense>
    </div>
  );
}
