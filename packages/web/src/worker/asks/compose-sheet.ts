import {
  composeHarnessSheets,
  composePinboardRoll,
  type HarnessSheetKind,
  pageSvg,
  USUAL_OPTIONS,
} from "@pinwright/sheets";
import type { Language } from "@pinwright/words";
import type { Model } from "../model.ts";

/** A sheet as it would print now. */
export interface ComposedSheet {
  readonly title: string;
  readonly pages: readonly { readonly widthMm: number; readonly heightMm: number; readonly svg: string }[];
  /** Where the drawing of a pinboard begins on its page: its lower left corner. */
  readonly origin: { readonly xMm: number; readonly yMm: number } | null;
}

/** A sheet of a harness in the language of the page; a pinboard as one roll. Null when there is no such harness. */
export function composeSheet(
  { line }: Model,
  {
    harnessId,
    kind,
    language,
    date,
    revision,
  }: {
    readonly harnessId: string;
    readonly kind: HarnessSheetKind;
    readonly language: Language;
    readonly date: string;
    readonly revision: string;
  },
): ComposedSheet | null {
  const harness = line.harnesses.get(harnessId);
  if (harness === undefined) return null;
  const options = { ...USUAL_OPTIONS, language, date, revision };
  const [document] =
    kind === "pinboard"
      ? [composePinboardRoll(line, harness, options)]
      : composeHarnessSheets(line, options, { kinds: [kind], harnessIds: [harnessId] });
  if (document === undefined) return null;
  return {
    title: document.title,
    pages: document.pages.map((page) => ({
      widthMm: page.widthMm,
      heightMm: page.heightMm,
      svg: pageSvg(page, document.title),
    })),
    origin: document.drawing?.origin ?? null,
  };
}
