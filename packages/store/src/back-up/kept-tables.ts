import type { Tables } from "../database/schema.ts";

/** A table as a back-up holds it. */
export interface KeptTable {
  readonly name: keyof Tables;
  /** Columns of its key: rows are kept in their order. */
  readonly key: readonly string[];
  /** The column that can be large, so that few rows are read at once. */
  readonly large?: string;
}

/**
 * What a back-up holds, in the order in which it can be put back. Sessions are left out: whoever restores a back-up
 * signs in again, and so does everybody else.
 */
export const KEPT_TABLES: readonly KeptTable[] = [
  { name: "books", key: ["id"] },
  { name: "book_rows", key: ["book", "table_name", "row_id"], large: "cells" },
  { name: "change_sets", key: ["book", "no"], large: "changes" },
  { name: "snapshot_bodies", key: ["hash"], large: "body" },
  { name: "snapshots", key: ["book", "id"] },
  { name: "file_bodies", key: ["hash"], large: "body" },
  { name: "book_files", key: ["book", "name", "hash"] },
  { name: "releases", key: ["book", "name"], large: "manifest" },
  { name: "release_bodies", key: ["hash"], large: "body" },
  { name: "release_items", key: ["book", "release", "kind", "id"] },
  { name: "service_books", key: ["book", "release", "key"], large: "body" },
  { name: "people", key: ["id"] },
  { name: "settings", key: ["name"] },
  { name: "mappings", key: ["id"] },
  { name: "audit", key: ["no"] },
  { name: "counters", key: ["name"] },
  { name: "facts", key: ["no"], large: "body" },
  { name: "stream_heads", key: ["stream"] },
  { name: "corrections", key: ["no"] },
  { name: "fact_units", key: ["unit", "no"] },
  { name: "readings", key: ["no"] },
  { name: "passes", key: ["unit", "test"] },
  { name: "unit_lots", key: ["no"] },
  { name: "unit_links", key: ["no"] },
  { name: "units", key: ["unit"] },
  { name: "problem_facts", key: ["no"] },
  { name: "problem_about", key: ["no", "kind", "id"] },
];
