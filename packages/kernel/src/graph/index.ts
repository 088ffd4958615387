export { blocksOf } from "./blocks.ts";
export { otherEnd, pathTo, type ShortestPaths, shortestPaths } from "./dijkstra.ts";
export { createGraph, type EdgeInput, type Graph } from "./graph.ts";
export { IndexHeap } from "./heap.ts";
export { connectedComponents, minimumSpanningTree } from "./spanning.ts";
export {
  type SteinerBound,
  type SteinerEffort,
  type SteinerTree,
  steinerLowerBound,
  steinerTree,
} from "./steiner/index.ts";
export { UnionFind } from "./union-find.ts";
