import type { AsideReason, Fact } from "@pinwright/contract";

/** Where the stream of this device ends. */
export interface StreamEnd {
  readonly stream: string;
  /** Number of its last fact; 0 before the first. */
  readonly seq: number;
  readonly hash: string;
}

/** A fact of this device, and whether the server has it. */
export interface KeptFact {
  readonly fact: Fact;
  /** When the server said that it has it; null: it is still to be sent. */
  readonly sentAt: string | null;
  /** Why the server keeps it aside; null: it counts. */
  readonly why: AsideReason | null;
}

/** What outlives the page: the facts of this device and where their chain ends. */
export interface OutboxStore {
  /** The end of the stream; a stream is made up when there is none. */
  readonly end: () => Promise<StreamEnd>;
  /** Keeps facts that follow `after`, all or none; false when the stream ends elsewhere by now. */
  readonly append: (after: StreamEnd, facts: readonly Fact[]) => Promise<boolean>;
  /** The first facts that are still to be sent, in their order. */
  readonly waiting: (limit: number) => Promise<readonly Fact[]>;
  /** The server has these. */
  readonly settle: (facts: readonly KeptFact[]) => Promise<void>;
  /** Facts of a stream from a number on are to be sent again. */
  readonly sendAgain: (stream: string, fromSeq: number) => Promise<void>;
  /** Begins a new stream; what was written stays in the old one. */
  readonly renew: () => Promise<void>;
  /** Every fact that is still kept, in its order. */
  readonly all: () => Promise<readonly KeptFact[]>;
  /** Forgets what the server has had since before this time. */
  readonly forget: (sentBefore: string) => Promise<void>;
}
