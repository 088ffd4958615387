import { seededRandom } from "../../random.ts";
import type { NodePair } from "../index.ts";

/** Nodes between the ends of a local loop, at most: of two wires beside each other, or a return that is doubled. */
const LOCAL = 60;
/** Loops over the whole network: returns that supplies share. */
const LONG = 6;

/**
 * Resistors of a network like a harness: a tree of chains and branches, a loop between near nodes for every fifty, and
 * a few loops right across.
 */
export function harnessLike(nodes: number, seed: number): readonly NodePair[] {
  const next = seededRandom(seed);
  const resistors: NodePair[] = [];
  for (let n = 1; n < nodes; n++)
    resistors.push([n, Math.max(0, Math.floor(n - 1 - next() * Math.min(n, 8)))]);
  for (let n = LOCAL; n < nodes; n += 50) resistors.push([n, n - 2 - Math.floor(next() * (LOCAL - 2))]);
  for (let k = 0; k < LONG; k++) resistors.push([Math.floor(next() * nodes), Math.floor(next() * nodes)]);
  return resistors;
}
