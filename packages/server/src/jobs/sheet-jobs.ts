import { mkdir, rm } from "node:fs/promises";
import { join } from "node:path";
import type { Job, ServerEvent, SheetRequest } from "@pinwright/contract";
import { RUN_SHEET_KINDS, SHEET_KINDS } from "@pinwright/sheets";
import type { HeldBook } from "../books/shelf.ts";
import { Refused } from "../http/problem.ts";
import type { TableJson } from "../threads/cells-json.ts";
import type { Lane, LaneCall } from "../threads/lane.ts";
import { TaskCancelled, TaskRefused } from "../threads/lane.ts";
import type { CompareCase, MadeFile, Task } from "../threads/messages.ts";

const MIB = 1024 * 1024;
/** Jobs whose files are kept, and how much they may hold together; the oldest go first. */
const KEPT = { jobs: 20, bytes: 1024 * MIB } as const;
/** Most bytes of one job. */
const MOST_BYTES = 512 * MIB;
/** Jobs that may wait, of all people and of one. */
const WAITING = { all: 20, person: 5 } as const;
/** Least time between two events that tell how far a job is, ms. */
const TELL_MS = 200;

/** Name under which all files of a job come in one. */
const ALL_ZIP = "all.zip";

interface Kept {
  job: Job;
  readonly personId: string;
  readonly requestId: string;
  readonly folder: string;
  readonly stop: AbortController;
  readonly paths: Map<string, string>;
  toldAt: number;
}

export interface SheetJobsOptions {
  readonly lane: Lane;
  /** Folder of the files that are made. */
  readonly folder: string;
  readonly now: () => number;
  readonly newId: () => string;
  readonly tell: (event: ServerEvent) => void;
  readonly log: (line: string) => void;
}

export interface NewJob {
  readonly request: SheetRequest;
  readonly held: HeldBook;
  readonly tables: readonly TableJson[];
  readonly shop: readonly TableJson[];
  readonly personId: string;
  readonly creator: string;
  /** Revision that the sheets are after; blank: none was released. */
  readonly revision: string;
  /** Address of this server on the network; blank: none. */
  readonly address: string;
  /** What two revisions are compared from; null: nothing is compared. */
  readonly compare: CompareCase | null;
}

type SheetTask = Extract<Task, { kind: "sheets" | "compare" }>;

/** Kinds that are asked for, in their own order; refuses one that there is not. */
function knownKinds<K extends string>(asked: readonly string[], known: readonly K[], at: string): K[] {
  const unknown = asked.find((kind) => !known.some((one) => one === kind));
  if (unknown !== undefined)
    throw new Refused("bad-request", `There is no sheet "${unknown}"; there are ${known.join(", ")}.`, {
      places: [{ at, expected: known.join(", ") }],
    });
  return known.filter((kind) => asked.includes(kind));
}

/** Sheets of runs that are asked for; null: none. */
function runsOf({ runs }: NewJob["request"]): Extract<Task, { kind: "sheets" }>["runs"] {
  if (runs === undefined) return null;
  return {
    kinds: knownKinds(runs.kinds, RUN_SHEET_KINDS, "runs.kinds"),
    run: runs.run ?? null,
    today: runs.today,
  };
}

/** Sheets that are made in another thread, one job after the other, and the files that came of it. */
export class SheetJobs {
  readonly #options: SheetJobsOptions;
  readonly #jobs = new Map<string, Kept>();

  constructor(options: SheetJobsOptions) {
    this.#options = options;
  }

