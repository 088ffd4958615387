import type { Store } from "@pinwright/store";

/** Folders of a server. */
export interface ServerPaths {
  /** Folder for files that live no longer than the server runs; it is emptied at the start. */
  readonly temp: string;
  /** Folder of the built app; null: only the API is served. */
  readonly web: string | null;
  /** Folder with the example books `tidewatch` and `first-light`. */
  readonly examples: string;
}

/** How the server is reached; the network part opens once there are accounts. */
export interface Reach {
  /** `name:port` of every address, lower case. */
  readonly hosts: () => ReadonlySet<string>;
  /** Addresses for other devices. */
  readonly addresses: () => readonly string[];
  /** Opens the network, after the first account was made. */
  readonly open: () => Promise<void>;
}

/** Everything that a server does not make itself. */
export interface ServerDeps {
  readonly store: Store;
  readonly paths: ServerPaths;
  readonly reach: Reach;
  readonly version: string;
  /** ms since 1970 */
  readonly now: () => number;
  /** Bytes that nobody can guess. */
  readonly random: (bytes: number) => Uint8Array;
  /** Makes ids that were never made before. */
  readonly newId: () => string;
  /** Told what went wrong inside, which whoever asked is not told. */
  readonly log: (line: string) => void;
  /** Whether other servers use the same store, so that their changes are looked for. */
  readonly shared: boolean;
  /** Whether answers are held against the contract: tests do. */
  readonly checkAnswers?: boolean;
}
