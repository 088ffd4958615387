import { eventSchema, type ServerEvent } from "@pinwright/contract";
import type {
  AskAnswer,
  AskName,
  AskParam,
  Edit,
  FromWorker,
  Looked,
  RefusedEdit,
  SyncState,
  ToWorker,
  ViewEntry,
  ViewName,
  ViewParam,
} from "../../worker/protocol.ts";

import { takeWorker } from "./early-worker.ts";

/** Entries of a view by key, in the view's own order. A new map whenever an entry differs. */
export type Entries<N extends ViewName> = ReadonlyMap<string, ViewEntry<N>>;

interface Watch {
  readonly view: ViewName;
  readonly param: unknown;
  entries: ReadonlyMap<string, unknown> | null;
  readonly listeners: Set<() => void>;
}

/** A request that the worker or the server refused. */
export class DeskError extends Error {
  readonly code: string;
  constructor(message: string, code: string) {
    super(message);
    this.code = code;
  }
}

/** After so long at work the person is told. */
const TELL_AFTER_MS = 1_000;

/** The page's side of the worker: views to look at, questions, edits. */
export class DeskClient {
  readonly bookId: string;
  readonly #worker: Worker;
  readonly #watches = new Map<string, Watch>();
  readonly #waiting = new Map<number, { done: (value: unknown) => void; failed: (error: Error) => void }>();
  readonly #listeners = new Set<() => void>();
  readonly #serverListeners = new Set<(event: ServerEvent) => void>();
  #next = 1;
  #sync: SyncState = { state: "loading" };
  #changeNo = 0;
  #looked: Looked = { release: null, is: "shown" };
  #shopChangeNo = 0;
  #refused: readonly RefusedEdit[] = [];
  /** The worker is at something. */
  #busy = false;
  #working = false;
  #workTimer: ReturnType<typeof setTimeout> | undefined;
  /** Called when a preview is through the line: `at` of the preview and the worker's own time. */
  onPreviewed: ((at: number, tookMs: number) => void) | null = null;

