import type { BookRow, Shop } from "@pinwright/book";
import { type Decimal, decimal, numberOfDecimal, timesDecimal } from "@pinwright/kernel";
import type { BillNode, PartNeed, PartSource } from "../../model/index.ts";
import { takesContents } from "../../parts/index.ts";
import { spareCount } from "../spares.ts";
import type { Demand, NeedingRun, Needs, NetDemand, Use } from "./demand.ts";
import { buildOf, type Group, Groups, mainVariant } from "./groups.ts";
import { type NetSlice, netSlices, type Slice, type Supply } from "./net.ts";
import { lostInKitting, scrapOf, wholeUp } from "./scrap.ts";
import { colourOfKey, nodeOfKey, stageInside, type Tree } from "./tree.ts";

/** All that needs are found from. */
export interface NeedQuestion {
  readonly tree: Tree;
  /** In the order of their ship days. */
  readonly runs: readonly NeedingRun[];
  readonly parts: ReadonlyMap<string, BookRow<"parts">>;
  readonly shop: Shop;
  /** How nodes are got. */
  readonly sources: ReadonlyMap<string, PartSource>;
  readonly supplyOf: (partId: string) => Supply;
  /** Place of the first stage that does something; −1: the shop has none. */
  readonly stageFor: (kind: NonNullable<ReturnType<typeof stageInside>>) => number;
  readonly stageIds: readonly string[];
  /** In one machine of each variant, by node. */
  readonly totals: readonly ReadonlyMap<string, Decimal>[];
}

/**
 * What the runs need of everything, level by level from the machine down, netted at each level: only what of an
 * assembly is neither there nor on its way takes its contents. Spares for the field and what gets spoilt come on top.
 */
export function explodeNeeds(question: NeedQuestion): Needs {
  const { tree, runs } = question;
  const groups = new Groups(tree.contents.length);
  const machine = stageAt(question, "assembly");
  for (const [r, run] of runs.entries()) {
    const { byVariant } = groups.at("machine", r, machine, false);
    run.counts.forEach((count, v) => {
      byVariant[v] = decimal(count);
    });
  }
  const found: Found = { needs: [], net: [], made: [], uses: [], tookMade: false };
  const coloured = new Map<string, string[]>();
  for (const key of tree.order) {
    const node = tree.nodes.get(nodeOfKey(key));
    if (node === undefined) continue;
    if (colourOfKey(key) === "") {
      addSpares(question, groups, key, node);
      meet(question, groups, [key], node, found);
      continue;
    }
    const keys = coloured.get(node.id) ?? [];
    coloured.set(node.id, keys);
    keys.push(key);
  }
  // Wires contain nothing: their colours wait until all that want any are known, and share what is in stock.
  for (const [nodeId, keys] of coloured) {
    const node = tree.nodes.get(nodeId);
    if (node !== undefined) meet(question, groups, keys, node, found);
  }
  return found;
}

interface Found {
  readonly needs: PartNeed[];
  readonly net: NetDemand[];
  readonly made: NetDemand[];
  readonly uses: Use[];
  tookMade: boolean;
}

const stageAt = ({ stageFor }: NeedQuestion, kind: Parameters<NeedQuestion["stageFor"]>[0]): number => {
  const own = stageFor(kind);
  return own >= 0 ? own : stageFor("assembly");
};

function addSpares({ runs, parts, totals }: NeedQuestion, groups: Groups, key: string, node: BillNode): void {
  const part = node.partId === null ? undefined : parts.get(node.partId);
  const fails = part?.fails_per_year ?? 0;
  if (fails <= 0) return;
  for (const [r, run] of runs.entries()) {
    const inField = run.counts.reduce(
      (sum, count, v) => sum + count * numberOfDecimal(totals[v]?.get(node.id) ?? 0n),
      0,
    );
    const spares = spareCount(fails * inField * run.row.spare_years, run.row.confidence_pct / 100);
    if (spares === 0) continue;
    const { byVariant } = groups.at(key, r, -1, true);
    const main = mainVariant(run);
    byVariant[main] = (byVariant[main] ?? 0n) + decimal(spares);
  }
}

/** Nets what is wanted under some keys of one node and hands on what its contents have to be. */
function meet(
  question: NeedQuestion,
  groups: Groups,
  keys: readonly string[],
  node: BillNode,
  found: Found,
): void {
  const wanted = keys.flatMap((key) => groups.of(key).map((group) => wantOf(question, node, key, group)));
  if (wanted.length === 0) return;
  const source = question.sources.get(node.id);
  const { partId } = node;
  const slices = wanted.flatMap((want, w) => slicesOf(question, node, want, w));
  const netted = netSlices(slices, partId === null ? NO_SUPPLY : question.supplyOf(partId));
  const byWant: NetSlice[][] = wanted.map(() => []);
  for (const slice of netted) byWant[slice.want]?.push(slice);
  const contents =
    takesContents(source) && question.tree.contents.some((c) => (c.get(node.id)?.length ?? 0) > 0);
  for (const [w, want] of wanted.entries()) {
    const own = byWant[w] ?? [];
    const net = own.reduce((sum, slice) => sum + slice.net, 0n);
    if (partId !== null) tell(question, want, partId, own, found, contents);
    if (contents && net < want.build + want.scrap) found.tookMade = true;
    if (contents && net > 0n) handOn(question, groups, node, want, net);
  }
  if (partId === null) return;
  for (const key of keys) {
    const demand = demandOf(question, node, partId, key, netted);
    if (demand.demands.length > 0) (contents ? found.made : found.net).push(demand);
  }
}

