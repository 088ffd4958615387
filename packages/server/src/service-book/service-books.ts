import { mkdir, readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { SERVICE_BOOK_STAGES, type ServiceBookJob, type ServiceBookRequest } from "@pinwright/contract";
import type { Store } from "@pinwright/store";
import { done, Refused } from "../http/problem.ts";
import { type LaneCall, TaskCancelled, TaskRefused } from "../threads/lane.ts";
import type { ResultOf, Task } from "../threads/messages.ts";
import { type Asker, type BookCase, bookCase } from "./book-case.ts";
import { SERVICE_BOOK_FILES, servicePageFile } from "./files.ts";

type ServiceBookTask = Extract<Task, { kind: "service-book" }>;

/** Finished books whose files stay at hand; the one that was asked for longest ago goes first. */
const KEPT = 12;
/** Books that may wait or run at once. */
const WAITING = 6;

interface Held {
  job: ServiceBookJob;
  readonly folder: string;
}

interface ServiceBooksOptions {
  readonly store: Store;
  /** Makes a book in another thread. */
  readonly run: (task: ServiceBookTask, call: LaneCall) => Promise<ResultOf<"service-book">>;
  readonly folder: string;
  readonly tell: (job: ServiceBookJob) => void;
  readonly log: (line: string) => void;
}

const decoder = new TextDecoder();

const isOpen = ({ state }: ServiceBookJob): boolean => state === "waiting" || state === "running";

/** Service books that are made in another thread, and the files of those that were made. */
export class ServiceBooks {
  readonly #options: ServiceBooksOptions;
  readonly #held = new Map<string, Held>();

  constructor(options: ServiceBooksOptions) {
    this.#options = options;
  }

  /** Makes a book, or gives the one that is there or under way. */
  async make(asker: Asker, book: string, asked: ServiceBookRequest): Promise<ServiceBookJob> {
    const found = await bookCase(asker, book, asked);
    const known = this.#held.get(found.id);
    if (known !== undefined && known.job.state !== "failed") {
      this.#held.delete(found.id);
      this.#held.set(found.id, known);
      return known.job;
    }
    if ([...this.#held.values()].filter(({ job }) => isOpen(job)).length >= WAITING)
      throw new Refused("busy", "Other service books are being made. Try again in a moment.");
    const held: Held = {
      job: {
        ...{ id: found.id, book, language: asked.language, revision: found.revision },
        ...{ isReleased: found.isReleased, unit: found.unit, state: "waiting", done: 0 },
        ...{ total: SERVICE_BOOK_STAGES.length, now: "", title: "", pages: 0, bytes: 0 },
      },
      folder: join(this.#options.folder, found.id),
    };
    this.#held.set(found.id, held);
    void this.#run(held, found);
    return held.job;
  }

  get(id: string): ServiceBookJob {
    return this.#find(id).job;
  }

  /** A file of a finished book. */
  path(id: string, file: Exclude<keyof typeof SERVICE_BOOK_FILES, "kept">): string {
    return join(this.#finished(id).folder, SERVICE_BOOK_FILES[file]);
  }

  /** The file of a page, counted from 1. */
  page(id: string, page: string): string {
    const { folder, job } = this.#finished(id);
    const number = /^[1-9]\d{0,4}$/u.test(page) ? Number(page) : 0;
    if (number < 1 || number > job.pages)
      throw new Refused("not-found", `This book has pages 1 to ${job.pages}.`);
    return join(folder, servicePageFile(number));
  }

  #find(id: string): Held {
    const held = this.#held.get(id);
    if (held === undefined)
      throw new Refused("not-found", "This service book is not at hand any more. Ask for it again.");
    return held;
  }

  #finished(id: string): Held {
    const held = this.#find(id);
    if (held.job.state !== "done")
      throw new Refused("not-found", "This service book is not finished. Wait for it, or ask for it again.");
    return held;
  }

  async #run(held: Held, found: BookCase): Promise<void> {
    const { run, log } = this.#options;
    try {
      await mkdir(held.folder, { recursive: true, mode: 0o700 });
      const kept = await this.#kept(found);
      const task: ServiceBookTask = {
        ...{ kind: "service-book", folder: held.folder, kept },
        given: kept === null ? await found.given() : null,
      };
      const made = await run(task, {
        onStart: () => this.#update(held, { state: "running" }),
        onProgress: ({ done: stages, now }) => this.#update(held, { done: stages, now }),
      });
      if (kept === null && found.kept !== null) await this.#keep(held, found);
      this.#update(held, { ...made, state: "done", done: SERVICE_BOOK_STAGES.length, now: "" });
    } catch (error) {
      await rm(held.folder, { recursive: true, force: true });
      const isToldWhy = error instanceof TaskRefused || error instanceof Refused;
      if (!isToldWhy && !(error instanceof TaskCancelled))
        log(
          `service book of ${held.job.book}: ${error instanceof Error ? (error.stack ?? "") : String(error)}`,
        );
      const now = isToldWhy ? error.message : "The service book could not be made.";
      this.#update(held, { state: "failed", now });
    }
    await this.#sweep();
  }

  /** The book as it was composed once; null: it is made now. */
  async #kept({ kept, released }: BookCase): Promise<ServiceBookTask["kept"]> {
    const { store } = this.#options;
    if (released !== null) {
      const { book, release, sheet } = released;
      const part = async (kind: string): Promise<string> =>
        decoder.decode(done(await store.releases.body(book, release, kind, sheet), `sheet ${sheet}`));
      const [body, frame] = await Promise.all([part("body"), part("frame")]);
      return { body, frame };
    }
    const bytes = kept === null ? null : await store.serviceBooks.find(kept);
    return bytes === null ? null : partsOf(bytes);
  }

  /** Keeps what was made; had another kept one meanwhile, that one counts from the next time on. */
  async #keep(held: Held, { kept, about }: BookCase): Promise<void> {
    if (kept === null) return;
    const bytes = await readFile(join(held.folder, SERVICE_BOOK_FILES.kept));
    await this.#options.store.serviceBooks.keep(kept, about, bytes);
  }

  #update(held: Held, change: Partial<ServiceBookJob>): void {
    held.job = { ...held.job, ...change };
    this.#options.tell(held.job);
  }

  async #sweep(): Promise<void> {
    const over = [...this.#held.entries()].filter(([, { job }]) => !isOpen(job));
    for (const [id, { folder }] of over.slice(0, Math.max(0, over.length - KEPT))) {
      this.#held.delete(id);
      await rm(folder, { recursive: true, force: true });
    }
  }
}

/** The two parts of a composed book, each as the JSON that it is read from. */
function partsOf(bytes: Uint8Array): NonNullable<ServiceBookTask["kept"]> {
  const value: unknown = JSON.parse(decoder.decode(bytes));
  if (typeof value !== "object" || value === null || !("body" in value) || !("frame" in value))
    throw new Error("A kept service book has a body and a frame.");
  return { body: JSON.stringify(value.body), frame: JSON.stringify(value.frame) };
}
