/** A binary heap of the numbers 0 … n−1 by key, least first; equal keys by number, so that its order is always the same. */
export class IndexHeap {
  readonly key: Float64Array;
  private readonly heap: Int32Array;
  private readonly place: Int32Array;
  private count = 0;

  constructor(n: number) {
    this.key = new Float64Array(n);
    this.heap = new Int32Array(n);
    this.place = new Int32Array(n).fill(-1);
  }

  get size(): number {
    return this.count;
  }

  /** Key of the least element; Infinity when empty. */
  leastKey(): number {
    return this.count === 0 ? Number.POSITIVE_INFINITY : (this.key[this.heap[0] ?? 0] ?? 0);
  }

  /** Adds an element or changes its key. */
  set(i: number, key: number): void {
    let at = this.place[i] ?? -1;
    if (at < 0) {
      at = this.count++;
      this.key[i] = key;
      this.up(i, at);
      return;
    }
    const old = this.key[i] ?? 0;
    this.key[i] = key;
    if (key < old) this.up(i, at);
    else if (key > old) this.down(i, at);
  }

  /** Takes the least element out; −1 when empty. */
  pop(): number {
    if (this.count === 0) return -1;
    const least = this.heap[0] ?? 0;
    this.place[least] = -1;
    this.count--;
    if (this.count > 0) this.down(this.heap[this.count] ?? 0, 0);
    return least;
  }

  /** Empties the heap in time proportional to what is in it. */
  clear(): void {
    for (let k = 0; k < this.count; k++) this.place[this.heap[k] ?? 0] = -1;
    this.count = 0;
  }

  private before(i: number, j: number): boolean {
    const x = this.key[i] ?? 0;
    const y = this.key[j] ?? 0;
    return x < y || (x === y && i < j);
  }

  private up(i: number, from: number): void {
    const { heap, place } = this;
    let at = from;
    while (at > 0) {
      const above = (at - 1) >> 1;
      const other = heap[above] ?? 0;
      if (!this.before(i, other)) break;
      heap[at] = other;
      place[other] = at;
      at = above;
    }
    heap[at] = i;
    place[i] = at;
  }

  private down(i: number, from: number): void {
    const { heap, place, count } = this;
    let at = from;
    for (;;) {
      let below = 2 * at + 1;
      if (below >= count) break;
      if (below + 1 < count && this.before(heap[below + 1] ?? 0, heap[below] ?? 0)) below++;
      const other = heap[below] ?? 0;
      if (!this.before(other, i)) break;
      heap[at] = other;
      place[other] = at;
      at = below;
    }
    heap[at] = i;
    place[i] = at;
  }
}
