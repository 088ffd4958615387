import { compareText } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../../model/index.ts";
import { isCopper } from "../network/copper.ts";
import type { Part } from "../network/parts.ts";
import { groupsOf } from "../protection/groups.ts";
import type { ElectricFacts } from "./facts.ts";

/** `earth-second`: the return of one supply meets earth at two items, so that its current finds a way over the metal. */
export function earthSecond({
  machine,
  network,
}: Pick<ElectricFacts, "machine" | "network">): readonly Finding[] {
  const earthOf = earthNodes(machine.ends, (net) => machine.nets.get(net)?.class === "earth");
  const plain = groupsOf(network.parts, (part) => part.kind === "wire" || part.kind === "contact");
  const earths = new Set(earthOf.map(plain));
  const isEarth = (node: string): boolean => earths.has(plain(node));
  const isTie = (part: Part): boolean => isCopper(part) && isEarth(part.a) !== isEarth(part.b);
  const domains = groupsOf(network.parts, (part) => isCopper(part) && !isTie(part));
  const tiesOf = new Map<number, Set<string>>();
  for (const part of network.parts) {
    if (part.kind !== "element" || !isTie(part)) continue;
    const domain = domains(isEarth(part.a) ? part.b : part.a);
    const items = tiesOf.get(domain) ?? new Set();
    tiesOf.set(domain, items.add(part.element.itemId));
  }
  const netOf = new Map(machine.ends.toReversed().map(({ point, net }) => [point, net]));
  const sources = network.parts.filter((part) => part.kind === "source" && !isMains(part));
  return sources.flatMap((source) => {
    const items = [...(tiesOf.get(domains(source.b)) ?? [])];
    if (items.length < 2) return [];
    const supplyId = source.kind === "source" ? (source.supply?.id ?? source.id) : source.id;
    return [
      makeFinding("earth-second", "error", [supplyId, ...items.sort(compareText)], { points: items.length }),
    ];
  });

  function isMains(part: Part): boolean {
    return machine.nets.get(netOf.get(part.a) ?? "")?.class === "mains";
  }
}

const earthNodes = (
  ends: readonly { readonly point: string; readonly net: string }[],
  isEarth: (net: string) => boolean,
): readonly string[] => ends.flatMap(({ point, net }) => (isEarth(net) ? [point] : []));