const NO_SUPPLY: Supply = { stock: 0n, issued: new Map(), receipts: [] };

/** What one group wants. */
interface Want {
  readonly key: string;
  readonly group: Group;
  readonly build: Decimal;
  readonly scrap: Decimal;
}

function wantOf({ parts, shop, sources }: NeedQuestion, node: BillNode, key: string, group: Group): Want {
  const build = wholeUp(buildOf(group), node.unit);
  const part = node.partId === null ? undefined : parts.get(node.partId);
  // What is made here is mended or made again; its own parts are asked for with what gets spoilt of them.
  const spoils = !takesContents(sources.get(node.id)) || node.kind === "part" || part?.scrap_pct != null;
  const isCounted = node.partId !== null && !group.isSpare && spoils;
  const scrap = isCounted ? group.lost + scrapOf(part, node.unit, build - group.placed, shop.numbers) : 0n;
  return { key, group, build, scrap };
}

function slicesOf(
  { runs }: NeedQuestion,
  node: BillNode,
  { key, group, build, scrap }: Want,
  want: number,
): Slice[] {
  const run = runs[group.run];
  if (run === undefined) return [];
  const { run: place, stage, isSpare } = group;
  const base = { want, key, run: place, stage, isSpare };
  const kits = isSpare ? [] : (run.kits[stage] ?? []);
  const all = kits.at(-1)?.to ?? 0;
  if (all === 0) return [{ ...base, day: run.shipDay, quantity: build + scrap }];
  let given = 0n;
  return kits.map(({ day, to }) => {
    const upTo = wholeUp(((build + scrap) * BigInt(to)) / BigInt(all), node.unit);
    const quantity = upTo - given;
    given = upTo;
    return { ...base, day, quantity };
  });
}

/** Writes down what a group needs and where it comes from. */
function tell(
  { runs, stageIds, sources }: NeedQuestion,
  { key, group, build, scrap }: Want,
  partId: string,
  slices: readonly NetSlice[],
  found: Found,
  isMade: boolean,
): void {
  const run = runs[group.run];
  const [first] = slices;
  if (run === undefined || first === undefined) return;
  const add = (of: (slice: NetSlice) => Decimal): Decimal =>
    slices.reduce((sum, slice) => sum + of(slice), 0n);
  const runId = run.row.id;
  found.needs.push({
    runId,
    partId,
    colour: colourOfKey(key),
    build: group.isSpare ? 0n : build,
    scrap,
    spares: group.isSpare ? build : 0n,
    gross: build + scrap,
    fromStock: add((slice) => slice.fromStock),
    fromOrders: add((slice) => slice.fromOrders),
    net: add((slice) => slice.net),
    neededDay: first.day,
    shortDay: slices.find((slice) => slice.net > 0n)?.day ?? null,
    stageId: stageIds[group.stage] ?? null,
  });
  if (group.isSpare) return;
  const source = sources.get(nodeOfKey(key)) ?? null;
  found.uses.push({ key, partId, source, isMade, runId, stage: group.stage, build, scrap });
}

/** Asks for the contents of what has to be made. */
function handOn(
  question: NeedQuestion,
  groups: Groups,
  node: BillNode,
  { group, build }: Want,
  net: Decimal,
): void {
  if (build === 0n) return;
  const kind = stageInside(node);
  const stageOf = (key: string): number => {
    if (group.isSpare) return -1;
    if (kind === null) return group.stage;
    // Glass and doors come as pieces and go in when the machine is put together; only sheet goods go to the saw.
    const isPiece = kind === "panels" && question.tree.nodes.get(nodeOfKey(key))?.unit === "each";
    return stageAt(question, isPiece ? "assembly" : kind);
  };
  const kitted = new Map<string, Decimal>();
  for (const [v, byParent] of question.tree.contents.entries()) {
    const wanted = group.byVariant[v] ?? 0n;
    if (wanted === 0n) continue;
    const made = (wanted * net) / build;
    for (const { key, quantity, isPlacement } of byParent.get(node.id) ?? []) {
      const child = groups.at(key, group.run, stageOf(key), group.isSpare);
      const amount = timesDecimal(made, quantity);
      child.byVariant[v] = (child.byVariant[v] ?? 0n) + amount;
      if (isPlacement && !group.isSpare) kitted.set(key, (kitted.get(key) ?? 0n) + amount);
    }
  }
  for (const [key, amount] of kitted) {
    const child = groups.at(key, group.run, stageOf(key), false);
    child.placed += amount;
    child.lost += lostOf(question, nodeOfKey(key), amount);
  }
}

/** What gets lost of a part in kitting and stuffing one batch of boards. */
function lostOf({ shop, parts, tree }: NeedQuestion, nodeId: string, amount: Decimal): Decimal {
  const node = tree.nodes.get(nodeId);
  return node?.partId == null ? 0n : lostInKitting(parts.get(node.partId), node.unit, amount, shop.numbers);
}

function demandOf(
  { runs, parts, sources }: NeedQuestion,
  node: BillNode,
  partId: string,
  key: string,
  netted: readonly NetSlice[],
): NetDemand {
  const own = netted.filter((slice) => slice.key === key && slice.net > 0n);
  const demands = own.map(
    ({ day, net, run, stage }): Demand => ({ day, quantity: net, runId: runs[run]?.row.id ?? "", stage }),
  );
  return {
    key,
    node,
    partId,
    colour: colourOfKey(key),
    part: parts.get(partId),
    source: sources.get(node.id) ?? null,
    demands,
  };
}
