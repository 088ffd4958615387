import type { Release, ReleaseFault, ReleaseItem } from "@pinwright/contract";
import type { Actor, Outcome } from "../store.ts";

/** Something that a release holds: what it is, and its bytes. */
export interface NewReleaseItem extends Omit<ReleaseItem, "hash" | "bytes"> {
  readonly body: Uint8Array;
}

/** A release to make. */
export interface NewRelease {
  readonly book: string;
  readonly name: string;
  /** Id of the request; the same again is answered with the release that it made. */
  readonly request: string;
  /** Number of the change set that it is of. */
  readonly changeNo: number;
  readonly note: string;
  /** Version of the program that made what it holds. */
  readonly program: string;
  readonly findings: Release["findings"];
  readonly accepted: Release["accepted"];
  readonly items: readonly NewReleaseItem[];
}

/** An item of a release that a print is of. */
export interface PrintedItem {
  readonly release: string;
  readonly id: string;
  readonly about: ReleaseItem["about"];
}

/**
 * Revisions that were released. A release is written once, whole; neither this program nor whoever is at the database
 * changes one afterwards. What several hold is kept once.
 */
export interface ReleaseStore {
  /** Releases of a book, the newest first. */
  list(book: string): Promise<Outcome<readonly Release[]>>;
  get(book: string, name: string): Promise<Outcome<Release>>;
  /** `taken`: the name or the request stands for another one; `conflict`: the book was changed since `changeNo`. */
  add(release: NewRelease, actor: Actor): Promise<Outcome<Release>>;
  /** What was written of a release when it was made, byte by byte: its SHA-256 is the hash of the release. */
  manifest(book: string, name: string): Promise<Outcome<string>>;
  /** What a release holds, by kind and id in code-point order. */
  items(book: string, name: string, kind?: string): Promise<Outcome<readonly ReleaseItem[]>>;
  /** The bytes of an item. Throws a `StoreError` when they are no longer what was released. */
  body(book: string, name: string, kind: string, id: string): Promise<Outcome<Uint8Array>>;
  /** Items of all releases of a book whose prints hold these digits, the newest release first. */
  printed(book: string, print: string): Promise<readonly PrintedItem[]>;
  /** Looks at every byte of every release whether it is what was released. */
  verify(): Promise<readonly ReleaseFault[]>;
}
