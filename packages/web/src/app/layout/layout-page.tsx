import { Button } from "@mantine/core";
import { useEffect, useRef } from "react";
import { Link } from "wouter";
import { useDesk, useOne, useView } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import "./layout.css";
import { PanelWorkplace } from "./panel-workplace.tsx";
import type { Side } from "./scene.ts";
import { useLayoutPlace } from "./use-place.ts";

/** The drawing of the machine's panels: the address says which one, from which side, and what is selected. */
export default function LayoutPage() {
  const words = useWords();
  const { bookId } = useDesk();
  const place = useLayoutPlace();
  const panels = useView("layoutPanels", null);
  const [first = ""] = place.selected;
  const about = useOne("layoutAbout", { id: place.panelId === null ? first : "" });
  const aboutKnown = useView("layoutAbout", { id: first }) !== null;
  /** What a link led to: it is brought into sight once it is on the drawing. */
  const toShow = useRef<readonly string[]>([]);
  const { panelId, selected, go } = place;
  useEffect(() => {
    if (panelId !== null || panels === null || panels.size === 0) return;
    if (first !== "" && !aboutKnown) return;
    const wanted = about?.panelId == null ? undefined : panels.get(about.panelId);
    const busiest = [...panels.values()].toSorted((a, b) => b.top + b.under - a.top - a.under)[0];
    const panel = wanted ?? busiest;
    if (panel === undefined) return;
    const side: Side =
      wanted !== undefined && about?.kind !== "panel"
        ? (about?.side ?? "top")
        : panel.under > panel.top
          ? "under"
          : "top";
    toShow.current = selected;
    go(panel.id, side, selected, true);
  }, [panelId, panels, first, about, aboutKnown, selected, go]);
  if (panels === null) return <p className="page dim">{words.common.loading}</p>;
  if (panels.size === 0)
    return (
      <div className="page">
        <p>{words.layout.noPanels}</p>
        <Button component={Link} href={`/b/${bookId}/tables/panels`} variant="default">
          {words.layout.toTables}
        </Button>
      </div>
    );
  const panel = panelId === null ? undefined : panels.get(panelId);
  if (panel === undefined)
    return panelId === null ? null : (
      <div className="page">
        <p>{words.layout.noSuchId(panelId)}</p>
        <Button component={Link} href={`/b/${bookId}/layout`} variant="default">
          {words.shell.sections.layout}
        </Button>
      </div>
    );
  return <PanelWorkplace panel={panel} panels={panels} place={place} toShow={toShow} />;
}
