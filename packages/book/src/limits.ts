const MIB = 1024 * 1024;

/**
 * Every limit on what is read, in one place. Input beyond a limit is refused while it streams in, so that no
 * file can use more memory than these numbers allow. They are far above what a machine of this class needs
 * (a full-size book is about 20,000 rows and 2 MiB). Common practice, no source.
 */
export const LIMITS = {
  /** Characters (UTF-16 units) of one cell. */
  cellChars: 10_000,
  /** Cells of one row. */
  cellsPerRow: 256,
  /** Rows of one table, without its heading. */
  rowsPerTable: 250_000,
  /** Characters of an id. */
  idChars: 80,
  /** Bytes of one table file. */
  fileBytes: 32 * MIB,
  /** Bytes of `machine.json`. */
  machineBytes: 1 * MIB,
  /** Bytes of one outline file. */
  outlineBytes: 8 * MIB,
  /** Corners of one outline after flattening. */
  outlinePoints: 100_000,
  /** Files in the `outlines` folder. */
  outlineFiles: 2_000,
  /** Bytes of one file in the folder `drawings`. */
  drawingBytes: 25 * MIB,
  /** Files in the `drawings` folder. */
  drawingFiles: 1_000,
  /** Bytes of all files in the `drawings` folder together. */
  drawingsBytes: 160 * MIB,
  /** Bytes of all tables and outlines of a book together. */
  bookBytes: 128 * MIB,
  /** Bytes of a packed `.zip` or `.xlsx`. */
  packedBytes: 256 * MIB,
  /** Entries of a `.zip` or `.xlsx`. */
  packedEntries: 4_000,
  /** Unpacked bytes of an `.xlsx`, all its entries together. */
  workbookBytes: 128 * MIB,
  /** Faults that are kept for one file; one more then says how many were left out. */
  faultsPerFile: 10_000,
} as const;

export type LimitName = keyof typeof LIMITS;

/** What each limit means, for the documentation. */
export const LIMIT_TEXTS: Readonly<Record<LimitName, string>> = {
  cellChars: "characters of one cell",
  cellsPerRow: "cells of one row",
  rowsPerTable: "rows of one table",
  idChars: "characters of an id",
  fileBytes: "bytes of one table file",
  machineBytes: "bytes of `machine.json`",
  outlineBytes: "bytes of one outline file",
  outlinePoints: "corners of one outline after flattening",
  outlineFiles: "files in the `outlines` folder",
  drawingBytes: "bytes of one file in the `drawings` folder",
  drawingFiles: "files in the `drawings` folder",
  drawingsBytes: "bytes of all files in the `drawings` folder together",
  bookBytes: "bytes of all tables and outlines of a book together, unpacked",
  packedBytes: "bytes of a `.zip` or `.xlsx` as it lies on disk",
  packedEntries: "entries of a `.zip` or `.xlsx`",
  workbookBytes: "bytes of an `.xlsx`, unpacked",
  faultsPerFile: "faults that are listed for one file; a last one then says how many more there are",
};
