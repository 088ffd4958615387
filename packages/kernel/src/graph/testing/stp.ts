import { readFileSync } from "node:fs";
import { createGraph, type EdgeInput, type Graph } from "../index.ts";

/** A Steiner problem in the STP format of SteinLib; its nodes count from 1, ours from 0. */
export const readStp = (url: URL): { readonly graph: Graph; readonly terminals: readonly number[] } => {
  const edges: EdgeInput[] = [];
  const terminals: number[] = [];
  let nodes = 0;
  for (const line of readFileSync(url, "utf8").split("\n")) {
    const [word = "", x = "", y = "", z = ""] = line.trim().split(/\s+/);
    if (word === "Nodes") nodes = Number(x);
    else if (word === "E") edges.push({ a: Number(x) - 1, b: Number(y) - 1, cost: Number(z) });
    else if (word === "T") terminals.push(Number(x) - 1);
  }
  return { graph: createGraph(nodes, edges), terminals };
};
