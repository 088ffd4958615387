import { rm } from "node:fs/promises";
import { join } from "node:path";
import { type CellTables, LIMITS } from "@pinwright/book";
import type { ForeignSheet } from "@pinwright/contract";
import { Refused } from "../http/problem.ts";
import { saveBody } from "../http/read-body.ts";
import { cellsInTurns, type TableJson } from "../threads/cells-json.ts";
import { type Lane, TaskRefused } from "../threads/lane.ts";
import type { ResultOf } from "../threads/messages.ts";

/** Files that may be worked on or wait at once. */
const AT_ONCE = 12;

/** A book or a shop that was read from a file. */
export interface ReadCells {
  /** Null when nothing in the file is a book. */
  readonly tables: CellTables | null;
  /** Null when there is no shop in it. */
  readonly shop: CellTables | null;
  readonly faults: ResultOf<"read">["faults"];
}

export interface FilesOptions {
  readonly lane: Lane;
  /** Folder for files that are on their way. */
  readonly folder: string;
  readonly newId: () => string;
}

/** Books that come from files and go to files, in another thread. */
export class Files {
  readonly #options: FilesOptions;
  #open = 0;

  constructor(options: FilesOptions) {
    this.#options = options;
  }

  /** Reads what was sent as a book. @param name what the person calls the file; it never becomes a path */
  readSent(request: Request, name: string): Promise<ReadCells> {
    return this.#withSent(request, (path) => this.readAt(path, name));
  }

  /** Reads a book from a folder or a file of this computer. */
  async readAt(path: string, name: string): Promise<ReadCells> {
    const { tables, shop, faults } = await this.#options.lane.run({ kind: "read", path, name });
    return {
      tables: tables === null ? null : await cellsInTurns(tables),
      shop: shop === null ? null : await cellsInTurns(shop),
      faults,
    };
  }

  /** Reads what was sent as a spreadsheet or CSV with any headings. */
  readForeign(request: Request, name: string): Promise<ForeignSheet[]> {
    return this.#withSent(request, async (path) => {
      const { sheets } = await this.#options.lane.run({ kind: "read-foreign", path, name });
      return sheets;
    });
  }

  /** Writes a book to a file of its own, which whoever takes it deletes. */
  write(tables: readonly TableJson[], format: "zip" | "xlsx"): Promise<string> {
    return this.#counted(async () => {
      const path = this.#path();
      await this.#options.lane.run({ kind: "write", path, format, tables: [...tables] });
      return path;
    });
  }

  /** Path of a file that is not there yet. */
  #path(): string {
    return join(this.#options.folder, `${this.#options.newId()}.part`);
  }

  #withSent<T>(request: Request, work: (path: string) => Promise<T>): Promise<T> {
    return this.#counted(async () => {
      const path = this.#path();
      try {
        const bytes = await saveBody(request, path, LIMITS.packedBytes);
        if (bytes === 0) throw new Refused("unreadable", "The file is empty.");
        return await work(path);
      } finally {
        await rm(path, { force: true });
      }
    });
  }

  async #counted<T>(work: () => Promise<T>): Promise<T> {
    if (this.#open >= AT_ONCE)
      throw new Refused(
        "busy",
        "Other files are being read and written. Try again in a moment.",
        {},
        {
          "retry-after": "5",
        },
      );
    this.#open++;
    try {
      return await work();
    } catch (error) {
      if (error instanceof TaskRefused) throw new Refused("unreadable", error.message);
      throw error;
    } finally {
      this.#open--;
    }
  }
}
