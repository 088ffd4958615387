import { compareText } from "@pinwright/kernel";
import { appliesTo, type Finding, type Item, makeFinding } from "../../model/index.ts";
import { groupsOf } from "../protection/groups.ts";
import type { ElectricFacts } from "./facts.ts";

const needsBond = (item: Item): boolean =>
  (item.kind === "device" || item.kind === "mechanism") && item.type.needs_bond;

/**
 * `metal-unbonded`: metal that can be touched has no bond. `bond-open`: a bond does not reach the earth of the mains
 * inlet over wires, contacts and links.
 */
export function metalUnbonded({
  machine,
  network,
}: Pick<ElectricFacts, "machine" | "network">): readonly Finding[] {
  const bonds = machine.book.tables.bonds.filter((bond) => appliesTo(bond, machine.options));
  const bonded = new Set(bonds.flatMap((bond) => bond.item ?? []));
  const bare = [...machine.items.values()]
    .filter((item) => needsBond(item) && !bonded.has(item.id) && !bonded.has(item.parentId ?? ""))
    .map(({ id }) => id)
    .sort(compareText);
  const group = groupsOf(network.parts);
  const earths = machine.ends.flatMap(({ point, net }) => {
    const item = machine.items.get(machine.points.get(point)?.itemId ?? "");
    const isInlet = item?.kind === "device" && item.type.class === "inlet";
    return isInlet && machine.nets.get(net)?.class === "earth" ? [group(point)] : [];
  });
  const open =
    earths.length === 0 ? [] : bonds.filter((bond) => !earths.some((earth) => earth === group(bond.at)));
  return [
    ...bare.map((id) => makeFinding("metal-unbonded", "error", [id])),
    ...open.map((bond) => makeFinding("bond-open", "error", [bond.id, bond.at])),
  ];
}
