import { seededRandom } from "../random.ts";
import type { Distances } from "./matrix.ts";

/** A closed tour: nearest insertion, then local search with `kicks` counted disturbances. */
export const goodTour = (distances: Distances, kicks: number): number[] => {
  const tour = new TourSearch(distances, insertionTour(distances));
  tour.settle();
  if (distances.n >= 8) tour.kick(kicks);
  return tour.order();
};

/** Nearest insertion (D. J. Rosenkrantz, R. E. Stearns, P. M. Lewis, SIAM J. Comput. 6 (1977) 563–581). */
const insertionTour = ({ n, d }: Distances): Int32Array => {
  const next = new Int32Array(n);
  const near = new Float64Array(n);
  const inside = new Uint8Array(n);
  inside[0] = 1;
  for (let v = 0; v < n; v++) near[v] = d[v] ?? 0;
  for (let count = 1; count < n; count++) {
    let u = -1;
    for (let v = 0; v < n; v++) {
      if (inside[v] === 0 && (u < 0 || (near[v] ?? 0) < (near[u] ?? 0))) u = v;
    }
    let after = 0;
    let least = Number.POSITIVE_INFINITY;
    let v = 0;
    do {
      const w = next[v] ?? 0;
      const more = (d[v * n + u] ?? 0) + (d[u * n + w] ?? 0) - (d[v * n + w] ?? 0);
      if (more < least) {
        least = more;
        after = v;
      }
      v = w;
    } while (v !== 0);
    next[u] = next[after] ?? 0;
    next[after] = u;
    inside[u] = 1;
    for (let w = 0; w < n; w++) near[w] = Math.min(near[w] ?? 0, d[u * n + w] ?? 0);
  }
  const tour = new Int32Array(n);
  for (let i = 0, v = 0; i < n; i++, v = next[v] ?? 0) tour[i] = v;
  return tour;
};

/** Nearest neighbours that a move looks at. */
const NEAR = 10;

/** Longest piece that Or-opt moves. */
const PIECE = 3;

/**
 * 2-opt (G. A. Croes 1958) and Or-opt (I. Or 1976) over neighbour lists with a queue of nodes to look at, and
 * iterated local search: four edges near each other are exchanged by a double bridge (O. Martin, S. W. Otto,
 * E. W. Felten 1991), the search settles again, and the tour is put back when it got longer.
 */
class TourSearch {
  private readonly n: number;
  private readonly d: Float64Array;
  private readonly tour: Int32Array;
  private readonly place: Int32Array;
  private readonly near: Int32Array;
  private readonly k: number;
  private readonly queue: number[] = [];
  private readonly queued: Uint8Array;
  /** Reversals done since the last mark, to be undone by doing them again backwards. */
  private readonly done: number[] = [];

  constructor({ n, d }: Distances, tour: Int32Array) {
    this.n = n;
    this.d = d;
    this.tour = tour;
    this.place = new Int32Array(n);
    tour.forEach((v, i) => {
      this.place[v] = i;
    });
    this.k = Math.min(NEAR, n - 1);
    this.near = new Int32Array(n * this.k);
    for (let v = 0; v < n; v++) {
      const others = Int32Array.from({ length: n }, (_, u) => u)
        .filter((u) => u !== v)
        .sort((a, b) => (d[v * n + a] ?? 0) - (d[v * n + b] ?? 0) || a - b);
      this.near.set(others.subarray(0, this.k), v * this.k);
    }
    this.queued = new Uint8Array(n);
    for (const v of tour) this.look(v);
  }

  order(): number[] {
    return [...this.tour];
  }

  settle(): number {
    let gain = 0;
    for (let v = this.queue.shift(); v !== undefined; v = this.queue.shift()) {
      this.queued[v] = 0;
      for (let g = this.improve(v); g > 0; g = this.improve(v)) gain += g;
    }
    return gain;
  }

  kick(kicks: number): void {
    const { n } = this;
    const random = seededRandom(1);
    const reach = Math.min(n - 1, 50);
    for (let i = 0; i < kicks; i++) {
      this.done.length = 0;
      const at = Math.floor(random() * n);
      const cuts = [0, 0, 0]
        .map(() => 1 + Math.floor(random() * reach))
        .sort((x, y) => x - y)
        .map((c) => at + c);
      const [p = 0, q = 0, r = 0] = cuts;
      if (p === q || q === r) continue;
      const loss = this.doubleBridge(at, p, q, r);
      if (this.settle() < loss - 1e-9) this.undo();
    }
  }

  private look(v: number): void {
    if (this.queued[v] === 1) return;
    this.queued[v] = 1;
    this.queue.push(v);
  }

  private at(i: number): number {
    const { n } = this;
    return this.tour[i < 0 ? i + n : i >= n ? i - n : i] ?? 0;
  }

  private dist(u: number, v: number): number {
    return this.d[u * this.n + v] ?? 0;
  }

