import { useEffect } from "react";
import { Link, useLocation, useSearchParams } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { Ways } from "../ways.tsx";
import { CoilsTab } from "./coils-tab.tsx";
import { ConductorsTab } from "./conductors-tab.tsx";
import { FusePage } from "./fuse-page.tsx";
import { FusesTab } from "./fuses-tab.tsx";
import { LadderTab } from "./ladder-tab.tsx";
import { LoadsTab } from "./loads-tab.tsx";
import { SuppliesTab } from "./supplies-tab.tsx";
import { SupplyPage } from "./supply-page.tsx";
import { TABS, type Tab, useCurrents } from "./use-currents.ts";
import "./currents.css";

/** Currents and volts of the machine, each against what it may be. */
export default function CurrentsPage() {
  const { electric: words } = useWords();
  const { bookId } = useDesk();
  const [location] = useLocation();
  const [search] = useSearchParams();
  const address = useCurrents();
  const [, asked] = location.slice(`/b/${bookId}/wiring/currents`.length).split("/");
  const tab = TABS.find((one) => one === asked) ?? "supplies";
  const id = search.get("id");
  useEffect(() => {
    document.title = `${id ?? words.tabs[tab]} · Pinwright`;
  }, [id, tab, words]);
  return (
    <div className="currents">
      <Ways current="currents" />
      <nav className="currents-tabs" aria-label={words.title}>
        {TABS.map((one) => (
          <Link key={one} href={address(one)} aria-current={one === tab ? "page" : undefined}>
            {words.tabs[one]}
          </Link>
        ))}
      </nav>
      <div className="currents-body">
        <TabBody tab={tab} id={id} />
      </div>
    </div>
  );
}

function TabBody({ tab, id }: { readonly tab: Tab; readonly id: string | null }) {
  switch (tab) {
    case "supplies":
      return id === null ? <SuppliesTab /> : <SupplyPage id={id} />;
    case "fuses":
      return id === null ? <FusesTab /> : <FusePage id={id} />;
    case "conductors":
      return <ConductorsTab />;
    case "loads":
      return <LoadsTab />;
    case "coils":
      return <CoilsTab />;
    case "ladder":
      return <LadderTab id={id} />;
  }
}
