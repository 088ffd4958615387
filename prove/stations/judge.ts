import { isDeepStrictEqual } from "node:util";
import { type ArrivedFact, type Fact, factText } from "@pinwright/contract";
import { corrected, foldUnits } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import type { RecordStore } from "@pinwright/store";
import { sha256 } from "../../packages/web/src/floor/outbox/outbox.ts";
import { TEST_NAMES } from "./work.ts";

/** Stream of what the server itself writes. */
const SERVER_STREAM = "server";
const PAGE = 2_000;
const MOST_READINGS = 100_000;
const UNITS_LOOKED_AT = 50;

/** How the server's records compare with the stations' own journals. */
export interface Verdict {
  readonly written: number;
  readonly lost: number;
  readonly doubled: number;
  /** Facts of the server that no station wrote, or that say something else. */
  readonly strange: number;
  readonly aside: number;
  /** Streams whose facts did not come in their order, or with a gap. */
  readonly outOfOrder: number;
  /** Facts whose hash is not that of their text. */
  readonly wrongHashes: number;
  /** Numbers of arrival that are missing. */
  readonly numbersMissing: number;
  readonly headsEqual: boolean;
  /** Faults that the store's own check of the chains finds, with the journals' ends as heads kept elsewhere. */
  readonly chainFaults: number;
  readonly unitsEqual: boolean;
  /** Units, tests and lots whose look-up does not give what the journals say. */
  readonly wrongHistories: number;
  readonly wrongReadings: number;
  readonly wrongLots: number;
}

export const isGood = ({ written, headsEqual, unitsEqual, ...counts }: Verdict): boolean =>
  written > 0 && headsEqual && unitsEqual && Object.values(counts).every((count) => count === 0);

async function everything(records: RecordStore): Promise<readonly ArrivedFact[]> {
  const all: ArrivedFact[] = [];
  for (;;) {
    const some = await records.after(all.at(-1)?.no ?? 0, PAGE);
    if (some.length === 0) return all;
    all.push(...some);
  }
}

const keyOf = ({ stream, seq }: Fact): string => `${stream} ${seq}`;

/** Holds what the server kept against the journals, whole, row by row. */
export async function judge(records: RecordStore, journals: readonly (readonly Fact[])[]): Promise<Verdict> {
  const arrived = await everything(records);
  const written = new Map(journals.flat().map((fact) => [keyOf(fact), fact]));
  const kept = new Map<string, number>();
  const seqs = new Map<string, number>();
  const outOfOrder = new Set<string>();
  let [strange, wrongHashes] = [0, 0];
  const facts: Fact[] = [];
  const begun: Fact[] = [];
  for (const { fact, aside } of arrived) {
    if (aside !== null) continue;
    facts.push(fact);
    if ((await sha256(factText(fact))) !== fact.hash) wrongHashes++;
    if (fact.seq !== (seqs.get(fact.stream) ?? 0) + 1) outOfOrder.add(fact.stream);
    seqs.set(fact.stream, fact.seq);
    if (fact.stream === SERVER_STREAM) {
      begun.push(fact);
      continue;
    }
    const own = written.get(keyOf(fact));
    if (own === undefined || !isDeepStrictEqual(own, fact)) strange++;
    kept.set(keyOf(fact), (kept.get(keyOf(fact)) ?? 0) + 1);
  }
  const ends = journals.flatMap((facts) => {
    const last = facts.at(-1);
    return last === undefined ? [] : [{ stream: last.stream, seq: last.seq, hash: last.hash }];
  });
  const heads = (await records.heads()).filter(({ stream }) => stream !== SERVER_STREAM);
  const bySay = [...begun, ...journals.flat()];
  return {
    written: written.size,
    lost: [...written.keys()].filter((key) => !kept.has(key)).length,
    doubled: [...kept.values()].reduce((sum, count) => sum + count - 1, 0),
    strange,
    aside: arrived.length - facts.length,
    outOfOrder: outOfOrder.size,
    wrongHashes,
    numbersMissing: (arrived.at(-1)?.no ?? 0) - arrived.length,
    headsEqual: isDeepStrictEqual(
      ends.toSorted((a, b) => compareText(a.stream, b.stream)),
      heads.toSorted((a, b) => compareText(a.stream, b.stream)),
    ),
    chainFaults: (await records.verify(ends)).length,
    unitsEqual: isDeepStrictEqual(foldUnits(facts), foldUnits(bySay)),
    ...(await lookUps(records, bySay)),
  };
}