  /** Every job that is known, last first. */
  list(): readonly Job[] {
    return [...this.#jobs.values()].map((kept) => kept.job).reverse();
  }

  get(id: string): Job {
    return this.#find(id).job;
  }

  ownerOf(id: string): string {
    return this.#find(id).personId;
  }

  /** Where a file of a job lies. The name is only looked up, never made into a path. */
  file(id: string, name: string): { readonly path: string; readonly job: Job } {
    const kept = this.#find(id);
    const path =
      name === ALL_ZIP && kept.job.state === "done" ? join(kept.folder, ALL_ZIP) : kept.paths.get(name);
    if (path === undefined) throw new Refused("not-found", "These sheets have no file of this name.");
    return { path, job: kept.job };
  }

  make({ request, held, tables, shop, personId, creator, revision, address, compare }: NewJob): Job {
    const before = [...this.#jobs.values()].find(
      (k) => k.requestId === request.id && k.personId === personId,
    );
    if (before !== undefined) return before.job;
    const kinds = knownKinds(request.kinds, SHEET_KINDS, "kinds");
    const runs = runsOf(request);
    const open = [...this.#jobs.values()].filter(
      ({ job }) => job.state === "waiting" || job.state === "running",
    );
    if (open.length >= WAITING.all || open.filter((k) => k.personId === personId).length >= WAITING.person)
      throw new Refused(
        "busy",
        "Other sheets are being made. Wait until they are done, or stop some.",
        {},
        {
          "retry-after": "10",
        },
      );
    const id = this.#options.newId();
    const kept: Kept = {
      job: {
        id,
        book: held.info.id,
        changeNo: held.info.changeNo,
        state: "waiting",
        done: 0,
        total: 0,
        now: "",
        files: [],
      },
      personId,
      requestId: request.id,
      folder: join(this.#options.folder, id),
      stop: new AbortController(),
      paths: new Map(),
      toldAt: 0,
    };
    this.#jobs.set(id, kept);
    this.#tell(kept, true);
    const given = { folder: kept.folder, tables: [...tables], shop: [...shop] };
    if (compare !== null) {
      void this.#run(kept, {
        ...{ kind: "compare", ...given, compare, language: request.language, creator },
      });
      return kept.job;
    }
    const task: Extract<Task, { kind: "sheets" }> = {
      kind: "sheets",
      ...given,
      harnessIds: request.harnessIds,
      kinds,
      formats: request.formats,
      language: request.language,
      machines: request.machines ?? 1,
      runs,
      creator,
      revision,
      address,
      mostBytes: MOST_BYTES,
    };
    void this.#run(kept, task);
    return kept.job;
  }

  /** Stops a job; one that is done stays as it is. */
  cancel(id: string): Job {
    const kept = this.#find(id);
    if (kept.job.state === "waiting" || kept.job.state === "running") {
      this.#update(kept, { state: "cancelled", now: "", files: [] });
      kept.paths.clear();
      kept.stop.abort();
    }
    return kept.job;
  }

  #find(id: string): Kept {
    const kept = this.#jobs.get(id);
    if (kept === undefined)
      throw new Refused("not-found", "These sheets are not there any more. Make them again.");
    return kept;
  }

  async #run(kept: Kept, task: SheetTask): Promise<void> {
    try {
      await mkdir(kept.folder, { recursive: true, mode: 0o700 });
      const call: LaneCall = {
        signal: kept.stop.signal,
        onStart: () => this.#update(kept, { state: "running" }),
        onProgress: ({ done, total, now, file }) => {
          if (file !== undefined) kept.paths.set(file.name, join(kept.folder, file.path));
          const files = file === undefined ? kept.job.files : [...kept.job.files, entryOf(file)];
          this.#update(kept, { done, total, now, files }, false);
        },
      };
      await (task.kind === "sheets"
        ? this.#options.lane.run(task, call)
        : this.#options.lane.run(task, call));
      this.#update(kept, { state: "done", now: "" });
    } catch (error) {
      kept.paths.clear();
      // What a job left behind is of no use to anybody.
      await rm(kept.folder, { recursive: true, force: true });
      if (error instanceof TaskCancelled) this.#update(kept, { state: "cancelled", now: "", files: [] });
      else {
        const why = error instanceof TaskRefused ? error.message : "The sheets could not be made.";
        if (!(error instanceof TaskRefused))
          this.#options.log(
            `sheets of ${kept.job.book}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
          );
        this.#update(kept, { state: "failed", now: why, files: [] });
      }
    }
    await this.#sweep();
  }

  #update(kept: Kept, patch: Partial<Job>, always = true): void {
    kept.job = { ...kept.job, ...patch };
    this.#tell(kept, always);
  }

  #tell(kept: Kept, always: boolean): void {
    const now = this.#options.now();
    if (!always && now - kept.toldAt < TELL_MS) return;
    kept.toldAt = now;
    // While it runs the list of files would grow with every event: it comes with the last one.
    const files = kept.job.state === "done" ? kept.job.files : [];
    this.#options.tell({ type: "job", job: { ...kept.job, files } });
  }

  /** Lets the oldest jobs go that are over. */
  async #sweep(): Promise<void> {
    const over = [...this.#jobs.values()].filter(
      ({ job }) => job.state !== "waiting" && job.state !== "running",
    );
    const bytesOf = ({ job }: Kept): number => job.files.reduce((sum, file) => sum + file.bytes, 0);
    let bytes = over.reduce((sum, kept) => sum + bytesOf(kept), 0);
    let count = over.length;
    for (const kept of over) {
      if (count <= KEPT.jobs && bytes <= KEPT.bytes) break;
      count--;
      bytes -= bytesOf(kept);
      this.#jobs.delete(kept.job.id);
      await rm(kept.folder, { recursive: true, force: true });
    }
  }
}

const entryOf = ({ name, title, bytes, body }: MadeFile): Job["files"][number] => ({
  name,
  title,
  bytes,
  body,
});