  /** Exchanges the pieces (at, p] and (p, q], by three reversals; returns how much longer the tour became. */
  private doubleBridge(at: number, p: number, q: number, r: number): number {
    const { n } = this;
    const [a, b, c, e, f, g] = [at, at + 1, p, p + 1, q, q + 1].map((i) => this.tour[i % n] ?? 0);
    if (a === undefined || b === undefined || c === undefined) return 0;
    if (e === undefined || f === undefined || g === undefined || r - at >= n) return 0;
    this.reverse(at + 1, q);
    this.reverse(at + 1, at + q - p);
    this.reverse(at + q - p + 1, q);
    for (const v of [a, b, c, e, f, g]) this.look(v);
    return (
      this.dist(a, e) +
      this.dist(f, b) +
      this.dist(c, g) -
      this.dist(a, b) -
      this.dist(c, e) -
      this.dist(f, g)
    );
  }

  private undo(): void {
    const { done } = this;
    const moves = done.splice(0);
    for (let k = moves.length - 2; k >= 0; k -= 2) this.reverse(moves[k] ?? 0, moves[k + 1] ?? 0);
    done.length = 0;
  }

  /** Turns round the piece from place i up to place j, or all the rest instead: the same tour, seen in a mirror. */
  private reverseEither(i: number, j: number): void {
    const { n } = this;
    const length = ((j - i + n) % n) + 1;
    if (2 * length > n) this.reverse(j + 1, i - 1);
    else this.reverse(i, j);
  }

  /** Turns round the piece of the tour from place i up to place j, going past the end if j is before i. */
  private reverse(i: number, j: number): void {
    const { n, tour, place } = this;
    this.done.push(i, j);
    let from = ((i % n) + n) % n;
    let to = ((j % n) + n) % n;
    const length = ((to - from + n) % n) + 1;
    for (let k = length >> 1; k > 0; k--) {
      const u = tour[from] ?? 0;
      const v = tour[to] ?? 0;
      tour[from] = v;
      place[v] = from;
      tour[to] = u;
      place[u] = to;
      from = from + 1 === n ? 0 : from + 1;
      to = to === 0 ? n - 1 : to - 1;
    }
  }

  private improve(v: number): number {
    const two = this.twoOpt(v);
    return two > 0 ? two : this.orOpt(v);
  }

  private twoOpt(a: number): number {
    const { k, near, place } = this;
    for (const forward of [true, false]) {
      const i = place[a] ?? 0;
      const b = this.at(forward ? i + 1 : i - 1);
      const ab = this.dist(a, b);
      for (let x = 0; x < k; x++) {
        const c = near[a * k + x] ?? 0;
        const ac = this.dist(a, c);
        if (ac >= ab) break;
        const j = place[c] ?? 0;
        const e = this.at(forward ? j + 1 : j - 1);
        if (c === b || e === a) continue;
        const gain = ab + this.dist(c, e) - ac - this.dist(b, e);
        if (gain <= 1e-9) continue;
        if (forward) this.reverseEither(i + 1, j);
        else this.reverseEither(j, i - 1);
        for (const u of [a, b, c, e]) this.look(u);
        return gain;
      }
    }
    return 0;
  }

  /** Moves a piece of up to three nodes that begins or ends at `v` next to one of the near nodes of `v`. */
  private orOpt(v: number): number {
    const { n, k, near, place } = this;
    if (n < PIECE + 3) return 0;
    for (let length = 1; length <= PIECE; length++) {
      for (const forward of [true, false]) {
        const i = place[v] ?? 0;
        const first = forward ? i : i - length + 1;
        const last = first + length - 1;
        const far = this.at(forward ? last : first);
        const before = this.at(first - 1);
        const after = this.at((last + 1) % n);
        const [beside, beyond] = forward ? [before, after] : [after, before];
        const removed = this.dist(beside, v) + this.dist(far, beyond) - this.dist(before, after);
        if (removed <= 1e-9) continue;
        for (let x = 0; x < k; x++) {
          const c = near[v * k + x] ?? 0;
          const vc = this.dist(v, c);
          if (vc >= removed) break;
          const offset = ((place[c] ?? 0) - first + n) % n;
          if (offset < length) continue;
          for (const side of [1, -1]) {
            const other = this.at(((((place[c] ?? 0) + side) % n) + n) % n);
            const otherOffset = ((place[other] ?? 0) - first + n) % n;
            if (otherOffset < length) continue;
            const gain = removed - vc - this.dist(far, other) + this.dist(c, other);
            if (gain <= 1e-9) continue;
            this.movePiece(first, length, c, other, v);
            for (const u of [before, after, v, far, c, other]) this.look(u);
            return gain;
          }
        }
      }
    }
    return 0;
  }

  /** Puts the piece between neighbours c and other, with node v next to c, by reversals. */
  private movePiece(first: number, length: number, c: number, other: number, v: number): void {
    const { n, place } = this;
    const base = ((first % n) + n) % n;
    const cOffset = ((place[c] ?? 0) - base + n) % n;
    const otherOffset = ((place[other] ?? 0) - base + n) % n;
    const low = Math.min(cOffset, otherOffset);
    const gap = low - length + 1;
    this.reverse(base, base + low);
    this.reverse(base, base + gap - 1);
    const left = this.at((base + gap - 1 + n) % n);
    const start = this.at((base + gap) % n);
    if ((left === c) !== (start === v)) this.reverse(base + gap, base + low);
  }
}
