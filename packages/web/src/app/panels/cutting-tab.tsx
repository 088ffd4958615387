import { Button } from "@mantine/core";
import { useState } from "react";
import { Link, useSearchParams } from "wouter";
import { useDesk, useView } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { MachinesField } from "../book/machines-field.tsx";
import { useAskedCount } from "../book/use-asked-count.ts";
import { SheetLinks } from "../sheets/sheet-links.tsx";
import { usePick, useWords } from "../words.tsx";
import { KeepOffcuts } from "./keep-offcuts.tsx";
import { SheetSection } from "./sheet-section.tsx";
import { type CuttingWork, useCutting } from "./use-cutting.ts";

export const MOST_MACHINES = 1000;

/** Sheet goods, those that most panels are cut from first. */
function sheetParts(sizes: Entries<"panelSizes">): readonly string[] {
  const counts = new Map<string, number>();
  for (const { sheetPartId } of sizes.values())
    if (sheetPartId !== null) counts.set(sheetPartId, (counts.get(sheetPartId) ?? 0) + 1);
  return [...counts].toSorted(([, a], [, b]) => b - a).map(([id]) => id);
}

/** How the sheets are cut for a number of machines. */
export function CuttingTab({ sizes }: { readonly sizes: Entries<"panelSizes"> }) {
  const words = useWords();
  const own = words.panels;
  const pick = usePick();
  const { bookId } = useDesk();
  const [machines, setMachines] = useAskedCount("machines", 1, MOST_MACHINES);
  const basis = useView("cuttingBasis", null);
  const [params, setParams] = useSearchParams();
  const [kept, setKept] = useState<number | null>(null);
  const partIds = sheetParts(sizes);
  const work = useCutting(partIds, machines, basis);
  const partId = partIds.find((id) => id === params.get("sheet")) ?? partIds[0] ?? null;
  const cutting = partId === null ? undefined : work.done.get(partId);
  const put = (next: Readonly<Record<string, string | number | null>>): void =>
    setParams(
      (before) => {
        const after = new URLSearchParams(before);
        for (const [name, value] of Object.entries(next))
          if (value === null) after.delete(name);
          else after.set(name, String(value));
        return after;
      },
      { replace: true },
    );
  const asked = (name: string): number | null => {
    const value = Number(params.get(name) ?? "");
    return Number.isInteger(value) && value > 0 ? value : null;
  };
  const labelOf = (id: string): string => {
    const sheet = [...sizes.values()].find(({ sheetPartId }) => sheetPartId === id)?.sheet;
    return sheet == null ? id : pick(sheet.label, sheet.labelZh) || id;
  };
  return (
    <>
      <div className="steps-head">
        <h2>{own.cuttingTitle}</h2>
        <Progress work={work} of={partIds.length} />
      </div>
      <p className="dim">
        {own.cuttingAbout(basis?.get("")?.kerfMm ?? 0)}{" "}
        <Link href={`/b/${bookId}/tables/shop_settings?id=saw_kerf_mm`}>{own.shopSettings}</Link>
      </p>
      <div className="question">
        <MachinesField label={own.machines} value={machines} most={MOST_MACHINES} onCount={setMachines} />
      </div>
      <nav className="sheet-tabs" aria-label={own.sheets}>
        {partIds.map((id) => (
          <button
            key={id}
            type="button"
            aria-pressed={id === partId}
            onClick={() => put({ sheet: id, pattern: null, cut: null, setup: null })}
          >
            {labelOf(id)}
          </button>
        ))}
      </nav>
      <div className={work.isCurrent ? "" : "stale"}>
        {cutting === undefined ? (
          !work.working && <p className="dim">{own.notPlanned}</p>
        ) : (
          <SheetSection
            key={cutting.sheetPartId}
            cutting={cutting}
            at={{ pattern: asked("pattern") ?? 1, cut: asked("cut"), setup: asked("setup") }}
            look={({ pattern, cut, setup }) => put({ pattern: pattern === 1 ? null : pattern, cut, setup })}
            sizes={sizes}
          />
        )}
      </div>
      <p className="caution">{own.sawCaution}</p>
      <SheetLinks
        title={own.print}
        kinds={["cutting-plan", "cutting-order", "panel-labels", "panel-drawing"]}
        machines={machines}
      />
      {!work.working && !work.stopped && work.isCurrent && (
        <KeepOffcuts done={work.done} stock={basis?.get("")?.stock ?? []} onKept={setKept} />
      )}
      {kept !== null && <p role="status">{own.kept(kept)}</p>}
    </>
  );
}

/** That plans are being looked for, and a way to leave it at those that are there. */
function Progress({ work, of }: { readonly work: CuttingWork; readonly of: number }) {
  const words = useWords();
  const own = words.panels;
  const done = work.isCurrent ? work.done.size : 0;
  return (
    <div className="plan-progress" role="status">
      {work.working && (
        <>
          <progress value={done} max={of} aria-label={own.looking(done, of)} />
          <span>{own.looking(Math.min(done, of - 1), of)}</span>
          <Button variant="default" size="compact-sm" onClick={work.stop}>
            {words.common.cancel}
          </Button>
        </>
      )}
      {work.stopped && (
        <>
          <span>{own.stopped}</span>
          <Button variant="default" size="compact-sm" onClick={work.again}>
            {own.again}
          </Button>
        </>
      )}
      {work.failed !== "" && <span className="error-text">{work.failed}</span>}
    </div>
  );
}
