/**
 * Joins the terminals of SteinLib's sets B, C, D, of rectilinear, chip-routing and wire-routing problems with the
 * usual effort, and writes values and bounds beside the proved optima to `results/steiner.csv`, the trees to
 * `results/steiner-trees.csv`.
 *
 *     npx tsx prove/steiner.ts
 */
import { steinerTree } from "@pinwright/kernel";
import { readStp } from "../packages/kernel/src/graph/testing/stp.ts";
import { steinerInstances } from "./instances.ts";
import { percent, writeResults } from "./write-results.ts";

const rows: string[] = [];
const trees: string[] = [];
const gaps = new Map<string, number[]>();
for (const { set, name, file, optimum } of steinerInstances()) {
  const { graph, terminals } = readStp(file);
  const start = process.cpuUsage();
  const tree = steinerTree(graph, terminals);
  const ms = process.cpuUsage(start).user / 1000;
  if (tree === null) throw new Error(`${name}: its terminals cannot be joined`);
  const row = [
    set,
    name,
    graph.nodes,
    graph.edges,
    terminals.length,
    tree.value,
    tree.lowerBound.toFixed(2),
    optimum,
    percent(tree.value, optimum),
    percent(tree.value, tree.lowerBound),
  ].join(",");
  process.stdout.write(`${row} ${ms.toFixed(0)} ms\n`);
  rows.push(row);
  trees.push(`${name},${tree.value},${tree.edges.join(" ")}`);
  gaps.set(set, [...(gaps.get(set) ?? []), 100 * (tree.value / optimum - 1)]);
}
for (const [set, list] of gaps) {
  const mean = list.reduce((a, b) => a + b, 0) / list.length;
  process.stdout.write(
    `${set}: ${list.length}, mean gap ${mean.toFixed(4)} %, worst ${Math.max(...list).toFixed(4)} %\n`,
  );
}
writeResults(
  "steiner.csv",
  "set,instance,nodes,edges,terminals,value,lower_bound,optimum,gap_pct,over_bound_pct",
  rows,
);
writeResults("steiner-trees.csv", "instance,value,edges", trees);
