import { readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { type CellTables, drawingProblem, isDrawingName, LIMITS } from "@pinwright/book";
import type { CheckSheet, ForeignSheet, SendOut } from "@pinwright/contract";
import type { NewFile } from "@pinwright/store";
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
  /** Files that parts are made from. */
  readonly drawings: readonly NewFile[];
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
    const { tables, shop, drawings, faults } = await this.#options.lane.run({ kind: "read", path, name });
    return {
      tables: tables === null ? null : await cellsInTurns(tables),
      shop: shop === null ? null : await cellsInTurns(shop),
      drawings,
      faults,
    };
  }

  /** The bytes of a drawing that was sent, checked by its name and what it begins with. */
  async takeDrawing(request: Request, name: string): Promise<Uint8Array> {
    if (!isDrawingName(name)) {
      const expected = "letters a to z, digits, dots and hyphens, ending in .pdf, .dxf, .svg, .step or .stp";
      throw new Refused(
        "bad-request",
        `A drawing cannot be called “${name.slice(0, 100)}”. Expected: ${expected}.`,
        {
          places: [{ at: "file", expected }],
        },
      );
    }
    const bytes = await this.#withSent(request, (path) => readFile(path), LIMITS.drawingBytes);
    const problem = drawingProblem(name, bytes);
    if (problem !== null) throw new Refused("unreadable", `${name} cannot be kept. Expected: ${problem}.`);
    return bytes;
  }

  /** Makes a first-article check as a PDF, a file of its own, which whoever takes it deletes. */
  checkSheet(task: {
    readonly tables: readonly TableJson[];
    readonly shop: readonly TableJson[];
    readonly sheet: CheckSheet;
    readonly creator: string;
  }): Promise<string> {
    return this.#counted(async () => {
      const path = this.freePath();
      const { tables, shop, sheet, creator } = task;
      await this.#options.lane.run({
        kind: "check-sheet",
        path,
        tables: [...tables],
        shop: [...shop],
        sheet,
        creator,
      });
      return path;
    });
  }

  /** Makes the ZIP of a pack that is sent out, a file of its own, which whoever takes it deletes. */
  sendOut(task: {
    readonly tables: readonly TableJson[];
    readonly shop: readonly TableJson[];
    readonly order: SendOut;
    readonly creator: string;
    readonly drawings: readonly NewFile[];
  }): Promise<string> {
    return this.#counted(async () => {
      const path = this.freePath();
      const { tables, shop, order, creator, drawings } = task;
      await this.#options.lane.run({
        kind: "send-out",
        path,
        tables: [...tables],
        shop: [...shop],
        order,
        creator,
        drawings: [...drawings],
      });
      return path;
    });
  }

  /** Reads what was sent as a spreadsheet or CSV with any headings. */
  readForeign(request: Request, name: string): Promise<ForeignSheet[]> {
    return this.#withSent(request, async (path) => {
      const { sheets } = await this.#options.lane.run({ kind: "read-foreign", path, name });
      return sheets;
    });
  }

  /** Writes a book to a file of its own, which whoever takes it deletes. */
  write(tables: readonly TableJson[], format: "zip" | "xlsx", drawings: readonly NewFile[]): Promise<string> {
    return this.#counted(async () => {
      const path = this.freePath();
      await this.#options.lane.run({
        kind: "write",
        path,
        format,
        tables: [...tables],
        drawings: [...drawings],
      });
      return path;
    });
  }

  /** Path of a file that is not there yet. */
  freePath(): string {
    return join(this.#options.folder, `${this.#options.newId()}.part`);
  }

  #withSent<T>(
    request: Request,
    work: (path: string) => Promise<T>,
    limit: number = LIMITS.packedBytes,
  ): Promise<T> {
    return this.#counted(async () => {
      const path = this.freePath();
      try {
        const bytes = await saveBody(request, path, limit);
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
