import type { SheetDocument } from "../compose/document.ts";
import type { Mark, Page } from "../compose/mark.ts";

/** Number of the form in which sheets are kept; a later one is read by what knows both. */
const FORM = 1;

/** What a sheet says: the same for every revision that says the same. */
interface KeptBody {
  readonly form: typeof FORM;
  readonly marks: readonly (readonly Mark[])[];
  readonly grids: SheetDocument["grids"];
}

type PageFrame = Omit<Page, "marks" | "bodyMarks"> & { readonly marks: readonly Mark[] };

/** The rest of it: frames with title blocks, and what the sheet is. */
interface KeptFrame {
  readonly form: typeof FORM;
  readonly pages: readonly PageFrame[];
  readonly document: Omit<SheetDocument, "pages" | "grids">;
}

/** A composed sheet in two parts, to be kept for good as JSON. */
export function keepSheet({ pages, grids, ...document }: SheetDocument): {
  readonly body: KeptBody;
  readonly frame: KeptFrame;
} {
  return {
    body: { form: FORM, grids, marks: pages.map(({ marks, bodyMarks = 0 }) => marks.slice(0, bodyMarks)) },
    frame: {
      form: FORM,
      document,
      pages: pages.map(({ marks, bodyMarks = 0, ...page }) => ({ ...page, marks: marks.slice(bodyMarks) })),
    },
  };
}

const hasForm = (value: unknown): value is { readonly form: unknown } =>
  typeof value === "object" && value !== null && "form" in value;

/** Parts whose bytes are those that `keepSheet` gave, by the hash that they were kept under. */
const isPart = <T extends { readonly form: typeof FORM }>(value: unknown): value is T =>
  hasForm(value) && value.form === FORM;

/**
 * The sheet of two parts that were kept, exactly as it was composed then.
 * @throws Error when they are of a form that this program does not know
 */
export function keptSheet(bodyJson: string, frameJson: string): SheetDocument {
  const body: unknown = JSON.parse(bodyJson);
  const frame: unknown = JSON.parse(frameJson);
  if (!isPart<KeptBody>(body) || !isPart<KeptFrame>(frame))
    throw new Error("This sheet was kept by a later program. Start that one to see it.");
  return {
    ...frame.document,
    grids: body.grids,
    pages: frame.pages.map(({ marks, ...page }, i) => {
      const own = body.marks[i] ?? [];
      return { ...page, marks: [...own, ...marks], bodyMarks: own.length };
    }),
  };
}
