import { readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import type { Store } from "@pinwright/store";
import { done, Refused } from "../http/problem.ts";
import { type Asker, type BookCase, bookCase } from "../service-book/book-case.ts";
import { type Lane, TaskRefused } from "../threads/lane.ts";
import { builtRecords } from "./built-records.ts";

/** Fault files that stay at hand; each is some megabytes, and takes seconds to make. */
const KEPT = 6;
/** Name of the file that a release keeps. */
const IN_RELEASE = "fault-file.json";

interface Asked {
  readonly release?: string | undefined;
  readonly unit?: string | undefined;
}

interface FaultFilesOptions {
  readonly store: Store;
  readonly lane: Lane;
  readonly folder: string;
  readonly newId: () => string;
}

/** What faults are found with: of a release as it keeps it, of the book as it is now and of single machines made anew. */
export class FaultFiles {
  readonly #options: FaultFilesOptions;
  readonly #made = new Map<string, Promise<string>>();

  constructor(options: FaultFilesOptions) {
    this.#options = options;
  }

  /** The fault file as JSON, and the name of its machine or revision. */
  async of(
    asker: Asker,
    book: string,
    { release, unit }: Asked,
  ): Promise<{ readonly json: string; readonly name: string }> {
    if (release !== undefined && unit === undefined) {
      const kept = await this.#options.store.releases.body(book, release, "file", IN_RELEASE);
      const bytes = done(kept, `release ${release} of ${book}`);
      return { json: new TextDecoder().decode(bytes), name: release };
    }
    const found = await bookCase(asker, book, { language: "en", unit });
    return { json: await this.#make(book, found), name: unit ?? "draft" };
  }

  #make(book: string, found: BookCase): Promise<string> {
    const known = this.#made.get(found.id);
    if (known !== undefined) return known;
    const making = this.#written(book, found);
    this.#made.set(found.id, making);
    making.catch(() => this.#made.delete(found.id));
    for (const oldest of this.#made.keys()) {
      if (this.#made.size <= KEPT) break;
      this.#made.delete(oldest);
    }
    return making;
  }

  async #written(book: string, found: BookCase): Promise<string> {
    const { store, lane, folder, newId } = this.#options;
    const path = join(folder, `${newId()}.json`);
    const { tables, shop, options, revision } = await found.given();
    try {
      const given = { tables, shop, options, revision, built: await builtRecords(store, book) };
      await lane.run<"fault-file">({ kind: "fault-file", path, given });
      return await readFile(path, "utf8");
    } catch (error) {
      if (error instanceof TaskRefused) throw new Refused("bad-request", error.message);
      throw error;
    } finally {
      await rm(path, { force: true });
    }
  }
}
