import { Button } from "@mantine/core";
import { useEffect } from "react";
import { Link } from "wouter";
import { useDesk, useOne, useView } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { ScrewsWorkplace } from "./screws-workplace.tsx";
import { useScrewsPlace } from "./use-screws-place.ts";
import "../layout/layout.css";
import "./screws.css";

/** Screws over the drawing of a panel side, step by step: the address says which panel, side, step, screw and type. */
export default function ScrewsPage() {
  const words = useWords();
  const { bookId } = useDesk();
  const place = useScrewsPlace();
  const panels = useView("layoutPanels", null);
  const steps = useView("stepLines", null);
  const { panelId, stepId, screwId, typeId, go } = place;
  const known = useView("screwAbout", { id: screwId ?? "" });
  const about = useOne("screwAbout", { id: screwId ?? "" });
  useEffect(() => {
    document.title = `${words.shell.sections.screws} · Pinwright`;
  }, [words]);
  useEffect(() => {
    if (panelId !== null || panels === null || steps === null || panels.size === 0) return;
    if (screwId !== null && known === null) return;
    const first = [...steps.values()].find((step) => step.panelId !== null && step.fastenerIds.length > 0);
    const step = steps.get(stepId ?? about?.stepId ?? "") ?? (about === undefined ? first : undefined);
    const busiest = [...panels.values()].toSorted((a, b) => b.top + b.under - a.top - a.under)[0];
    const wanted = about?.panelId ?? step?.panelId ?? "";
    const panel = panels.get(wanted) ?? busiest;
    if (panel === undefined) return;
    const side = about?.side ?? (step?.panelId === panel.id ? step.side : "under");
    go({ panelId: panel.id, side, stepId: step?.id ?? null, screwId, typeId });
  }, [panelId, panels, steps, stepId, screwId, typeId, known, about, go]);
  if (panels === null || steps === null) return <p className="page dim">{words.common.loading}</p>;
  if (panels.size === 0)
    return (
      <div className="page">
        <h2>{words.shell.sections.screws}</h2>
        <p>{words.layout.noPanels}</p>
        <Button component={Link} href={`/b/${bookId}/tables/panels`} variant="default">
          {words.layout.toTables}
        </Button>
      </div>
    );
  if (panelId === null) return null;
  if (!panels.has(panelId))
    return (
      <div className="page">
        <p>{words.layout.noSuchId(panelId)}</p>
        <Button component={Link} href={`/b/${bookId}/screws`} variant="default">
          {words.shell.sections.screws}
        </Button>
      </div>
    );
  return <ScrewsWorkplace panels={panels} steps={steps} place={place} panelId={panelId} />;
}
