import type { CellChange, CellTables } from "@pinwright/book";
import type {
  Acknowledged,
  ArrivedFact,
  AsideReason,
  AuditEntry,
  BookFile,
  BookInfo,
  ChangeHead,
  ChangeKind,
  ChangeSet,
  Conflict,
  Fact,
  FactBody,
  KeptUnit,
  Mapping,
  Person,
  Role,
  Snapshot,
  StreamFault,
  StreamHead,
  UnitKind,
} from "@pinwright/contract";
import type { QualityStore } from "./records/quality.ts";
import type { ReleaseStore } from "./releases/release.ts";
import type { ServiceBookStore } from "./service-books/service-book-store.ts";

/** Who acts. */
export interface Actor {
  readonly personId: string;
  readonly personName: string;
}

/** A change set to make. */
export interface NewChangeSet {
  /**
   * Made up by whoever asks; the same id again is answered as before and changes nothing. An id that stands for
   * something else already (another person's, or other changes) is refused as `taken`.
   */
  readonly id: string;
  readonly kind: ChangeKind;
  readonly note: string;
  readonly changes: readonly CellChange[];
}

/** A book that is taken in whole. */
export interface NewBookRows {
  readonly id: string;
  readonly kind: BookInfo["kind"];
  /** Cells to begin with; they become change set 1 of kind `import`, so that replaying from nothing gives the book. */
  readonly tables: CellTables;
  readonly note: string;
  /** Files that come with it. */
  readonly files?: readonly NewFile[];
}

/** A file of a book. */
export interface NewFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Why the store did not do what was asked. Expected outcomes are values, not exceptions. */
export type Refusal =
  | { readonly refused: "not-found" | "taken" | "nothing-to-undo" | "nothing-to-redo" }
  | { readonly refused: "conflict"; readonly conflicts: readonly Conflict[] };

export type Outcome<T> = { readonly done: T } | Refusal;

/** What is kept of a person besides what others may see. */
export interface PersonSecrets extends Person {
  readonly passwordHash: string | null;
  readonly codeHash: string | null;
}

export interface NewPersonRow {
  readonly name: string;
  readonly role: Role;
  readonly passwordHash: string | null;
  readonly codeHash: string | null;
}

export interface SessionRow {
  /** SHA-256 of the cookie's secret: a stolen copy of the store opens nothing. */
  readonly hash: string;
  readonly personId: string;
  /** Token against forged requests. */
  readonly token: string;
  readonly createdAt: string;
  readonly expiresAt: string;
  /** Where the session may act from: what signed in with a floor code stays a floor session. */
  readonly kind: "office" | "floor";
  /** Address of the device that it was begun at; blank: nobody noted it. */
  readonly from: string;
}

/**
 * Everything that is kept, the same on SQLite and on PostgreSQL. An acknowledged write survives a killed process.
 * Times are UTC texts given by `now` of `openStore`; change numbers come from a counter of the book that is locked
 * in the same transaction, so that "since n" misses nothing.
 */
export interface Store {
  readonly books: BookStore;
  readonly files: FileStore;
  readonly releases: ReleaseStore;
  readonly serviceBooks: ServiceBookStore;
  readonly pictures: PictureStore;
  readonly people: PeopleStore;
  readonly settings: SettingStore;
  readonly records: RecordStore;
  readonly quality: QualityStore;
  readonly audit: AuditStore;
  /**
   * Everything but sessions in one file (a ZIP of one JSON-lines file a table), as of one moment, while others write.
   * The file is there whole or not at all; `restoreBackUp` reads it.
   */
  backUp(file: string): Promise<void>;
  close(): Promise<void>;
}

/** A row of a table. */
export interface RowPlace {
  readonly table: string;
  readonly row: string;
}

export interface BookStore {
  list(): Promise<readonly BookInfo[]>;
  info(book: string): Promise<BookInfo | null>;
  add(rows: NewBookRows, actor: Actor): Promise<Outcome<BookInfo>>;
  setArchived(book: string, archived: boolean): Promise<Outcome<BookInfo>>;
  /** Cells and the number that they stand for, read at one moment. */
  rows(book: string): Promise<Outcome<{ readonly info: BookInfo; readonly tables: CellTables }>>;
  change(
    book: string,
    set: NewChangeSet,
    actor: Actor,
  ): Promise<Outcome<Acknowledged & { readonly set: ChangeSet }>>;
  /**
   * Makes a book hold exactly `tables`, as one change set made inside one transaction; null when it does already.
   * `at`, if given, is the change number that the caller worked from: another one is a conflict without cells.
   */
  replace(
    book: string,
    tables: CellTables,
    set: Omit<NewChangeSet, "changes">,
    actor: Actor,
    at?: number,
  ): Promise<Outcome<ChangeSet | null>>;
  /**
   * Takes back the person's own last set that is not taken back, where everything still is as that set left it. The
   * set that a book began with is not undone.
   */
  undo(book: string, id: string, actor: Actor): Promise<Outcome<ChangeSet>>;
  /** Makes again what the person took back last, unless the person changed something since. */
  redo(book: string, id: string, actor: Actor): Promise<Outcome<ChangeSet>>;
  /**
   * Sets after a number, first first: at most `limit`, and fewer when they are large, but one at least. An empty list
   * says that there are no more.
   */
  since(book: string, no: number, limit: number): Promise<Outcome<readonly ChangeSet[]>>;
  history(book: string, before: number, limit: number): Promise<Outcome<readonly ChangeHead[]>>;
  changeSet(book: string, no: number): Promise<Outcome<ChangeSet>>;
  /** The last sets that changed some rows, last first, with the cells of these rows only. */
  rowChanges(book: string, rows: readonly RowPlace[], limit: number): Promise<Outcome<readonly ChangeSet[]>>;
  snapshots(book: string): Promise<Outcome<readonly Snapshot[]>>;
  /** Names the present state. A name is taken once in a book. */
  addSnapshot(book: string, name: string, actor: Actor): Promise<Outcome<Snapshot>>;
  snapshotRows(book: string, snapshot: string): Promise<Outcome<CellTables>>;
}

