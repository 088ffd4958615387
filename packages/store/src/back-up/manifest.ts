import { z } from "zod";

export const MANIFEST_FILE = "manifest.json";

/** File of a table inside a back-up: a line of JSON for each row. */
export const tableFile = (table: string): string => `${table}.jsonl`;

/** What a back-up says of itself. */
export const manifestSchema = z.strictObject({
  format: z.literal("pinwright-back-up"),
  /** Version of the tables that the rows are of. */
  storeVersion: z.number().int().min(1),
  madeAt: z.string(),
  /** By table: how many rows, and the SHA-256 of its file. */
  tables: z.record(z.string(), z.strictObject({ rows: z.number().int(), sha256: z.string() })),
});
export type Manifest = z.infer<typeof manifestSchema>;
