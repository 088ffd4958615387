import type { Conflict } from "@pinwright/contract";
import type { AskAnswer, AskName, AskParam } from "./asks/index.ts";
import type { Edit } from "./edits/index.ts";
import type { Looked } from "./looking.ts";
import type { ViewEntry, ViewName, ViewParam } from "./views/index.ts";

/** Whether what is on the screen is also on the server. */
export type SyncState =
  | { readonly state: "loading" | "saved" | "saving" | "offline" }
  | { readonly state: "failed"; readonly code: string; readonly message: string };

/** A change of this browser that the server refused, with what stands there now. */
export interface RefusedEdit {
  readonly note: string;
  /** Code of the problem, and the server's English. */
  readonly code: string;
  readonly message: string;
  readonly conflicts: readonly Conflict[];
}

/** From the page to the worker. */
export type ToWorker =
  /** The book that will most likely be opened: its rows can already be fetched. */
  | { readonly type: "expect"; readonly book: string }
  | { readonly type: "open"; readonly book: string; readonly token: string | null; readonly person: string }
  | { readonly type: "watch"; readonly key: string; readonly view: ViewName; readonly param: unknown }
  | { readonly type: "unwatch"; readonly key: string }
  | { readonly type: "ask"; readonly id: number; readonly ask: AskName; readonly param: unknown }
  /** An edit that is kept. */
  | { readonly type: "edit"; readonly id: number; readonly note: string; readonly edit: Edit }
  /** An edit that is only shown, as long as something is dragged; null ends it. */
  | { readonly type: "preview"; readonly at: number; readonly edit: Edit | null }
  | { readonly type: "undo" | "redo"; readonly id: number }
  /**
   * Options that the machine is looked at with, by id; null: the usual ones. And the release that it is looked at as;
   * null: as it is now.
   */
  | {
      readonly type: "options";
      readonly options: readonly string[] | null;
      readonly release: string | null;
    }
  /** The network is back, or the person wants it tried again. */
  | { readonly type: "retry" };

/** From the worker to the page. */
export type FromWorker =
  | {
      readonly type: "view";
      readonly key: string;
      /** Entries that are new or different; all of them the first time. */
      readonly set: readonly (readonly [string, unknown])[];
      readonly gone: readonly string[];
      readonly order: readonly string[] | null;
      /** `at` of the preview that this shows, or null. */
      readonly at: number | null;
    }
  | { readonly type: "answer"; readonly id: number; readonly value: unknown }
  | { readonly type: "failed"; readonly id: number; readonly message: string; readonly code: string }
  | {
      readonly type: "sync";
      readonly sync: SyncState;
      readonly changeNo: number;
      readonly shopChangeNo: number;
    }
  /** Work begins that nothing else is heard during, or has ended. */
  | { readonly type: "working"; readonly working: boolean }
  | { readonly type: "refused"; readonly edit: RefusedEdit }
  /** A preview is through the line, and every view that it changed was sent. */
  | { readonly type: "previewed"; readonly at: number; readonly tookMs: number }
  /** What all views show from now on: a release, or the book as it is now. */
  | { readonly type: "looked"; readonly looked: Looked }
  /** Something of the server that is not of this book: jobs, the list of books, the session. */
  | { readonly type: "server"; readonly event: unknown };

export type { AskAnswer, AskName, AskParam, Edit, Looked, ViewEntry, ViewName, ViewParam };
