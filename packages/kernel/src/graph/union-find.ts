/** Disjoint sets of 0 … n−1, joined by size, with path halving (Tarjan 1975). */
export class UnionFind {
  private readonly parent: Int32Array;
  private readonly size: Int32Array;

  constructor(n: number) {
    this.parent = new Int32Array(n);
    this.size = new Int32Array(n);
    this.reset();
  }

  /** Every element in a set of its own again. */
  reset(): void {
    for (let i = 0; i < this.parent.length; i++) this.parent[i] = i;
    this.size.fill(1);
  }

  /** The element that stands for the set of `i`. */
  find(i: number): number {
    const { parent } = this;
    let x = i;
    for (let p = parent[x] ?? x; p !== x; p = parent[x] ?? x) {
      const up = parent[p] ?? p;
      parent[x] = up;
      x = up;
    }
    return x;
  }

  /** Joins two sets; false when they were one already. */
  join(i: number, j: number): boolean {
    let x = this.find(i);
    let y = this.find(j);
    if (x === y) return false;
    const sx = this.size[x] ?? 1;
    const sy = this.size[y] ?? 1;
    if (sx < sy) [x, y] = [y, x];
    this.parent[y] = x;
    this.size[x] = sx + sy;
    return true;
  }
}
