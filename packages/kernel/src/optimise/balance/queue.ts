/** A binary heap of numbers by rank, least first; equal ranks by number. */
export class Queue {
  private readonly items: number[] = [];
  private readonly ranks: number[] = [];

  push(item: number, rank: number): void {
    const { items, ranks } = this;
    let at = items.length;
    items.push(item);
    ranks.push(rank);
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (!this.before(rank, item, above)) break;
      items[at] = items[above] ?? 0;
      ranks[at] = ranks[above] ?? 0;
      at = above;
    }
    items[at] = item;
    ranks[at] = rank;
  }

  /** Takes the first out; −1 when empty. */
  pop(): number {
    const { items, ranks } = this;
    const first = items[0] ?? -1;
    const item = items.pop();
    const rank = ranks.pop() ?? 0;
    const n = items.length;
    if (item === undefined || n === 0) return first;
    let at = 0;
    for (let below = 1; below < n; below = 2 * at + 1) {
      if (below + 1 < n && this.before(ranks[below + 1] ?? 0, items[below + 1] ?? 0, below)) below++;
      if (this.before(rank, item, below)) break;
      items[at] = items[below] ?? 0;
      ranks[at] = ranks[below] ?? 0;
      at = below;
    }
    items[at] = item;
    ranks[at] = rank;
    return first;
  }

  private before(rank: number, item: number, place: number): boolean {
    const other = this.ranks[place] ?? 0;
    return rank < other || (rank === other && item < (this.items[place] ?? 0));
  }
}
