import { type ComponentType, lazy, Suspense, useEffect, useRef } from "react";
import { Link, useLocation } from "wouter";
import { DeviceProvider } from "../../floor/device.tsx";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { benchAddress, TABS, type Tab } from "./address.ts";
import { FactsProvider } from "./live.tsx";
import { NamesProvider } from "./names.tsx";
import "../wiring/currents/currents.css";
import "../wiring/currents/tables.css";
import "./bench.css";

/** What stands below each tab; it loads when it is entered. */
const BODIES: Readonly<Record<Tab, ComponentType>> = {
  units: lazy(() => import("./units/units-tab.tsx")),
  trace: lazy(() => import("./trace/trace-tab.tsx")),
  defects: lazy(() => import("./defects/defects-tab.tsx")),
  charts: lazy(() => import("./charts/charts-tab.tsx")),
  floor: lazy(() => import("./floor/floor-tab.tsx")),
  sites: lazy(() => import("./sites/sites-tab.tsx")),
  minutes: lazy(() => import("./minutes/minutes-tab.tsx")),
  records: lazy(() => import("./records/records-tab.tsx")),
};

/** Bench: what was built, tested and recorded, unit by unit. */
export default function BenchPage() {
  const words = useWords();
  const { bookId } = useDesk();
  const [location] = useLocation();
  const [, asked] = location.slice(`/b/${bookId}/bench`.length).split("/");
  const tab = TABS.find((one) => one === asked) ?? "units";
  const tabs = useRef<HTMLElement>(null);
  useEffect(() => {
    document.title = `${words.bench.tabs[tab]} · Pinwright`;
    // On a phone the tabs are pushed sideways: the one that is open comes into sight.
    tabs.current?.querySelector("[aria-current]")?.scrollIntoView({ block: "nearest", inline: "center" });
  }, [tab, words]);
  const Body = BODIES[tab];
  return (
    <div className="currents bench">
      <nav className="currents-tabs" aria-label={words.shell.sections.bench} ref={tabs}>
        {TABS.map((one) => (
          <Link key={one} href={benchAddress(bookId, one)} aria-current={one === tab ? "page" : undefined}>
            {words.bench.tabs[one]}
          </Link>
        ))}
      </nav>
      <DeviceProvider failed={(why) => <NoMemory why={why} />}>
        <FactsProvider>
          <NamesProvider>
            <Suspense fallback={<p className="page dim">{words.common.loading}</p>}>
              <Body />
            </Suspense>
          </NamesProvider>
        </FactsProvider>
      </DeviceProvider>
    </div>
  );
}

/** Without a memory of its own this browser could lose what somebody recorded. */
function NoMemory({ why }: { readonly why: string }) {
  const { bench } = useWords();
  return (
    <div className="page">
      <p>{bench.noMemory}</p>
      <p className="error-text">{why}</p>
    </div>
  );
}
