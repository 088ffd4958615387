import { blocksOf, compareText } from "@pinwright/kernel";
import type { Part, Parts } from "./parts.ts";
import type { Units } from "./units.ts";

/**
 * A part of the network that is solved as one circuit: every two of its parts lie on a common loop, and one is a
 * source. Islands meet at single nodes at most, as where the returns of supplies meet earth: whatever flows into an
 * island there has to flow out there, so that the currents of each follow from its own parts alone.
 */
export interface Island {
  /** Lowest id of its sources. */
  readonly id: string;
  readonly parts: readonly Part[];
  readonly nodes: readonly string[];
  /** Nodes that hang on it by parts without current, each with the one that it hangs from, that one first. */
  readonly dangling: ReadonlyMap<string, string>;
}

/**
 * The network in islands, in code-point order of their ids. Parts that are in none lie on no loop with a source, as the
 * wire to a switch at rest: they carry no current.
 */
export function islandsOf({ parts, nodes }: Parts, units: Units): readonly Island[] {
  const usable = usableParts(parts, units);
  const blocks = blocksOf(
    nodes,
    usable.map(({ from, to }) => [from, to] as const),
  );
  const byBlock = new Map<number, Part[]>();
  usable.forEach((part, p) => {
    const block = blocks[p] ?? 0;
    const list = byBlock.get(block);
    if (list === undefined) byBlock.set(block, [part]);
    else list.push(part);
  });
  const names: string[] = Array.from({ length: nodes }, () => "");
  for (const { a, b, from, to } of usable) {
    names[from] = a;
    names[to] = b;
  }
  const live: LiveBlock[] = [];
  const idle: Part[] = [];
  for (const own of byBlock.values()) {
    const [id] = own.flatMap((part) => (part.kind === "source" ? [part.id] : [])).sort(compareText);
    if (id === undefined || own.length < 2) idle.push(...own);
    else live.push({ id, parts: own, nodes: numbersOf(own) });
  }
  live.sort((p, q) => compareText(p.id, q.id));
  const dangling = danglingOf(live, idle, nodes);
  const name = (node: number): string => names[node] ?? "";
  return live.map((block, n) => ({
    id: block.id,
    parts: block.parts,
    nodes: block.nodes.map(name),
    dangling: new Map((dangling[n] ?? []).map(([node, from]) => [name(node), name(from)])),
  }));
}

/** A block that holds a source, with its nodes by number. */
interface LiveBlock {
  readonly id: string;
  readonly parts: readonly Part[];
  readonly nodes: readonly number[];
}

/** Nodes of some parts, in the order in which they are first named. */
function numbersOf(parts: readonly Part[]): readonly number[] {
  const nodes = new Set<number>();
  for (const { from, to } of parts) nodes.add(from).add(to);
  return [...nodes];
}

/** Without drivers and contacts that nothing closes, and loads that nothing feeds. */
function usableParts(parts: readonly Part[], { units, steady, closed }: Units): readonly Part[] {
  const switches = new Set(units.flatMap((unit) => unit.switches.map((part) => part.id)));
  const fed = new Set([...steady, ...units.flatMap((unit) => unit.loads)].map((feed) => feed.load.id));
  return parts.filter((part) => {
    if (part.kind !== "element") return true;
    const { kind, normally } = part.element.row;
    const shut = closed.has(part.id) || switches.has(part.id);
    if (kind === "driver") return shut;
    if (kind === "contact") return shut || normally === "closed";
    return kind === "load" || kind === "led" || kind === "motor" ? fed.has(part.id) : true;
  });
}

/** For each block what hangs on it by idle parts; where something hangs on several, it goes with the first of them. */
function danglingOf(
  blocks: readonly LiveBlock[],
  idle: readonly Part[],
  nodes: number,
): readonly (readonly (readonly [node: number, from: number])[])[] {
  const beside: number[][] = Array.from({ length: nodes }, () => []);
  for (const { from, to } of idle) {
    beside[from]?.push(to);
    beside[to]?.push(from);
  }
  const seen = new Uint8Array(nodes);
  for (const block of blocks) for (const node of block.nodes) seen[node] = 1;
  return blocks.map((block) => {
    const dangling: (readonly [number, number])[] = [];
    const reached = [...block.nodes];
    for (let n = 0; n < reached.length; n++) {
      const node = reached[n] ?? 0;
      for (const other of beside[node] ?? []) {
        if (seen[other] === 1) continue;
        seen[other] = 1;
        dangling.push([other, node]);
        reached.push(other);
      }
    }
    return dangling;
  });
}
