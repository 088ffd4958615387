import type { Fact, StreamFault, StreamHead } from "@pinwright/contract";
import type { Store } from "@pinwright/store";
import type { GivenHead } from "./heads-text.ts";

type Records = Store["records"];

const DIGITS = 64;
const AT_ONCE = 2000;

/** What was found, as lines to be read; none: nothing is wrong. */
export interface VerifiedRecords {
  readonly faults: readonly string[];
  /** Heads that were held against the records. */
  readonly heads: number;
  /** Records that were read. */
  readonly records: number;
}

const WHAT: Readonly<Record<StreamFault["what"], string>> = {
  changed: "is not what was written",
  missing: "is missing",
  inserted: "was slipped in, or does not follow the one before",
  "look-up": "is not found by what it says",
  head: "is where the stream should end, and it does not",
};

const placeOf = ({ stream, seq }: { readonly stream: string; readonly seq: number }): string =>
  `${stream} ${seq}`;

/** Records at some places; null: they cannot be read, because one was changed to what is no record. */
async function factsAt(
  records: Records,
  places: ReadonlySet<string>,
): Promise<{ readonly count: number; readonly found: ReadonlyMap<string, Fact> } | null> {
  const found = new Map<string, Fact>();
  let count = 0;
  try {
    for (let no = 0; ; ) {
      const some = await records.after(no, AT_ONCE);
      const last = some.at(-1);
      if (last === undefined) return { count, found };
      for (const { fact } of some) if (places.has(placeOf(fact))) found.set(placeOf(fact), fact);
      count += some.length;
      no = last.no;
    }
  } catch {
    return null;
  }
}

/** Heads with whole hashes: of one that was copied in part, the rest is that of the record, if it begins so. */
function whole(given: readonly GivenHead[], found: ReadonlyMap<string, Fact>): readonly StreamHead[] {
  return given.map((head) => {
    if (head.hash.length === DIGITS) return head;
    const hash = found.get(placeOf(head))?.hash ?? "";
    return { ...head, hash: hash.startsWith(head.hash) ? hash : head.hash.padEnd(DIGITS, "0") };
  });
}

/** Who wrote what, when: so that whoever reads the fault knows where to look. */
function factText({ at, person, body }: Fact): string {
  const about = "unit" in body ? ` of ${body.unit}` : "";
  return `; it now says: ${body.kind}${about}, ${at}, by ${person}`;
}

/** Between which heads that were given something was changed, where one no longer stands. */
function between(fault: StreamFault, given: readonly StreamHead[], bad: ReadonlySet<string>): string {
  const isGiven = given.some((head) => placeOf(head) === placeOf(fault));
  if (!isGiven) return "";
  const good = given
    .filter((head) => head.stream === fault.stream && head.seq < fault.seq && !bad.has(placeOf(head)))
    .reduce((most, { seq }) => Math.max(most, seq), 0);
  return `; the head that was given says otherwise, so the stream was written anew somewhere from record ${good + 1} to ${fault.seq}`;
}

/**
 * Reads every record again and holds it against its chain, and the chains against heads that were written down elsewhere.
 * Says of each fault which record of which stream it is, what was done to it, and what it says now.
 */
export async function verifyRecords(records: Records, given: readonly GivenHead[]): Promise<VerifiedRecords> {
  const before = await factsAt(records, new Set(given.map(placeOf)));
  const heads = whole(given, before?.found ?? new Map());
  const faults = await records.verify(heads);
  const bad = new Set(faults.map(placeOf));
  const now = faults.length === 0 ? before : await factsAt(records, bad);
  return {
    heads: heads.length,
    records: now?.count ?? 0,
    faults: faults.map((fault) => {
      const fact = now?.found.get(placeOf(fault));
      const says = fact === undefined || fault.what === "missing" ? "" : factText(fact);
      return `stream ${fault.stream}, record ${fault.seq}: ${WHAT[fault.what]}${between(fault, heads, bad)}${says}`;
    }),
  };
}
