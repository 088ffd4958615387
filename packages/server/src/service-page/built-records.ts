import type { BuiltRecords } from "@pinwright/engine";
import type { Store } from "@pinwright/store";

/** What was built of a book and what failed on it, by the records of the floor. */
export async function builtRecords({ records, quality }: Store, book: string): Promise<BuiltRecords> {
  const [units, defects] = await Promise.all([records.units({ book }), quality.defects({ book })]);
  return {
    units: units.map(({ what, type }) => ({ what, type })),
    defects: defects.map(({ kind, type, what, where, mended }) => ({
      ...{ what: kind, type, kind: what, where },
      cause: mended?.cause ?? "",
    })),
  };
}