  constructor(bookId: string, token: string | null, person: string) {
    this.bookId = bookId;
    this.#worker = takeWorker(bookId);
    this.#worker.onmessage = (event: MessageEvent<FromWorker>) => this.#heard(event.data);
    this.#worker.onerror = (event) => {
      this.#sync = { state: "failed", code: "internal", message: event.message };
      this.#tellAll();
    };
    this.#post({ type: "open", book: bookId, token, person });
    this.#mindTime();
  }

  close(): void {
    clearTimeout(this.#workTimer);
    this.#worker.terminate();
  }

  get sync(): SyncState {
    return this.#sync;
  }

  /** True when the worker has been at something for a second and more: what is shown is from before it. */
  get working(): boolean {
    return this.#working;
  }

  /** Number of the last change set that is in what is shown. */
  get changeNo(): number {
    return this.#changeNo;
  }

  /** The same for the shop. */
  get shopChangeNo(): number {
    return this.#shopChangeNo;
  }

  /** Edits of this browser that were refused and that the person has not put away yet. */
  get refused(): readonly RefusedEdit[] {
    return this.#refused;
  }

  forgetRefused(edit: RefusedEdit): void {
    this.#refused = this.#refused.filter((one) => one !== edit);
    this.#tellAll();
  }

  /** Calls back whenever `sync`, `changeNo`, `looked`, `refused` or `working` is another. */
  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Calls back for jobs, the list of books and the session. */
  onServer(listener: (event: ServerEvent) => void): () => void {
    this.#serverListeners.add(listener);
    return () => this.#serverListeners.delete(listener);
  }

  /** Keeps a view up to date until the returned function is called. */
  watch<N extends ViewName>(view: N, param: ViewParam<N>, listener: () => void): () => void {
    const key = watchKey(view, param);
    const watch = this.#watches.get(key) ?? { view, param, entries: null, listeners: new Set() };
    if (!this.#watches.has(key)) {
      this.#watches.set(key, watch);
      this.#post({ type: "watch", key, view, param });
    }
    watch.listeners.add(listener);
    return () => {
      watch.listeners.delete(listener);
      // A section that is left and entered again within a moment finds its view as it was.
      setTimeout(() => {
        if (watch.listeners.size > 0 || this.#watches.get(key) !== watch) return;
        this.#watches.delete(key);
        this.#post({ type: "unwatch", key });
      }, 2_000);
    };
  }

  /** What a watched view says now; null before its first answer. */
  entries<N extends ViewName>(view: N, param: ViewParam<N>): Entries<N> | null {
    const watch = this.#watches.get(watchKey(view, param));
    // The worker made these entries by the view of this name.
    return (watch?.entries ?? null) as Entries<N> | null;
  }

  ask<N extends AskName>(ask: N, param: AskParam<N>): Promise<AskAnswer<N>> {
    // The worker answers by the function of this name.
    return this.#request((id) => ({ type: "ask", id, ask, param })) as Promise<AskAnswer<N>>;
  }

  /** Does an edit; resolves as soon as it is on the screen, before it is on the server. */
  async edit(note: string, edit: Edit): Promise<void> {
    await this.#request((id) => ({ type: "edit", id, note, edit }));
  }

  /** Shows an edit without doing it; null ends it. */
  preview(at: number, edit: Edit | null): void {
    this.#post({ type: "preview", at, edit });
  }

  /**
   * Looks at the machine as it is with some options; null: the usual ones. And as a release keeps it; null: as it is now.
   * Every view follows; `looked` tells when they do.
   */
  look(options: readonly string[] | null, release: string | null = null): void {
    this.#post({ type: "options", options, release });
  }

  /** The release that all views show; null: the book as it is now. */
  get looked(): Looked {
    return this.#looked;
  }

  undo(): Promise<string> {
    return this.#request((id) => ({ type: "undo", id })).then(String);
  }

  redo(): Promise<string> {
    return this.#request((id) => ({ type: "redo", id })).then(String);
  }

  retry(): void {
    this.#post({ type: "retry" });
  }

  #request(message: (id: number) => ToWorker): Promise<unknown> {
    const id = this.#next++;
    return new Promise((done, failed) => {
      this.#waiting.set(id, { done, failed });
      this.#post(message(id));
    });
  }

  #post(message: ToWorker): void {
    this.#worker.postMessage(message);
  }

  #heard(message: FromWorker): void {
    switch (message.type) {
      case "view":
        this.#viewed(message);
        break;
      case "answer":
        this.#waiting.get(message.id)?.done(message.value);
        this.#waiting.delete(message.id);
        break;
      case "failed":
        this.#waiting.get(message.id)?.failed(new DeskError(message.message, message.code));
        this.#waiting.delete(message.id);
        break;
      case "sync":
        this.#sync = message.sync;
        this.#changeNo = message.changeNo;
        this.#shopChangeNo = message.shopChangeNo;
        this.#mindTime();
        this.#tellAll();
        break;
      case "looked":
        this.#looked = message.looked;
        this.#tellAll();
        break;
      case "working":
        this.#busy = message.working;
        this.#mindTime();
        break;
      case "refused":
        this.#refused = [...this.#refused, message.edit];
        this.#tellAll();
        break;
      case "previewed":
        this.onPreviewed?.(message.at, message.tookMs);
        break;
      case "server": {
        const event = eventSchema.safeParse(message.event);
        if (event.success) for (const listener of this.#serverListeners) listener(event.data);
        break;
      }
    }
  }

  /** Minds how long the worker has been at something, or the book at opening. */
  #mindTime(): void {
    if (this.#busy || this.#sync.state === "loading") {
      this.#workTimer ??= setTimeout(() => {
        this.#working = true;
        this.#tellAll();
      }, TELL_AFTER_MS);
      return;
    }
    clearTimeout(this.#workTimer);
    this.#workTimer = undefined;
    if (!this.#working) return;
    this.#working = false;
    this.#tellAll();
  }

  #viewed(message: Extract<FromWorker, { type: "view" }>): void {
    const watch = this.#watches.get(message.key);
    if (watch === undefined) return;
    const merged = new Map(watch.entries ?? []);
    for (const key of message.gone) merged.delete(key);
    for (const [key, entry] of message.set) merged.set(key, entry);
    watch.entries =
      message.order === null ? merged : new Map(message.order.map((key) => [key, merged.get(key)]));
    for (const listener of watch.listeners) listener();
  }

  #tellAll(): void {
    for (const listener of this.#listeners) listener();
  }
}

const watchKey = (view: ViewName, param: unknown): string => `${view} ${JSON.stringify(param)}`;
