/**
 * Blocks of a graph: two edges are in one block when a closed way without a repeated node passes both. Blocks meet at
 * single nodes only; an edge that no closed way passes is a block by itself. Iterative form of J. Hopcroft, R. Tarjan,
 * "Algorithm 447: efficient algorithms for graph manipulation", Communications of the ACM 16, 1973.
 * @param nodes nodes 0 … n−1
 * @param edges parallel ones count by themselves; an edge from a node to itself is a block by itself
 * @returns the block of each edge, numbered from 0 in the order of their lowest edge
 */
export function blocksOf(nodes: number, edges: readonly (readonly [number, number])[]): Int32Array {
  const at: number[][] = Array.from({ length: nodes }, () => []);
  edges.forEach(([a, b], e) => {
    if (a === b) return;
    at[a]?.push(e);
    at[b]?.push(e);
  });
  const block = new Int32Array(edges.length).fill(-1);
  const found = new Int32Array(nodes).fill(-1);
  const low = new Int32Array(nodes);
  const next = new Int32Array(nodes);
  const by = new Int32Array(nodes).fill(-1);
  const open: number[] = [];
  let time = 0;
  let blocks = 0;
  const walk = (start: number): void => {
    const path = [start];
    found[start] = low[start] = time++;
    for (let node = path.at(-1); node !== undefined; node = path.at(-1)) {
      const e = at[node]?.[next[node] ?? 0];
      if (e === undefined) {
        path.pop();
        const up = path.at(-1);
        if (up === undefined) break;
        low[up] = Math.min(low[up] ?? 0, low[node] ?? 0);
        if ((low[node] ?? 0) >= (found[up] ?? 0)) closeBlock(by[node] ?? -1);
        continue;
      }
      next[node] = (next[node] ?? 0) + 1;
      if (e === by[node] || block[e] !== -1) continue;
      const [a, b] = edges[e] ?? [0, 0];
      const other = a === node ? b : a;
      if (found[other] === -1) {
        open.push(e);
        by[other] = e;
        found[other] = low[other] = time++;
        path.push(other);
      } else if ((found[other] ?? 0) < (found[node] ?? 0)) {
        open.push(e);
        low[node] = Math.min(low[node] ?? 0, found[other] ?? 0);
      }
    }
  };
  const closeBlock = (last: number): void => {
    for (let e = open.pop(); e !== undefined; e = open.pop()) {
      block[e] = blocks;
      if (e === last) break;
    }
    blocks++;
  };
  for (let node = 0; node < nodes; node++) if (found[node] === -1) walk(node);
  return inOrder(block, edges.length);
}

/** Numbers blocks by their lowest edge; edges from a node to itself get one each. */
function inOrder(block: Int32Array, edges: number): Int32Array {
  const number = new Map<number, number>();
  let count = 0;
  return Int32Array.from({ length: edges }, (_, e) => {
    const own = block[e] ?? -1;
    if (own === -1) return count++;
    const known = number.get(own) ?? count++;
    number.set(own, known);
    return known;
  });
}
