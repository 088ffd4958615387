import { compareText } from "@pinwright/kernel";
import { type Finding, type Machine, makeFinding } from "../../model/index.ts";
import type { Feed } from "../network/feeds.ts";
import type { Part } from "../network/parts.ts";
import { groupsOf } from "../protection/groups.ts";
import type { ElectricFacts } from "./facts.ts";

/** Net classes that a lifted zero disturbs. */
const QUIET: ReadonlySet<string> = new Set(["logic", "data", "sensor", "audio"]);

const isPlainCopper = (part: Part): boolean =>
  part.kind === "wire" ||
  part.kind === "contact" ||
  (part.kind === "element" && part.element.row.kind === "link");

interface Returns {
  readonly loud: string[];
  readonly quiet: string[];
  readonly nets: Set<string>;
}

/**
 * `return-shared`: coils or motors and logic, data, sensors or audio return through the same copper. What joins at a
 * shunt, a star point or the supply's own terminal only is apart before that.
 */
export function returnShared({
  machine,
  network,
}: Pick<ElectricFacts, "machine" | "network">): readonly Finding[] {
  const copper = groupsOf(network.parts);
  const plain = groupsOf(network.parts, isPlainCopper);
  const netOf = new Map(machine.ends.map((end) => [end.point, end.net]));
  const byGroup = new Map<number, Returns>();
  const { steady, units } = network.units;
  for (const feed of [...steady, ...units.flatMap((unit) => unit.loads)]) {
    const node = returnNode(feed, copper);
    const loudness = node === null ? null : loudnessOf(machine, feed, netOf);
    if (node === null || loudness === null) continue;
    const found = byGroup.get(plain(node)) ?? { loud: [], quiet: [], nets: new Set<string>() };
    found[loudness].push(feed.load.id);
    const net = netOf.get(node);
    if (net !== undefined) found.nets.add(net);
    byGroup.set(plain(node), found);
  }
  return [...byGroup.values()].flatMap(({ loud, quiet, nets }) => {
    const [coil, logic] = [loud.toSorted(compareText)[0], quiet.toSorted(compareText)[0]];
    if (coil === undefined || logic === undefined) return [];
    const numbers = { loud: loud.length, quiet: quiet.length };
    return [makeFinding("return-shared", "error", [...[...nets].sort(compareText), coil, logic], numbers)];
  });
}

/** Where the current of a load leaves its item or driver towards the source. */
function returnNode(
  { load, drivers, source, reversed }: Feed,
  copper: (node: string) => number,
): string | null {
  const zero = copper(source.b);
  const ends = [reversed ? load.a : load.b, ...drivers.flatMap(({ a, b }) => [b, a])];
  return ends.find((node) => copper(node) === zero) ?? null;
}

function loudnessOf(
  machine: Machine,
  { load, reversed }: Feed,
  netOf: ReadonlyMap<string, string>,
): "loud" | "quiet" | null {
  const { kind } = load.element.row;
  if (kind === "coil" || kind === "motor") return "loud";
  const net = machine.nets.get(netOf.get(reversed ? load.b : load.a) ?? "");
  return net !== undefined && QUIET.has(net.class) ? "quiet" : null;
}
