import { Link, useSearchParams } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { SectionFindings } from "../findings/section-findings.tsx";
import { DataTable } from "../harnesses/data-table.tsx";
import { partAddress } from "../parts/address.ts";
import { SheetLinks } from "../sheets/sheet-links.tsx";
import { usePick, useWords } from "../words.tsx";
import { NoPanels } from "./no-panels.tsx";

type Size = ViewEntry<"panelSizes">;

/** How many sizes are cut at each setting of the fence. */
function settingCounts(sizes: Entries<"panelSizes">): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { settingX, settingY } of sizes.values())
    for (const name of [settingX, settingY]) if (name !== null) counts.set(name, (counts.get(name) ?? 0) + 1);
  return counts;
}

/** Every panel with what it is cut to, from which sheet and how exactly. */
export function SizesTab({
  sizes,
  findings,
}: {
  readonly sizes: Entries<"panelSizes">;
  readonly findings: Entries<"panelFindings">;
}) {
  const words = useWords();
  const own = words.panels;
  const pick = usePick();
  const { bookId } = useDesk();
  const [params, setParams] = useSearchParams();
  const id = params.get("id");
  const chosen = sizes.get(id ?? "");
  if (sizes.size === 0 && findings.size === 0) return <NoPanels />;
  const counts = settingCounts(sizes);
  const settings = ({ settingX, settingY }: Size) =>
    ([["x", settingX] as const, ["y", settingY] as const] as const).flatMap(([direction, name]) =>
      name === null ? [] : [{ direction, name, others: (counts.get(name) ?? 1) - 1 }],
    );
  const tolerances = (size: Size): readonly string[] => {
    const x = own.toleranceOf("x", size.minusXMm, size.plusXMm);
    const y = own.toleranceOf("y", size.minusYMm, size.plusYMm);
    return [x, y];
  };
  return (
    <>
      <h2>{own.sizesTitle}</h2>
      <p className="dim">{own.sizesAbout}</p>
      {id !== null && (
        <p>
          {chosen === undefined && own.noSuchPanel(id)}{" "}
          <button type="button" className="link-button" onClick={() => setParams({}, { replace: true })}>
            {own.showAll}
          </button>
        </p>
      )}
      <DataTable
        caption={own.sizesTitle}
        rows={chosen === undefined ? [...sizes.values()] : [chosen]}
        rowKey={(size) => size.panelId}
        columns={[
          {
            key: "panel",
            header: own.panel,
            value: (size) => pick(size.label, size.labelZh) || size.panelId,
            cell: (size) => (
              <>
                <Link
                  href={`/b/${bookId}/layout/${encodeURIComponent(size.panelId)}/top`}
                  title={size.panelId}
                >
                  {pick(size.label, size.labelZh) || size.panelId}
                </Link>
                <small>
                  <Link href={`/b/${bookId}/tables/panels?id=${encodeURIComponent(size.panelId)}`}>
                    {own.inTable}
                  </Link>
                </small>
              </>
            ),
          },
          {
            key: "drawn",
            header: own.drawn,
            value: (size) => size.drawnWidthMm * size.drawnHeightMm,
            text: (size) => own.by(size.drawnWidthMm, size.drawnHeightMm),
            cell: (size) => own.by(size.drawnWidthMm, size.drawnHeightMm),
            align: "end",
            minor: true,
          },
          {
            key: "cut",
            header: own.cut,
            value: (size) => size.widthMm * size.heightMm,
            text: (size) => own.by(size.widthMm, size.heightMm),
            cell: (size) => <CutTo size={size} />,
            align: "end",
          },
          {
            key: "thickness",
            header: own.thickness,
            value: (size) => size.thicknessMm,
            text: (size) => own.mm(size.thicknessMm),
            cell: (size) => (
              <>
                {own.mm(size.thicknessMm)}
                <small>
                  {size.isMeasured
                    ? `${own.measured}, ${own.nominally(size.nominalThicknessMm)}`
                    : own.nominal}
                </small>
              </>
            ),
            align: "end",
          },
          {
            key: "sheet",
            header: own.sheet,
            value: (size) =>
              size.sheet === null ? own.noSheet : pick(size.sheet.label, size.sheet.labelZh) || size.sheet.id,
            cell: (size) =>
              size.sheet === null ? (
                <span className="dim">{own.noSheet}</span>
              ) : (
                <Link href={partAddress(bookId, size.sheet.id)}>
                  {pick(size.sheet.label, size.sheet.labelZh) || size.sheet.id}
                </Link>
              ),
            minor: true,
          },
          { key: "grain", header: own.grain, value: (size) => own.grains[size.grain], minor: true },
          {
            key: "setting",
            header: own.setting,
            value: (size) =>
              settings(size)
                .map(({ name }) => name)
                .join(" "),
            cell: (size) =>
              settings(size).map(({ direction, name, others }) => (
                <div key={direction}>
                  {own.settingOf(direction, name)}
                  {others > 0 && <small>{own.together(others)}</small>}
                </div>
              )),
            minor: true,
          },
          {
            key: "tolerance",
            header: own.tolerance,
            value: (size) => Math.max(size.minusXMm, size.plusXMm, size.minusYMm, size.plusYMm),
            text: (size) => tolerances(size).join(", "),
            cell: (size) => tolerances(size).map((text) => <div key={text}>{text}</div>),
            align: "end",
            minor: true,
          },
        ]}
      />
      <p className="way-links">
        {(["panel_sizes", "stock_sheets"] as const).map((table) => (
          <Link key={table} href={`/b/${bookId}/tables/${table}`}>
            {words.tableNames.tables[table]}
          </Link>
        ))}
      </p>
      <SheetLinks title={own.print} kinds={["panel-drawing", "panel-labels"]} />
      <h3>{own.findings}</h3>
      <SectionFindings findings={findings} none={own.noFindings} />
    </>
  );
}

/** The size that is cut, and by how much and why it is not the drawn one. */
function CutTo({ size }: { readonly size: Size }) {
  const own = useWords().panels;
  const pick = usePick();
  const [dx, dy] = [size.widthMm - size.drawnWidthMm, size.heightMm - size.drawnHeightMm].map(
    (value) => Math.round(value * 100) / 100,
  );
  const names = size.follows.map(({ id, label, labelZh }) => pick(label, labelZh) || id).join(", ");
  return (
    <>
      <b>{own.by(size.widthMm, size.heightMm)}</b>
      {(dx !== 0 || dy !== 0) && <small>{own.differs(dx ?? 0, dy ?? 0)}</small>}
      {names !== "" && <small className="follows">{own.follows(names)}</small>}
    </>
  );
}