/**
 * Files of books. A content is kept once, under the SHA-256 of its bytes, and never dropped: what a name had before,
 * also one that was removed, is still there for the revisions and snapshots that speak of it. Names are not judged.
 */
export interface FileStore {
  /** What a book has now, names in code-point order. */
  list(book: string): Promise<Outcome<readonly BookFile[]>>;
  /** A file that a book has now; with a hash, that content of this name, also if it had it only before. */
  get(
    book: string,
    name: string,
    sha256?: string,
  ): Promise<Outcome<{ readonly file: BookFile; readonly bytes: Uint8Array }>>;
  /**
   * Puts files into a book, all or none; one of a name that is there takes its place. `taken` when a name differs from
   * one that is there in letter case only, which no other system could tell apart.
   */
  put(book: string, files: readonly NewFile[], actor: Actor): Promise<Outcome<readonly BookFile[]>>;
  /** Takes a file out of a book; its content stays to be asked for by its hash. */
  remove(book: string, name: string): Promise<Outcome<BookFile>>;
}

/** Pictures that the floor took. One that no fact names is kept all the same. */
export interface PictureStore {
  /** Keeps a picture, once for each content; returns the SHA-256 of its bytes. */
  put(bytes: Uint8Array): Promise<string>;
  get(sha256: string): Promise<Uint8Array | null>;
}

export interface PeopleStore {
  list(): Promise<readonly Person[]>;
  byId(id: string): Promise<PersonSecrets | null>;
  /** By name as typed, letter case and width folded; null when there is none. */
  byName(name: string): Promise<PersonSecrets | null>;
  add(person: NewPersonRow): Promise<Outcome<Person>>;
  /** As `add`, but only while there is nobody at all (otherwise `taken`), so that two who set up at once cannot both win. */
  addFirst(person: NewPersonRow): Promise<Outcome<Person>>;
  change(id: string, patch: Partial<NewPersonRow & { readonly active: boolean }>): Promise<Outcome<Person>>;
  session(hash: string): Promise<SessionRow | null>;
  /** Sessions of a person that have not ended, last first. */
  sessionsOf(personId: string): Promise<readonly SessionRow[]>;
  addSession(session: SessionRow): Promise<void>;
  endSession(hash: string): Promise<void>;
  endSessionsOf(personId: string): Promise<void>;
}

export interface SettingStore {
  get(key: string): Promise<string | null>;
  set(key: string, value: string): Promise<void>;
  mappings(): Promise<readonly Mapping[]>;
  keepMapping(mapping: Mapping): Promise<void>;
}

/** What became of facts that were sent. */
export interface TakenFacts {
  /** Heads of the streams that were sent, as they are now: all up to there is kept. */
  readonly heads: readonly StreamHead[];
  readonly aside: readonly { readonly stream: string; readonly seq: number; readonly why: AsideReason }[];
  /** Facts that count since now, in their order. */
  readonly counted: readonly ArrivedFact[];
}

