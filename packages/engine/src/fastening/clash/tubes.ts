import { type BoxMm, boxOf, growBox, type PointMm, type Query } from "@pinwright/kernel";
import type { HarnessResult, Side, TreeNode } from "../../model/index.ts";

/** A bundle along a lane, or a tail to its landing: straight, on a side of a panel, as thick as it is laid. */
export interface Tube {
  readonly harnessId: string;
  readonly branchId: string;
  readonly kind: "lane" | "tail";
  readonly panelId: string;
  readonly side: Side;
  readonly a: PointMm;
  readonly b: PointMm;
  readonly diameterMm: number;
  /** Length of the branch beyond its straight way. */
  readonly slackMm: number;
  readonly box: BoxMm;
  /** Items that it lands at, at either end. */
  readonly landsAt: readonly string[];
}

/**
 * Every branch of a harness that lies on one side of one panel.
 * @param parts keeps the object of a branch that lies as before
 * @param itemOf the item of a landing, as it is put in as a whole
 */
export function tubesOf(
  { harness, route, branches }: HarnessResult,
  parts: Query<Tube | null>,
  itemOf: (landingId: string) => string | null,
): readonly Tube[] {
  const nodes = new Map(route.nodes.map((node) => [node.id, node]));
  const landsAt = new Map<string, string[]>();
  for (const branch of branches) {
    if (branch.kind !== "tail") continue;
    const item = itemOf(branch.id.slice("tail:".length));
    if (item === null) continue;
    for (const node of [branch.a, branch.b]) landsAt.set(node, [...(landsAt.get(node) ?? []), item]);
  }
  return branches.flatMap((branch) => {
    if (branch.kind === "crossing") return [];
    const a = nodes.get(branch.a);
    const b = nodes.get(branch.b);
    if (a === undefined || b === undefined) return [];
    const items = [...(landsAt.get(branch.a) ?? []), ...(landsAt.get(branch.b) ?? [])];
    const { kind } = branch;
    const diameterMm = branch.bundle.laidMm;
    const slackMm = branch.lengthMm - branch.routeMm;
    const inputs = [kind, diameterMm, slackMm, ...placed(a), ...placed(b), ...items];
    const of = { harnessId: harness.id, branchId: branch.id, kind, diameterMm, slackMm, landsAt: items };
    return parts.ask(branch.id, inputs, () => tubeBetween(a, b, of)) ?? [];
  });
}

const placed = ({ place }: TreeNode): readonly unknown[] => [place.panelId, place.side, place.xMm, place.yMm];

function tubeBetween(
  { place: a }: TreeNode,
  { place: b }: TreeNode,
  of: Pick<Tube, "harnessId" | "branchId" | "kind" | "diameterMm" | "slackMm" | "landsAt">,
): Tube | null {
  if (a.panelId !== b.panelId || a.side !== b.side) return null;
  const box = boxOf([a, b]);
  if (box === null || of.diameterMm <= 0) return null;
  return {
    harnessId: of.harnessId,
    branchId: of.branchId,
    kind: of.kind,
    diameterMm: of.diameterMm,
    slackMm: of.slackMm,
    landsAt: of.landsAt,
    panelId: a.panelId,
    side: a.side,
    a: { xMm: a.xMm, yMm: a.yMm },
    b: { xMm: b.xMm, yMm: b.yMm },
    box: growBox(box, of.diameterMm / 2),
  };
}
