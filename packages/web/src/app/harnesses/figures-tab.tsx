import type { ReactNode } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useMay } from "../session/session.tsx";
import { fixed, mmText } from "../wiring/number-text.ts";
import { useWords } from "../words.tsx";
import { DataTable } from "./data-table.tsx";
import { SettlePanel } from "./settle-panel.tsx";

type Figures = ViewEntry<"harness">;

/** What a harness costs the shop, how near that is to the best there is, and its bundles. */
export function FiguresTab({ figures }: { readonly figures: Figures }) {
  const words = useWords().harnesses.figures;
  const maySettle = useMay("lead");
  const { board, work } = figures;
  return (
    <div className="figures">
      <dl className="figure-list">
        <Figure term={words.work} big={`${fixed(figures.minutes, 1)} min`}>
          {words.workSays(
            fixed(figures.minutes, 1),
            fixed(figures.routeMetres, 1),
            fixed(work.value - figures.minutes, 1),
            fixed(work.value, 1),
          )}{" "}
          {figures.isKept
            ? words.isKept
            : `${words.bound(fixed(work.lowerBound, 1))} ${gapText(work.gap, words.best, words.gap)}`}{" "}
          {words.made(figures.breakouts, figures.ties, figures.insertions, figures.splices)}.
        </Figure>
        <Figure term={words.cutting} big={`${fixed(figures.metres, 2)} m`}>
          {words.cuttingSays(
            figures.wires,
            fixed(figures.metres, 2),
            figures.reels,
            fixed(figures.cutMinutes, 1),
          )}
        </Figure>
        <Figure term={words.board} big={`${mmText(board.widthMm)} × ${mmText(board.heightMm)} mm`}>
          {words.boardSays(
            mmText(board.widthMm),
            mmText(board.heightMm),
            fixed(board.area.value, 2),
            fixed(board.area.lowerBound, 2),
          )}{" "}
          {board.crossings > 0 && <span className="error-text">{words.crossings(board.crossings)} </span>}
          {board.overlaps > 0 && <span className="error-text">{words.overlaps(board.overlaps)}</span>}
        </Figure>
        <Figure term={words.swaps} big={String(figures.swaps)}>
          {words.swapsSay(figures.swaps)}
        </Figure>
      </dl>
      {figures.unreached.length > 0 && (
        <p className="error-text">{words.unreached(figures.unreached.join(", "))}</p>
      )}
      {maySettle && <SettlePanel harnessId={figures.id} />}
      <h3>{words.bundles}</h3>
      <DataTable
        caption={words.bundles}
        rows={figures.bundles}
        rowKey={(row) => row.id}
        columns={[
          { key: "branch", header: words.branch, value: (row) => row.id },
          number("length", words.lengthMm, (row) => row.lengthMm, mmText),
          number("wires", words.wires, (row) => row.wires, String),
          number(
            "laid",
            words.laid,
            (row) => row.laidMm,
            (mm) => fixed(mm, 1),
          ),
          {
            ...number(
              "packed",
              words.packed,
              (row) => row.packedMm,
              (mm) => fixed(mm, 1),
            ),
            minor: true,
          },
          {
            ...number(
              "rule",
              words.rule,
              (row) => row.ruleMm,
              (mm) => fixed(mm, 1),
            ),
            minor: true,
          },
          number("ties", words.ties, (row) => row.ties, String),
          { key: "tie", header: words.tie, value: (row) => row.tieId ?? "–", minor: true },
          { key: "sleeve", header: words.sleeve, value: (row) => row.sleeveId ?? "–", minor: true },
        ]}
      />
    </div>
  );
}

type Bundle = Figures["bundles"][number];

const number = (
  key: string,
  header: string,
  value: (row: Bundle) => number,
  text: (value: number) => string,
) => ({
  key,
  header,
  value,
  text: (row: Bundle) => text(value(row)),
  cell: (row: Bundle) => text(value(row)),
  align: "end" as const,
});

/** How far a result may be from the best there is, in plain words. */
function gapText(gap: number, best: string, some: (percent: string) => string): string {
  return gap < 0.0005 ? best : some(fixed(gap * 100, 1));
}

function Figure({
  term,
  big,
  children,
}: {
  readonly term: string;
  readonly big: string;
  readonly children: ReactNode;
}) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>
        <strong>{big}</strong>
        <p>{children}</p>
      </dd>
    </div>
  );
}
