import { type ComponentType, lazy, Suspense, useEffect, useRef } from "react";
import { Link, useLocation } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { serviceAddress, TABS, type Tab } from "./address.ts";
import "../wiring/currents/currents.css";
import "../wiring/currents/tables.css";

/** What stands below each tab; it loads when it is entered. */
const BODIES: Readonly<Record<Tab, ComponentType>> = {
  faults: lazy(() => import("./faults/faults-tab.tsx")),
  thing: lazy(() => import("./thing/thing-tab.tsx")),
  problems: lazy(() => import("./problems/problems-tab.tsx")),
  book: lazy(() => import("./book/book-tab.tsx")),
};

/** Service: from what does not work to why, and everything of one thing. */
export default function ServicePage() {
  const words = useWords();
  const { bookId } = useDesk();
  const [location] = useLocation();
  const [, asked] = location.slice(`/b/${bookId}/service`.length).split("/");
  const tab = TABS.find((one) => one === asked) ?? "faults";
  const tabs = useRef<HTMLElement>(null);
  useEffect(() => {
    document.title = `${words.service.tabs[tab]} · Pinwright`;
    // On a phone the tabs are pushed sideways: the one that is open comes into sight.
    tabs.current?.querySelector("[aria-current]")?.scrollIntoView({ block: "nearest", inline: "center" });
  }, [tab, words]);
  const Body = BODIES[tab];
  return (
    <div className="currents service">
      <nav className="currents-tabs" aria-label={words.shell.sections.service} ref={tabs}>
        {TABS.map((one) => (
          <Link key={one} href={serviceAddress(bookId, one)} aria-current={one === tab ? "page" : undefined}>
            {words.service.tabs[one]}
          </Link>
        ))}
      </nav>
      <Suspense fallback={<p className="page dim">{words.common.loading}</p>}>
        <Body />
      </Suspense>
    </div>
  );
}
