import { UnionFind } from "@pinwright/kernel";
import {
  BenchModel,
  type Groups,
  type HarnessFault,
  numberedGroups,
  type TestBench,
  type TestPlace,
} from "./bench.ts";
import { areNeighbours, suspects } from "./suspects.ts";

/** What a tug on a contact showed; `wire-missing`: fewer wires go into it than the list says. */
export type Tug = "held" | "came-out" | "nothing-there" | "wire-missing";

/** Faults that explain some of the readings equally well; the first is the likeliest. */
export interface Explanation {
  /** Places whose readings are explained. */
  readonly placeIds: readonly string[];
  /** Each is one way to explain all of them: one fault, or two at once. None when nothing explains them. */
  readonly ways: readonly (readonly HarnessFault[])[];
}

/** What is wrong with a harness, as far as its readings tell. */
export interface HarnessDiagnosis {
  readonly good: boolean;
  readonly explanations: readonly Explanation[];
}

/** Pairs of faults tried for one cluster of readings. */
const MOST_PAIRS = 60_000;
/** Ways that are kept of those that explain a cluster equally well. */
const MOST_WAYS = 40;

/**
 * What is wrong with a harness on the tester. Places whose groups are not as expected are taken together where one
 * reading leads to another; for each cluster every single fault is tried on a model of the harness, then every two, and
 * those that give just these readings are kept. A wire that was never laid and one that is open at an end read the same:
 * the tug on its contacts, which comes first, tells them apart.
 * @param measured group of each place, in the order of the bench's places
 * @param tugs what tugging showed, by place
 * @throws RangeError when the readings are not as many as the places
 */
export function diagnoseHarness(
  bench: TestBench,
  measured: readonly number[],
  tugs: ReadonlyMap<string, Tug> = new Map(),
): HarnessDiagnosis {
  if (measured.length !== bench.places.length)
    throw new RangeError(`${measured.length} readings, expected ${bench.places.length}, one for each place`);
  const model = new BenchModel(bench);
  const expected = model.groups([]);
  const read = numberedGroups(measured);
  const clusters = differing(bench.places, expected, read);
  return {
    good: clusters.length === 0,
    explanations: clusters.map((cluster) => explain(model, cluster, expected, read, tugs)),
  };
}

/** Places whose group is another than expected, with those that either group leads to. */
function differing(places: readonly TestPlace[], expected: Groups, read: Groups): readonly TestPlace[][] {
  const sets = new UnionFind(places.length);
  const joinAll = (groups: Groups): readonly number[][] => {
    const members: number[][] = [];
    groups.forEach((group, i) => {
      const list = members[group];
      if (list === undefined) members[group] = [i];
      else list.push(i);
    });
    return members;
  };
  const [wanted, found] = [joinAll(expected), joinAll(read)];
  const isSame = (i: number): boolean =>
    (wanted[expected[i] ?? 0] ?? []).join() === (found[read[i] ?? 0] ?? []).join();
  for (const members of [...wanted, ...found])
    for (const i of members) if (!isSame(i)) sets.join(members[0] ?? i, i);
  const clusters = new Map<number, TestPlace[]>();
  places.forEach((place, i) => {
    if (isSame(i)) return;
    const root = sets.find(i);
    clusters.set(root, [...(clusters.get(root) ?? []), place]);
  });
  return [...clusters.values()];
}

function explain(
  model: BenchModel,
  cluster: readonly TestPlace[],
  expected: Groups,
  read: Groups,
  tugs: ReadonlyMap<string, Tug>,
): Explanation {
  const at = cluster.map(({ id }) => model.placeIndex(id));
  const wanted = numberedGroups(at.map((i) => read[i] ?? -1)).join();
  const fits = (faults: readonly HarnessFault[]): boolean => {
    const groups = model.groups(faults);
    return numberedGroups(at.map((i) => groups[i] ?? -1)).join() === wanted;
  };
  const all = suspects(model, cluster, expected);
  const single = all.filter((fault) => fits([fault])).map((fault) => [fault]);
  const ways = single.length > 0 ? single : pairs(all, fits);
  const likeliness = (faults: readonly HarnessFault[]): number =>
    faults.reduce((sum, fault) => sum + oddness(model, fault, tugs), 0);
  return {
    placeIds: cluster.map(({ id }) => id),
    ways: ways
      .map((faults, i) => ({ faults, i, odd: likeliness(faults) }))
      .sort((a, b) => a.odd - b.odd || a.i - b.i)
      .slice(0, MOST_WAYS)
      .map(({ faults }) => faults),
  };
}

function pairs(
  all: readonly HarnessFault[],
  fits: (faults: readonly HarnessFault[]) => boolean,
): HarnessFault[][] {
  const found: HarnessFault[][] = [];
  let tried = 0;
  for (let i = 0; i < all.length; i++)
    for (let j = i + 1; j < all.length; j++) {
      const [a, b] = [all[i], all[j]];
      if (a === undefined || b === undefined) continue;
      if (++tried > MOST_PAIRS) return found;
      if (fits([a, b])) found.push([a, b]);
    }
  return found;
}

/**
 * How odd a fault would be beside others that read the same, 0 the least. Mixing up or bridging neighbours is likelier
 * than places apart; a contact that held when it was tugged is in its cavity, and a wire whose contacts are both not there
 * was never laid. Common practice, no source.
 */
function oddness(model: BenchModel, fault: HarnessFault, tugs: ReadonlyMap<string, Tug>): number {
  const place = (id: string): TestPlace | undefined => model.bench.places[model.placeIndex(id)];
  const near = (a: string, b: string): number => {
    const [p, q] = [place(a), place(b)];
    return p !== undefined && q !== undefined && areNeighbours(p, q) ? 0 : 0.5;
  };
  switch (fault.kind) {
    case "missing-wire": {
      const wire = model.bench.wires.find(({ id }) => id === fault.wireId);
      const told = [wire?.a ?? "", wire?.b ?? ""].flatMap((id) => tugs.get(id) ?? []);
      if (told.length === 0) return 1;
      return told.every((tug) => tug === "nothing-there" || tug === "wire-missing") ? 0 : 4;
    }
    case "open": {
      const tug = tugs.get(fault.at);
      if (tug === "came-out") return 0;
      return tug === "nothing-there" || tug === "wire-missing"
        ? 1.5
        : place(fault.at) === undefined
          ? 1.2
          : 0.9;
    }
    case "contact-out":
      return tugs.get(fault.at) === "held" ? 3 : 0.5;
    case "short":
      return 0.2 + near(fault.a, fault.b);
    case "swapped":
      return near(fault.a, fault.b);
    case "wrong-cavity":
      return near(fault.contact, fault.cavity);
  }
}
