import { randomUUID } from "node:crypto";
import { access, copyFile, mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { ReleaseFault } from "@pinwright/contract";
import { openStore, restoreBackUp, type Store } from "@pinwright/store";
import { Shelf } from "../books/shelf.ts";
import { Refused } from "../http/problem.ts";
import { Standing } from "../records/standing.ts";
import { STORE_OPTIONS } from "../serve.ts";
import { WrongCall } from "../settings.ts";
import { Lane } from "../threads/lane.ts";
import { GateFacts } from "../units/gate-facts.ts";
import { type MadeOut, type MadeSheet, RecordSheets } from "../units/record-sheets.ts";
import { headsOfText } from "./heads-text.ts";
import { RECORDS_USAGE, type RecordsCall, type RecordsPlace, recordsSettings } from "./records-call.ts";
import { verifyRecords } from "./verify-records.ts";

const GOOD = 0;
const FOUND = 1;
const FAILED = 3;

/** The store to read; a back-up is unpacked into a folder that is dropped afterwards. */
async function storeOf(place: RecordsPlace, folder: string): Promise<Store> {
  if (place.kind !== "postgres")
    await access(place.file).catch(() => {
      throw new WrongCall(
        `there is nothing at ${place.file}: name the records with --data, --store or --back-up`,
      );
    });
  if (place.kind === "back-up")
    return restoreBackUp(place.file, { kind: "sqlite", file: join(folder, "back-up.sqlite") }, STORE_OPTIONS);
  return openStore(place, STORE_OPTIONS);
}

async function verify(store: Store, heads: string | null, say: (line: string) => void): Promise<number> {
  const given = heads === null ? [] : headsOfText(await readFile(heads, "utf8"));
  const { faults, heads: held, records } = await verifyRecords(store.records, given);
  for (const fault of faults) say(fault);
  if (faults.length > 0) {
    say(`${faults.length} found. The records are not as they were written: compare them with a back-up.`);
    return FOUND;
  }
  say(`${records} records are as they were written; ${held} heads that were given agree.`);
  return GOOD;
}

const RELEASE_FAULTS: Readonly<Record<ReleaseFault["what"], string>> = {
  changed: "is not what was released",
  missing: "is missing",
  "look-up": "is not found by what it says",
};

async function verifyReleases(store: Store, say: (line: string) => void): Promise<number> {
  const faults = await store.releases.verify();
  for (const { book, release, item, what } of faults)
    say(`${book} ${release}${item === "" ? "" : `, ${item}`} ${RELEASE_FAULTS[what]}`);
  if (faults.length > 0) {
    say(`${faults.length} found. Releases are not as they were made: compare them with a back-up.`);
    return FOUND;
  }
  let count = 0;
  for (const { id } of await store.books.list()) {
    const outcome = await store.releases.list(id);
    if ("refused" in outcome) continue;
    for (const { name, at, hash } of outcome.done) {
      say(`${id} ${name} ${at.slice(0, 10)} ${hash}`);
      count++;
    }
  }
  say(`${count} released revisions are as they were made, byte by byte.`);
  return GOOD;
}

type Sheet = Exclude<RecordsCall, { act: "help" | "verify" | "releases" }>;

async function make(store: Store, folder: string, call: Sheet): Promise<void> {
  const shelf = new Shelf(store);
  const lane = new Lane();
  const sheets = new RecordSheets({
    ...{ store, shelf, lane, folder, newId: randomUUID, now: Date.now },
    standing: new Standing(store.records),
    gateFacts: new GateFacts(store, shelf),
  });
  const made: MadeOut = { language: call.query.language, date: call.query.date, creator: "" };
  try {
    const { path } = await sheetOf(sheets, call, made);
    await copyFile(path, call.file);
  } finally {
    await lane.close();
  }
}

function sheetOf(sheets: RecordSheets, call: Sheet, made: MadeOut): Promise<MadeSheet> {
  switch (call.act) {
    case "certificate":
      return sheets.certificate(call.unit, made);
    case "crate":
      return sheets.crate(call.unit, made);
    case "labels":
      return sheets.labels(call.query, made);
    case "transport":
      return sheets.transport(call.query.book, call.query.transport ?? null, made);
  }
}

/**
 * What is done with the floor's records from the command line: sheets, and whether the records are what was written.
 * @param complain says why something cannot be done
 * @returns exit status: 0 good, 1 records are not what was written, 3 it could not be done
 * @throws WrongCall
 */
export async function recordsCommand(
  args: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
  say: (line: string) => void,
  complain: (line: string) => void,
): Promise<number> {
  const { call, place } = recordsSettings(args, env);
  if (call.act === "help") {
    say(RECORDS_USAGE);
    return GOOD;
  }
  const folder = await mkdtemp(join(tmpdir(), "pinwright-records-"));
  try {
    const store = await storeOf(place, folder);
    try {
      if (call.act === "verify") return await verify(store, call.heads, say);
      if (call.act === "releases") return await verifyReleases(store, say);
      await make(store, folder, call);
      say(`Written: ${call.file}`);
      return GOOD;
    } finally {
      await store.close();
    }
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    complain(error.problem.message);
    return FAILED;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
