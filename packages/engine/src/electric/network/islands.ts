import { compareText, UnionFind } from "@pinwright/kernel";
import { isLoad } from "./feeds.ts";
import type { Part } from "./parts.ts";
import type { Units } from "./units.ts";

/** A part of the network that hangs together and holds a source and a load: what is solved as one circuit. */
export interface Island {
  /** Lowest id of its sources. */
  readonly id: string;
  /** Parts that can carry current. */
  readonly parts: readonly Part[];
  readonly nodes: readonly string[];
  /** Nodes at the far side of parts that nothing leads on from, each with the node whose potential it has. */
  readonly dangling: ReadonlyMap<string, string>;
}

/** The network in islands. Wires and contacts that are in none carry no current in play. */
export function islandsOf(parts: readonly Part[], units: Units): readonly Island[] {
  const usable = usableParts(parts, units);
  const index = new Map<string, number>();
  for (const { a, b } of usable) for (const node of [a, b]) if (!index.has(node)) index.set(node, index.size);
  const at = (node: string): number => index.get(node) ?? 0;
  const sets = new UnionFind(index.size);
  for (const { a, b } of usable) sets.join(at(a), at(b));
  const byRoot = new Map<number, Part[]>();
  for (const part of usable) {
    const root = sets.find(at(part.a));
    const list = byRoot.get(root);
    if (list === undefined) byRoot.set(root, [part]);
    else list.push(part);
  }
  return [...byRoot.values()].flatMap((own) => {
    const [id] = own.flatMap((part) => (part.kind === "source" ? [part.id] : [])).sort(compareText);
    if (id === undefined || !own.some(isLoad)) return [];
    const { core, dangling } = withoutDangling(own);
    const nodes = [...new Set(core.flatMap(({ a, b }) => [a, b]))];
    return [{ id, parts: core, nodes, dangling }];
  });
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

/** Takes away, again and again, parts at a node that no other part leads on from: no current passes there. */
function withoutDangling(parts: readonly Part[]): {
  readonly core: readonly Part[];
  readonly dangling: ReadonlyMap<string, string>;
} {
  const at = new Map<string, Set<Part>>();
  const put = (node: string, part: Part): void => {
    const list = at.get(node);
    if (list === undefined) at.set(node, new Set([part]));
    else list.add(part);
  };
  for (const part of parts) {
    put(part.a, part);
    put(part.b, part);
  }
  const gone = new Set<Part>();
  const dangling = new Map<string, string>();
  const todo = [...at.keys()];
  for (let node = todo.pop(); node !== undefined; node = todo.pop()) {
    const around = at.get(node);
    if (around?.size !== 1) continue;
    const [part] = around;
    if (part === undefined || part.kind === "source") continue;
    const other = part.a === node ? part.b : part.a;
    gone.add(part);
    around.delete(part);
    at.get(other)?.delete(part);
    dangling.set(node, other);
    todo.push(other);
  }
  return { core: parts.filter((part) => !gone.has(part)), dangling };
}