/** Holds what is looked up by unit, test and lot against the same, found by going through all facts. */
async function lookUps(
  records: RecordStore,
  facts: readonly Fact[],
): Promise<Pick<Verdict, "wrongHistories" | "wrongReadings" | "wrongLots">> {
  const gone = corrected(facts);
  const good = facts.filter((fact) => !gone.has(keyOf(fact)));
  const inner = new Map<string, Set<string>>();
  const outer = new Map<string, Set<string>>();
  const join = (map: Map<string, Set<string>>, from: string, to: string): void => {
    map.set(from, (map.get(from) ?? new Set()).add(to));
  };
  for (const { body } of good)
    if (body.kind === "fitted") {
      join(inner, body.into, body.unit);
      join(outer, body.unit, body.into);
    }
  let wrongReadings = 0;
  for (const test of TEST_NAMES) {
    const expected = good
      .flatMap(({ body, at }) =>
        body.kind === "reading" && body.test === test
          ? [`${at} ${body.unit} ${body.value} ${body.good}`]
          : [],
      )
      .sort();
    const found = (await records.readings(test, MOST_READINGS)).map(
      ({ at, unit, value, good }) => `${at} ${unit} ${value} ${good}`,
    );
    if (!isDeepStrictEqual(found.sort(), expected)) wrongReadings++;
  }
  const lots = new Map<string, Set<string>>();
  for (const { body } of good) if (body.kind === "lot-used") join(lots, body.lot, body.unit);
  let wrongLots = 0;
  for (const [lot, direct] of lots) {
    const found = (await records.trace({ lot })).map(({ unit }) => unit);
    if (!isDeepStrictEqual(new Set(found), reached(direct, outer))) wrongLots++;
  }
  let wrongHistories = 0;
  const machines = [...inner.keys()].sort(compareText).slice(0, UNITS_LOOKED_AT);
  const units = new Set(
    machines.length > 0 ? machines : facts.flatMap(({ body }) => unitsOf(body)).slice(0, 9),
  );
  const bodies = new Map(facts.map((fact) => [keyOf(fact), fact.body]));
  for (const unit of units) {
    const within = reached(new Set([unit]), inner);
    const expected = facts.filter(({ body }) => {
      const of = body.kind === "correction" ? (bodies.get(`${body.stream} ${body.seq}`) ?? body) : body;
      return unitsOf(of).some((named) => within.has(named));
    });
    const found = (await records.ofUnit(unit)).map(({ fact }) => fact.hash);
    if (!isDeepStrictEqual(found.sort(), expected.map(({ hash }) => hash).sort())) wrongHistories++;
  }
  return { wrongHistories, wrongReadings, wrongLots };
}

/** Units that a fact names. */
const unitsOf = (body: Fact["body"]): readonly string[] => [
  ...("unit" in body ? [body.unit] : []),
  ...(body.kind === "fitted" ? [body.into] : []),
  ...(body.kind === "removed" ? [body.from] : []),
];

/** Everything that can be reached, the start included. */
function reached(
  start: ReadonlySet<string>,
  next: ReadonlyMap<string, ReadonlySet<string>>,
): ReadonlySet<string> {
  const found = new Set(start);
  for (const unit of found) for (const other of next.get(unit) ?? []) found.add(other);
  return found;
}
