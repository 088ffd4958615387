/** Chains that start at one place and share out the others; each lists its members from the start on. */
type Chains = readonly (readonly number[])[];

export interface ChainProblem {
  /** Places 0 … size − 1. */
  readonly size: number;
  readonly source: number;
  /** Places that take one wire only, so that a chain can end there but not go on. */
  readonly tailOnly: ReadonlySet<number>;
  readonly distanceMm: (a: number, b: number) => number;
}

export interface ChainAnswer {
  readonly chains: Chains;
  /** Places that no chain can hold because too many of them are tails. */
  readonly left: readonly number[];
}

/** A move must gain at least this much, so that noise of sums never decides. */
const LEAST_GAIN_MM = 1e-6;
const MOST_ROUNDS = 200;

/**
 * `count` chains from the source through all other places, as short as cheapest insertion followed by moving one
 * place, turning a stretch round and exchanging the ends of two chains makes them. Every chain has a member.
 */
export function orderChains(problem: ChainProblem, count: number): ChainAnswer {
  const { source, distanceMm, tailOnly } = problem;
  const others: number[] = [];
  for (let i = 0; i < problem.size; i++) if (i !== source) others.push(i);
  const nearFirst = (a: number, b: number): number => distanceMm(source, a) - distanceMm(source, b) || a - b;
  const tails = others.filter((i) => tailOnly.has(i)).sort(nearFirst);
  const chains: number[][] = tails.slice(0, count).map((tail) => [tail]);
  const rest = new Set(others.filter((i) => !tailOnly.has(i)));
  while (chains.length < count && rest.size > 0) {
    const seeds = [source, ...chains.flat()];
    const clear = (i: number): number => Math.min(...seeds.map((seed) => distanceMm(seed, i)));
    const seed = [...rest].reduce((best, i) => (clear(i) > clear(best) ? i : best));
    rest.delete(seed);
    chains.push([seed]);
  }
  while (rest.size > 0) insertCheapest(problem, chains, rest);
  for (let round = 0; round < MOST_ROUNDS && improve(problem, chains); round++);
  return { chains, left: tails.slice(count) };
}

/** Cost of putting `place` before position `at` of a chain. */
function insertionMm(problem: ChainProblem, chain: readonly number[], at: number, place: number): number {
  const d = problem.distanceMm;
  const before = chain[at - 1] ?? problem.source;
  const after = chain[at];
  return after === undefined ? d(before, place) : d(before, place) + d(place, after) - d(before, after);
}

function allowedAt(problem: ChainProblem, chain: readonly number[], at: number, place: number): boolean {
  if (at < chain.length) return !problem.tailOnly.has(place);
  const last = chain[at - 1];
  return last === undefined || !problem.tailOnly.has(last);
}

function insertCheapest(problem: ChainProblem, chains: number[][], rest: Set<number>): void {
  let best: { chain: number[]; at: number; place: number; mm: number } | null = null;
  for (const place of rest) {
    for (const chain of chains) {
      for (let at = 0; at <= chain.length; at++) {
        if (!allowedAt(problem, chain, at, place)) continue;
        const mm = insertionMm(problem, chain, at, place);
        if (best === null || mm < best.mm - LEAST_GAIN_MM) best = { chain, at, place, mm };
      }
    }
  }
  if (best === null) {
    rest.clear();
    return;
  }
  best.chain.splice(best.at, 0, best.place);
  rest.delete(best.place);
}

function improve(problem: ChainProblem, chains: number[][]): boolean {
  let better = false;
  for (const chain of chains) if (movePlaces(problem, chains, chain)) better = true;
  for (const chain of chains) if (turnStretches(problem, chain)) better = true;
  for (let i = 0; i < chains.length; i++) {
    for (let j = i + 1; j < chains.length; j++) {
      const [p, q] = [chains[i], chains[j]];
      if (p !== undefined && q !== undefined && exchangeEnds(problem, p, q)) better = true;
    }
  }
  return better;
}

/** Moves one to three places in a row to where they cost less. */
function movePlaces(problem: ChainProblem, chains: readonly number[][], chain: number[]): boolean {
  const d = problem.distanceMm;
  let better = false;
  for (let length = 1; length <= 3; length++) {
    for (let from = 0; from + length <= chain.length; from++) {
      if (length === chain.length) continue;
      const stretch = chain.slice(from, from + length);
      const [first, last] = [stretch[0], stretch[length - 1]];
      if (first === undefined || last === undefined || problem.tailOnly.has(last)) continue;
      const before = chain[from - 1] ?? problem.source;
      const after = chain[from + length];
      const gain = d(before, first) + (after === undefined ? 0 : d(last, after) - d(before, after));
      chain.splice(from, length);
      let best: { to: number[]; at: number; mm: number; turned: boolean } | null = null;
      for (const to of chains) {
        for (let at = 0; at <= to.length; at++) {
          if (!allowedAt(problem, to, at, first)) continue;
          const left = to[at - 1] ?? problem.source;
          const right = to[at];
          for (const turned of length === 1 ? [false] : [false, true]) {
            const [head, tail] = turned ? [last, first] : [first, last];
            const mm = d(left, head) + (right === undefined ? 0 : d(tail, right) - d(left, right));
            if (mm < (best?.mm ?? gain) - LEAST_GAIN_MM) best = { to, at, mm, turned };
          }
        }
      }
      if (best === null) chain.splice(from, 0, ...stretch);
      else {
        best.to.splice(best.at, 0, ...(best.turned ? stretch.toReversed() : stretch));
        better = true;
      }
    }
  }
  return better;
}

function turnStretches(problem: ChainProblem, chain: number[]): boolean {
  const d = problem.distanceMm;
  let better = false;
  for (let i = 0; i < chain.length - 1; i++) {
    for (let j = i + 1; j < chain.length; j++) {
      const [first, last] = [chain[i], chain[j]];
      if (first === undefined || last === undefined || problem.tailOnly.has(last)) continue;
      const before = chain[i - 1] ?? problem.source;
      const after = chain[j + 1];
      const now = d(before, first) + (after === undefined ? 0 : d(last, after));
      const turned = d(before, last) + (after === undefined ? 0 : d(first, after));
      if (turned >= now - LEAST_GAIN_MM) continue;
      chain.splice(i, j - i + 1, ...chain.slice(i, j + 1).toReversed());
      better = true;
    }
  }
  return better;
}

function exchangeEnds(problem: ChainProblem, p: number[], q: number[]): boolean {
  const d = problem.distanceMm;
  for (let i = 0; i <= p.length; i++) {
    for (let j = 0; j <= q.length; j++) {
      const newP = i + (q.length - j);
      const newQ = j + (p.length - i);
      if (newP === 0 || newQ === 0) continue;
      const [pi, qj] = [p[i], q[j]];
      const [beforeP, beforeQ] = [p[i - 1] ?? problem.source, q[j - 1] ?? problem.source];
      const now = (pi === undefined ? 0 : d(beforeP, pi)) + (qj === undefined ? 0 : d(beforeQ, qj));
      const then = (qj === undefined ? 0 : d(beforeP, qj)) + (pi === undefined ? 0 : d(beforeQ, pi));
      if (then >= now - LEAST_GAIN_MM) continue;
      if (problem.tailOnly.has(beforeP) && qj !== undefined) continue;
      if (problem.tailOnly.has(beforeQ) && pi !== undefined) continue;
      const endP = p.splice(i);
      const endQ = q.splice(j);
      p.push(...endQ);
      q.push(...endP);
      return true;
    }
  }
  return false;
}
