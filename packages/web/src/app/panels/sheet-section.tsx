import { useState } from "react";
import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { usePick, useWords } from "../words.tsx";
import { CutList } from "./cut-list.tsx";
import { PatternDrawing } from "./pattern-drawing.tsx";
import { PatternLegend } from "./pattern-legend.tsx";
import { SetupList } from "./setup-list.tsx";
import { SheetFigures } from "./sheet-figures.tsx";
import type { Cutting } from "./use-cutting.ts";

/** What of a plan is looked at: the address says it. */
export interface LookAt {
  /** Pattern, from 1. */
  readonly pattern: number;
  readonly cut: number | null;
  readonly setup: number | null;
}

/** One kind of sheet goods: how many, its settings of the fence, and each pattern with its order of cutting. */
export function SheetSection({
  cutting,
  at,
  look,
  sizes,
}: {
  readonly cutting: Cutting;
  readonly at: LookAt;
  readonly look: (at: LookAt) => void;
  readonly sizes: Entries<"panelSizes">;
}) {
  const words = useWords();
  const own = words.panels;
  const pick = usePick();
  const { bookId } = useDesk();
  const [pointed, setPointed] = useState<number | null>(null);
  const index = Math.min(Math.max(at.pattern, 1), Math.max(cutting.sheets.length, 1));
  const sheet = cutting.sheets[index - 1];
  const nameOf = (id: string): string => {
    const size = sizes.get(id);
    return size === undefined ? id : pick(size.label, size.labelZh) || id;
  };
  const name = pick(cutting.labels.en, cutting.labels.zh) || cutting.sheetPartId;
  const longestMm = Math.max(...cutting.sheets.map(({ widthMm }) => widthMm), 1);
  const shown = new Set(
    pointed !== null
      ? [pointed]
      : at.setup !== null
        ? sheet?.cuts.filter(({ setup }) => setup === at.setup).map(({ number }) => number)
        : at.cut !== null
          ? [at.cut]
          : [],
  );
  const grain = [...sizes.values()].some(
    (size) => size.sheetPartId === cutting.sheetPartId && size.grain !== "none",
  );
  const lacks = [
    { ids: cutting.tooLargeIds, says: own.tooLarge },
    { ids: cutting.unplacedIds, says: own.unplaced },
  ].filter(({ ids }) => ids.length > 0);
  return (
    <section aria-label={name}>
      <h3>{name}</h3>
      {lacks.map(({ ids, says }) => (
        <p key={ids.join(" ")} className="error-text">
          {says(ids.map(nameOf).join(", "))}{" "}
          <Link href={`/b/${bookId}/tables/stock_sheets`}>{words.tableNames.tables.stock_sheets}</Link>
        </p>
      ))}
      {sheet !== undefined && (
        <>
          <SheetFigures cutting={cutting} />
          <nav className="pattern-tabs" aria-label={own.patterns}>
            <span>{own.patterns}</span>
            {cutting.sheets.map(({ copies }, i) => (
              <button
                // biome-ignore lint/suspicious/noArrayIndexKey: a pattern is its place in the plan
                key={i}
                type="button"
                aria-pressed={i + 1 === index}
                onClick={() => look({ ...at, pattern: i + 1, cut: null })}
              >
                {own.patternTab(i + 1, copies)}
              </button>
            ))}
          </nav>
          <div className="pattern-and-cuts">
            <div className="pattern-frame">
              <h4>
                {own.pattern(index, sheet.copies)}{" "}
                <small className="dim">
                  {sheet.offcut ? `${own.offcutStock}: ` : ""}
                  {own.ofStock(sheet.stockId, sheet.widthMm, sheet.heightMm)}
                </small>
              </h4>
              <PatternDrawing
                sheet={sheet}
                index={index}
                longestMm={longestMm}
                shown={shown}
                grain={grain}
                sizes={sizes}
              />
              <PatternLegend grain={grain} />
            </div>
            <div className="pattern-order">
              <h4>{own.order}</h4>
              <p className="dim">{own.orderHint}</p>
              <CutList
                sheet={sheet}
                shown={shown}
                point={setPointed}
                choose={(cut) => {
                  // Whoever goes on by keyboard is not held where the pointer happens to lie.
                  setPointed(null);
                  look({ pattern: index, cut, setup: null });
                }}
                sizes={sizes}
              />
            </div>
            <div className="pattern-setups">
              <h4>{own.allSettings}</h4>
              <p className="dim">{own.settingsHint}</p>
              <SetupList
                setups={cutting.setups}
                chosen={at.setup}
                choose={(setup) => {
                  const here = setup?.work.some((one) => one.sheet === index - 1) ?? true;
                  const pattern = here ? index : (setup?.work[0]?.sheet ?? 0) + 1;
                  look({ pattern, cut: null, setup: setup?.number ?? null });
                }}
              />
            </div>
          </div>
        </>
      )}
    </section>
  );
}
