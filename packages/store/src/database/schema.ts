import type { BookInfo, ChangeKind, Role } from "@pinwright/contract";
import type { SessionRow } from "../store.ts";

/** 0 or 1: SQLite has no booleans. */
type Flag = 0 | 1;

/** The tables as the program reads and writes them; `migrations` makes them. All texts are compared byte by byte. */
export interface Tables {
  store_version: { version: number };
  /** One row a book; the row is locked by whoever changes the book, and `change_no` is its counter. */
  books: {
    id: string;
    kind: BookInfo["kind"];
    label: string;
    label_zh: string;
    change_no: number;
    created_at: string;
    changed_at: string;
    archived: Flag;
  };
  /** One row for each row of a table of a book, also for rows that are gone (their `cells` are empty). */
  book_rows: {
    book: string;
    table_name: string;
    row_id: string;
    /** JSON object of texts by column. */
    cells: string;
    /** JSON object by column: number of the set that changed the cell last. */
    changed_in: string;
  };
  change_sets: {
    book: string;
    no: number;
    id: string;
    kind: ChangeKind;
    person: string;
    person_name: string;
    at: string;
    note: string;
    reverses: number | null;
    undone_by: number | null;
    cells: number;
    /** JSON list of [table, row, column, from, to]. */
    changes: string;
  };
  snapshots: {
    book: string;
    id: string;
    name: string;
    change_no: number;
    person_name: string;
    at: string;
    hash: string;
  };
  /** What snapshots hold, once for each content: gzip of its JSON. */
  snapshot_bodies: { hash: string; body: Buffer };
  /** Bytes of files, once for each content. */
  file_bodies: { hash: string; size: number; body: Buffer };
  /** One row for each content that a name of a book ever had; at most one of a name is present. */
  book_files: {
    book: string;
    name: string;
    hash: string;
    present: Flag;
    /** Who put it there last, and when. */
    person_name: string;
    at: string;
  };
  people: {
    id: string;
    name: string;
    name_key: string;
    role: Role;
    active: Flag;
    password_hash: string | null;
    code_hash: string | null;
  };
  sessions: {
    hash: string;
    person: string;
    token: string;
    created_at: string;
    expires_at: string;
    kind: SessionRow["kind"];
    /** Address of the device that it was begun at. */
    origin: string;
  };
  settings: { name: string; value: string };
  mappings: { id: string; table_name: string; header: string; columns: string };
  audit: { no: number; at: string; person_name: string; action: string; detail: string; origin: string };
  /** What happened on the floor, in the order of arrival; rows are added and never changed but for `aside`. */
  facts: {
    no: number;
    stream: string;
    seq: number;
    before: string;
    hash: string;
    at: string;
    received_at: string;
    person: string;
    kind: string;
    /** JSON of the body. */
    body: string;
    /** Why it does not count; null: it does. */
    aside: string | null;
  };
  /** The last fact of each stream that counts; the row is locked by whoever adds to the stream. */
  stream_heads: { stream: string; seq: number; hash: string; at: string };
  /** Facts by the units that they speak of. */
  fact_units: { unit: string; no: number };
  /** Facts that count, spread out to be looked up; a correction takes its fact out of these. */
  readings: {
    no: number;
    test: string;
    unit: string;
    value: number | null;
    good: Flag;
    instrument: string;
    at: string;
  };
  /** First and last result of each test of each unit, by the time of the device, and what the unit is. */
  passes: {
    unit: string;
    test: string;
    book: string;
    what: string;
    type: string;
    first_no: number;
    first_at: string;
    first_good: Flag;
    first_station: string;
    last_no: number;
    last_at: string;
    last_good: Flag;
  };
  /** Corrections by what they correct, also of facts that are not here yet. */
  corrections: { no: number; stream: string; seq: number };
  /** Lots that went into units, and parts that were used instead of others, these without a lot. */
  unit_lots: { no: number; part: string; lot: string; unit: string };
  unit_links: { no: number; unit: string; within: string; place: string };
  /** Records of problems, and the book where they name it. */
  problem_facts: { no: number; problem: string; book: string };
  /** What problems are about. */
  problem_about: { no: number; kind: string; id: string; problem: string };
  units: {
    unit: string;
    no: number;
    what: string;
    type: string;
    book: string;
    revision: string;
    run: string;
  };
  /** Revisions of books that were released; rows are added and never changed. */
  releases: {
    book: string;
    name: string;
    no: number;
    change_no: number;
    /** Id of the request that made it. */
    request: string;
    person: string;
    person_name: string;
    at: string;
    /** SHA-256 of the manifest. */
    hash: string;
    /** What it holds, as canonical JSON. */
    manifest: string;
  };
  /** Bytes that releases hold, once for each content; gzip of it. */
  release_bodies: { hash: string; size: number; body: Buffer };
  release_items: {
    book: string;
    release: string;
    kind: string;
    id: string;
    hash: string;
    /** First digits of the hash that a print holds. */
    print: string;
    /** JSON of what is said of it. */
    about: string;
  };
  /** Service books of machines as they were built; gzip of the bytes. */
  service_books: {
    book: string;
    release: string;
    key: string;
    about: string;
    at: string;
    hash: string;
    body: Buffer;
  };
  /** Counters whose row is locked by whoever takes a number. */
  counters: { name: string; value: number };
}
