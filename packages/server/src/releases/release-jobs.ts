import { mkdir, readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { type Release, type ReleaseJob, SHOP_ID } from "@pinwright/contract";
import type { Actor, NewReleaseItem, Store } from "@pinwright/store";
import type { Shelf } from "../books/shelf.ts";
import type { Place } from "../http/place.ts";
import { done, Refused } from "../http/problem.ts";
import { builtRecords } from "../service-page/built-records.ts";
import { type Lane, TaskCancelled, TaskRefused } from "../threads/lane.ts";
import { isAsReleased } from "./as-released.ts";

/** Jobs that are remembered; the oldest go first. */
const KEPT = 20;
/** Releases that may wait or run at once. */
const WAITING = 3;
/** Least time between two events that tell how far a job is, ms. */
const TELL_MS = 200;

interface Kept {
  job: ReleaseJob;
  readonly request: string;
  readonly personId: string;
  readonly folder: string;
  readonly stop: AbortController;
  toldAt: number;
}

export interface ReleaseJobsOptions {
  readonly store: Store;
  readonly shelf: Shelf;
  readonly lane: Lane;
  readonly folder: string;
  readonly now: () => number;
  readonly newId: () => string;
  readonly tell: (job: ReleaseJob) => void;
  readonly log: (line: string) => void;
  readonly version: string;
  /** Address of this server on the network; blank: none. */
  readonly address: () => string;
  /** Told when a release is written. */
  readonly written: (release: Release, wish: ReleaseWish) => Promise<void>;
}

export interface ReleaseWish {
  readonly id: string;
  readonly book: string;
  readonly name: string;
  readonly note: string;
  readonly actor: Actor;
  readonly creator: string;
  /** Where it was asked for. */
  readonly place: Place;
}

const isOpen = ({ state }: ReleaseJob): boolean => state === "waiting" || state === "running";

/** Releases that are made in another thread: all that one holds is made first, then written at once, or nothing is. */
export class ReleaseJobs {
  readonly #options: ReleaseJobsOptions;
  readonly #jobs = new Map<string, Kept>();

  constructor(options: ReleaseJobsOptions) {
    this.#options = options;
  }

  /** Every job that is known, last first. */
  list(): readonly ReleaseJob[] {
    return [...this.#jobs.values()].map(({ job }) => job).reverse();
  }

  get(id: string): ReleaseJob {
    return this.#find(id).job;
  }

  /** Begins a release; the same request again is answered with the same job. */
  async make(wish: ReleaseWish): Promise<ReleaseJob> {
    const { store, newId, folder } = this.#options;
    const known = [...this.#jobs.values()].find(
      ({ request, personId }) => request === wish.id && personId === wish.actor.personId,
    );
    if (known !== undefined) return known.job;
    await this.#mustMakeSense(wish);
    const open = [...this.#jobs.values()].filter(({ job }) => isOpen(job));
    if (open.length >= WAITING)
      throw new Refused("busy", "Other releases are being made. Wait until they are done, or stop one.");
    const id = newId();
    const kept: Kept = {
      job: {
        ...{ id, book: wish.book, name: wish.name, state: "waiting", done: 0, total: 0, now: "" },
        release: null,
      },
      request: wish.id,
      personId: wish.actor.personId,
      folder: join(folder, id),
      stop: new AbortController(),
      toldAt: 0,
    };
    this.#jobs.set(id, kept);
    for (const [old, { job }] of this.#jobs) {
      if (this.#jobs.size <= KEPT) break;
      if (!isOpen(job)) this.#jobs.delete(old);
    }
    this.#update(kept, {});
    void this.#run(kept, wish, store);
    return kept.job;
  }

  cancel(id: string): ReleaseJob {
    const kept = this.#find(id);
    // Once it is being written it is either there or not; nobody stops it half way.
    if (isOpen(kept.job)) {
      this.#update(kept, { state: "cancelled", now: "" });
      kept.stop.abort();
    }
    return kept.job;
  }

  #find(id: string): Kept {
    const kept = this.#jobs.get(id);
    if (kept === undefined)
      throw new Refused("not-found", "This release is not being made. Look at the list of releases.");
    return kept;
  }

  /** What can be said before anything is computed. */
  async #mustMakeSense({ book, name }: ReleaseWish): Promise<void> {
    const { store, shelf } = this.#options;
    const { info, tables } = await shelf.now(book);
    if (info.kind === "shop") throw new Refused("bad-request", "The shop is not released. Choose a book.");
    const releases = done(await store.releases.list(book), `book ${book}`);
    if (releases.some((release) => release.name === name))
      throw new Refused(
        "taken",
        `There is a release ${name} already, and it never changes. Choose another name.`,
      );
    const [newest] = releases;
    if (newest === undefined) return;
    const shop = await shelf.now(SHOP_ID);
    if (await isAsReleased(store, newest, tables, shop.tables))
      throw new Refused(
        "conflict",
        `Nothing was changed since release ${newest.name}: it is the book as it is now.`,
      );
  }

  async #run(kept: Kept, wish: ReleaseWish, store: Store): Promise<void> {
    const { lane, shelf, version, address, now, written, log } = this.#options;
    try {
      const held = await shelf.now(wish.book);
      const shop = await shelf.now(SHOP_ID);
      await mkdir(kept.folder, { recursive: true, mode: 0o700 });
      const made = await lane.run<"release">(
        {
          ...{ kind: "release", folder: kept.folder, name: wish.name, creator: wish.creator },
          ...{ address: address(), date: new Date(now()).toISOString().slice(0, 10) },
          tables: [...shelf.jsonOf(held.tables)],
          shop: [...shelf.jsonOf(shop.tables)],
          built: await builtRecords(store, wish.book),
        },
        {
          signal: kept.stop.signal,
          onStart: () => this.#update(kept, { state: "running" }),
          onProgress: (at) => this.#update(kept, { done: at.done, total: at.total, now: at.now }, false),
        },
      );
      const items: NewReleaseItem[] = [];
      for (const { path, ...item } of made.items)
        items.push({ ...item, body: await readFile(join(kept.folder, path)) });
      if (kept.stop.signal.aborted) return;
      const outcome = await store.releases.add(
        {
          ...{ book: wish.book, name: wish.name, request: wish.id, note: wish.note, program: version },
          ...{ changeNo: held.info.changeNo, findings: made.findings, accepted: made.accepted, items },
        },
        wish.actor,
      );
      if ("refused" in outcome && outcome.refused === "conflict")
        throw new TaskRefused("The book was changed while it was being released. Release it again.");
      const release = done(outcome, `book ${wish.book}`);
      await written(release, wish);
      this.#update(kept, { state: "done", now: "", release });
    } catch (error) {
      if (error instanceof TaskCancelled) this.#update(kept, { state: "cancelled", now: "" });
      else if (error instanceof TaskRefused || error instanceof Refused)
        this.#update(kept, { state: "failed", now: error.message });
      else {
        log(error instanceof Error ? (error.stack ?? error.message) : String(error));
        this.#update(kept, {
          state: "failed",
          now: "Something went wrong in the server; nothing was released. Its log says more.",
        });
      }
    } finally {
      await rm(kept.folder, { recursive: true, force: true });
    }
  }

  #update(kept: Kept, change: Partial<ReleaseJob>, tellAlways = true): void {
    // What was stopped stays so, whatever the thread still tells.
    if (kept.job.state === "cancelled" && change.state === undefined) return;
    kept.job = { ...kept.job, ...change };
    const at = this.#options.now();
    if (!tellAlways && at - kept.toldAt < TELL_MS) return;
    kept.toldAt = at;
    this.#options.tell(kept.job);
  }
}
