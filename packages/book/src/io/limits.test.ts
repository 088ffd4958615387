import { writeFileSync } from "node:fs";
import { Zip, ZipDeflate } from "fflate";
import { describe, expect, test } from "vitest";
import { sampleFiles } from "../testing/files.ts";
import { testFolder } from "../testing/folder.ts";
import { readBook } from "./index.ts";

const { at, put } = testFolder();

describe("limits in bounded memory", () => {
  /** Bytes of memory that reading takes at most, beyond what was there before. */
  async function peakWhile(work: () => Promise<unknown>): Promise<number> {
    const before = process.memoryUsage();
    let peak = 0;
    const watch = setInterval(() => {
      const now = process.memoryUsage();
      peak = Math.max(
        peak,
        now.heapUsed +
          now.external +
          now.arrayBuffers -
          before.heapUsed -
          before.external -
          before.arrayBuffers,
      );
    }, 1);
    await work();
    clearInterval(watch);
    return peak;
  }

  const MIB = 1024 * 1024;

  test("a cell of 300 MiB is refused after its first piece", async () => {
    put([
      ["machine.json", sampleFiles().get("machine.json") ?? ""],
      ["devices.csv", "id,label\na,"],
    ]);
    const piece = Buffer.alloc(4 * MIB, "x");
    for (let i = 0; i < 75; i++) writeFileSync(at("book", "devices.csv"), piece, { flag: "a" });
    let faults: unknown;
    const peak = await peakWhile(async () => {
      faults = (await readBook(at("book"))).faults;
    });
    expect(faults).toMatchObject([{ code: "cell-too-long", file: "devices.csv", row: 2, column: "cell 2" }]);
    expect(peak).toBeLessThan(40 * MIB);
  });

  test("a file of 300 MiB of short rows is refused at its limit", async () => {
    put([
      ["machine.json", sampleFiles().get("machine.json") ?? ""],
      ["outlines/a.dxf", ""],
    ]);
    const piece = Buffer.alloc(4 * MIB);
    piece.fill("0\n");
    for (let i = 0; i < 75; i++) writeFileSync(at("book", "outlines", "a.dxf"), piece, { flag: "a" });
    let faults: unknown;
    const peak = await peakWhile(async () => {
      faults = (await readBook(at("book"))).faults;
    });
    expect(faults).toMatchObject([{ code: "file-too-large", file: "outlines/a.dxf" }]);
    expect(peak).toBeLessThan(80 * MIB);
  });

  /** A ZIP with entries that hold as many zeros as they are told to, written piece by piece. */
  function bomb(path: string, sizes: Readonly<Record<string, number>>): void {
    writeFileSync(path, "");
    const zip = new Zip((error, data) => {
      if (error !== null) throw error;
      writeFileSync(path, data, { flag: "a" });
    });
    const piece = new Uint8Array(8 * MIB).fill(0x30);
    for (const [name, bytes] of Object.entries(sizes)) {
      const entry = new ZipDeflate(name, { level: 6 });
      zip.add(entry);
      for (let done = 0; done < bytes; done += piece.length) entry.push(piece, done + piece.length >= bytes);
    }
    zip.end();
  }

  test("a ZIP bomb is refused at the first cell of a table, and at the limit of an outline", async () => {
    bomb(at("bomb.zip"), { "devices.csv": 256 * MIB, "outlines/a.svg": 256 * MIB });
    let faults: unknown;
    const peak = await peakWhile(async () => {
      faults = (await readBook(at("bomb.zip"))).faults;
    });
    expect(faults).toContainEqual(expect.objectContaining({ code: "cell-too-long", file: "devices.csv" }));
    expect(faults).toContainEqual(
      expect.objectContaining({ code: "file-too-large", file: "outlines/a.svg" }),
    );
    expect(peak).toBeLessThan(120 * MIB);
  });
});
