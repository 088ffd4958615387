import type { CellChange, CellTables } from "@pinwright/book";
import { choiceChanges } from "./choices.ts";

/** A person's decision on steps: what each is, or with null, that it is left to the program again. */
export interface Choose {
  readonly kind: "choose";
  readonly choice: "station" | "time";
  readonly values: readonly { readonly subject: string; readonly value: string | null }[];
  readonly by: string;
}

export const choose = (tables: CellTables, { choice, values, by }: Choose): readonly CellChange[] =>
  choiceChanges(
    tables,
    values.map(({ subject, value }) => ({
      kind: choice,
      subject,
      row: value === null ? null : { value, held: "pinned", by, reason: "", basis: "" },
    })),
  );
