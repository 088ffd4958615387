import type { FitResult, FitTermValue, PanelCut } from "@pinwright/engine";
import type { Model } from "../model.ts";
import { type NamedId, namedType } from "../steps/named.ts";
import { view } from "./view.ts";

/** A panel with the size that it is cut to. */
export interface PanelSize extends Omit<PanelCut, "labels"> {
  readonly label: string;
  readonly labelZh: string;
  /** Sheet goods by name; null: it is not cut from a sheet. */
  readonly sheet: NamedId | null;
  /** Whether somebody measured the stock that it is cut from. */
  readonly isMeasured: boolean;
  readonly purpose: string;
  /** Panels whose measured thickness its sizes follow. */
  readonly follows: readonly NamedId[];
}

function sheetOf({ book }: Model, partId: string | null): NamedId | null {
  if (partId === null) return null;
  const part = book.tables.parts.find((row) => row.id === partId);
  return part === undefined ? { id: partId, label: "", labelZh: "" } : namedType(part);
}

/** Every panel that is cut, in the order of the book. */
export const panelSizes = view<null, PanelSize>({
  uses: ({ line, book, shop }) => [
    line.panels,
    book.tables.panels,
    book.tables.panel_sizes,
    book.tables.parts,
    shop.tables.stock_sheets,
  ],
  entries: (model) => {
    const { panels } = model.line.machine;
    const measured = new Set(
      model.shop.tables.stock_sheets.flatMap(({ part, measured_mm }) => (measured_mm === null ? [] : [part])),
    );
    const follows = (panelId: string): readonly NamedId[] => {
      const ids = model.book.tables.panel_sizes.flatMap(({ panel, thickness_of }) =>
        panel === panelId && thickness_of !== null ? [thickness_of] : [],
      );
      return [...new Set(ids)].flatMap((id) => {
        const row = panels.get(id);
        return row === undefined ? [] : [namedType(row)];
      });
    };
    return new Map(
      model.line.panels.cuts.map(({ labels, ...cut }) => [
        cut.panelId,
        {
          ...cut,
          label: labels.en,
          labelZh: labels.zh,
          sheet: sheetOf(model, cut.sheetPartId),
          isMeasured: cut.sheetPartId !== null && measured.has(cut.sheetPartId),
          purpose: panels.get(cut.panelId)?.purpose ?? "",
          follows: follows(cut.panelId),
        },
      ]),
    );
  },
  restsInPreview: true,
});

/** A term of a fit, with its panel by name. */
interface PanelFitTerm extends FitTermValue {
  readonly panel: NamedId | null;
}

/** A fit with why it matters. */
export interface PanelFit extends FitResult {
  readonly reason: string;
  readonly terms: readonly PanelFitTerm[];
}

/** Every gap or size of the box that the book asks for, in its order. */
export const panelFits = view<null, PanelFit>({
  uses: ({ line, book }) => [line.panels, line.machine.panels, book.tables.fits],
  entries: ({ line, book }) => {
    const reasons = new Map(book.tables.fits.map(({ id, reason }) => [id, reason]));
    const named = (id: string | null): NamedId | null => {
      const row = line.machine.panels.get(id ?? "");
      return row === undefined ? null : namedType(row);
    };
    return new Map(
      line.panels.fits.map((fit) => [
        fit.fitId,
        {
          ...fit,
          reason: reasons.get(fit.fitId) ?? "",
          terms: fit.terms.map((term) => ({ ...term, panel: named(term.panelId) })),
        },
      ]),
    );
  },
  restsInPreview: true,
});