/** What to look for; all that is given must hold. */
export interface Trace {
  /** A part that went in, or instead of another; without a lot also units of that type, and of `types`. */
  readonly part?: string | undefined;
  /** Types of units that have the part by the book. */
  readonly types?: readonly string[] | undefined;
  readonly lot?: string | undefined;
  readonly type?: string | undefined;
  readonly revision?: string | undefined;
  readonly person?: string | undefined;
  readonly instrument?: string | undefined;
  /** UTC times, the first included, the second not. */
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

/** A unit that a trace leads to: what it was found by, or what that is or was in. */
export interface TracedUnit {
  readonly unit: string;
  readonly isDirect: boolean;
}

export interface KeptReading {
  readonly no: number;
  readonly unit: string;
  readonly value: number | null;
  readonly good: boolean;
  /** Blank: nobody said with what it was read. */
  readonly instrument: string;
  readonly at: string;
}

/** Units that newer facts speak of. */
export interface ChangedUnits {
  readonly units: readonly string[];
  /** Number of the last fact that was looked at. */
  readonly no: number;
  /** Numbers of facts that wait for one before them: they may count later, under the same number. */
  readonly waiting: readonly number[];
}

/** What says where units stand. */
export interface StandingRows {
  /** Facts that count, but for steps, readings and lots. They may speak of other units too. */
  readonly facts: readonly ArrivedFact[];
  /** Who recorded the last fact of each unit, and when. */
  readonly last: readonly { readonly unit: string; readonly at: string; readonly person: string }[];
  /** Tests whose last reading is not good. */
  readonly failed: readonly {
    readonly unit: string;
    readonly test: string;
    readonly value: number | null;
    readonly at: string;
  }[];
}

/** Minutes that somebody recorded for a step. */
export interface MinutesOfStep {
  readonly unit: string;
  readonly step: string;
  readonly minutes: number;
}

/** Which units are wanted; what is not given is not asked. */
export interface UnitFilter {
  readonly what?: UnitKind | undefined;
  readonly type?: string | undefined;
  readonly book?: string | undefined;
  readonly run?: string | undefined;
}

/** How much was known when a release was judged: facts of the unit and what is or was inside it, and facts of recalls. */
export interface SeenFacts {
  readonly facts: number;
  readonly recalls: number;
}

/** A unit that gets a serial number. */
export interface NewUnit {
  readonly what: UnitKind;
  readonly type: string;
  readonly book: string;
  readonly revision: string;
  readonly run?: string | undefined;
  readonly options: readonly string[];
}

/**
 * What happened on the floor. Each device writes a stream of its own, linked by hashes; facts are added and never changed.
 * The same fact again is answered as before; one that contradicts is kept aside, and never refused.
 */
export interface RecordStore {
  /** @param refuse why a fact does not count although it is linked as it should be; null: it does */
  take(facts: readonly Fact[], refuse: (fact: Fact) => AsideReason | null): Promise<TakenFacts>;
  /**
   * Gives out serial numbers and writes that these units were begun, into the server's own stream.
   */
  begin(units: readonly NewUnit[], person: string): Promise<readonly ArrivedFact[]>;
  /** Writes a fact of the server's own. */
  addOwn(body: FactBody, person: string): Promise<ArrivedFact>;
  /**
   * Writes that a unit is released, with the heads of all streams as they are at that moment; null when more is known of it
   * than was looked at: then it must be judged again.
   */
  release(unit: string, seen: SeenFacts, person: string): Promise<ArrivedFact | null>;
  /** Facts after a number that do not count, in the order of arrival. */
  aside(no: number, limit: number): Promise<readonly ArrivedFact[]>;
  /** Recalls, their ends and all corrections that count, in the order of arrival. */
  recallFacts(): Promise<readonly ArrivedFact[]>;
  /** Facts after a number, in the order of arrival. */
  after(no: number, limit: number): Promise<readonly ArrivedFact[]>;
  /** Everything that counts of the problems of a book, or of those about one thing, in the order of arrival. */
  problemFacts(of: {
    readonly book: string;
    readonly about?: string | undefined;
  }): Promise<readonly ArrivedFact[]>;
  /** Facts that name a unit, or a unit that is or was inside it at any depth, in the order of arrival. */
  ofUnit(unit: string): Promise<readonly ArrivedFact[]>;
  units(filter: UnitFilter): Promise<readonly KeptUnit[]>;
  /** Units that are concerned, and all that they are or were in, in code-point order. */
  trace(trace: Trace): Promise<readonly TracedUnit[]>;
  /** The last readings of a test, oldest first. */
  readings(test: string, limit: number): Promise<readonly KeptReading[]>;
  heads(): Promise<readonly StreamHead[]>;
  /** Number of the last fact, and of those that wait for one before them. */
  lastFact(): Promise<Omit<ChangedUnits, "units">>;
  /** Units that facts after a number speak of, and facts that waited and count now. */
  changedSince(no: number, waiting: readonly number[]): Promise<ChangedUnits>;
  standing(units: readonly string[]): Promise<StandingRows>;
  /** Minutes of every step that was done, those that were corrected left out, some at a time. */
  minutes(): AsyncIterable<readonly MinutesOfStep[]>;
  /** Looks at every row whether it is what was written; heads kept elsewhere show a stream that was cut short. */
  verify(heads?: readonly StreamHead[]): Promise<readonly StreamFault[]>;
}

export interface AuditStore {
  add(entry: Omit<AuditEntry, "no" | "at">): Promise<void>;
  list(before: number, limit: number): Promise<readonly AuditEntry[]>;
}

/** What the store cannot make up by itself. */
export interface StoreOptions {
  /** The time now: a UTC text like `2026-03-31T09:30:00.000Z`. */
  readonly now: () => string;
  /** Makes ids that were never made before. */
  readonly newId: () => string;
}

/** Where to keep things: a SQLite file, or a PostgreSQL address. */
export type StorePlace =
  | { readonly kind: "sqlite"; readonly file: string }
  | { readonly kind: "postgres"; readonly url: string };
