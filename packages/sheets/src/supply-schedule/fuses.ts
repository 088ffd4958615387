import type { FuseRating, LineResult } from "@pinwright/engine";
import { bookTerm, type SheetLanguage } from "@pinwright/words";
import type { FuseNode, SupplyNode } from "../circuits/index.ts";
import { shortNumber } from "../compose/number.ts";
import { label, say } from "../compose/say.ts";
import { ampsText, itemName, percentText, someOf, supplyName } from "../machine-facts.ts";

/** A fuse with all that its row of the schedule says. */
export interface FuseFacts {
  readonly node: FuseNode;
  /** Fuses before it. */
  readonly depth: number;
  readonly rating: FuseRating | null;
}

/** Fuses of a supply, each before those behind it. */
export function fusesOf(
  supply: Pick<SupplyNode, "fuses">,
  ratings: ReadonlyMap<string, FuseRating>,
): readonly FuseFacts[] {
  const list = (fuses: readonly FuseNode[], depth: number): readonly FuseFacts[] =>
    fuses.flatMap((node) => [
      { node, depth, rating: ratings.get(node.element.id) ?? null },
      ...list(node.fuses, depth + 1),
    ]);
  return list(supply.fuses, 0);
}

/** The place of a fuse on its board, `F1`: what the book calls it there, with its point where others are called so. */
export function fusePlace(line: LineResult, { node: { element, toPointId } }: FuseFacts): string {
  const own = element.row.control ?? "";
  const alike = line.machine.elements.filter(
    (e) => e.itemId === element.itemId && e.row.kind === "fuse" && (e.row.control ?? "") === own,
  );
  const point = toPointId.slice(toPointId.indexOf(":") + 1);
  return alike.length > 1 || own === "" ? `${own} ${point}`.trim() : own;
}

/** Name of a fuse; a resettable one is called by its board and place. */
export function fuseName(line: LineResult, fuse: FuseFacts, language: SheetLanguage, joint = " · "): string {
  const { row, element } = fuse.node;
  if (row !== null && row.label !== "")
    return label(language, { en: row.label, zh: row.label_zh }, row.id, joint);
  // What the book calls the place in one language only.
  const place = say(language, (_, l) => bookTerm(l, fusePlace(line, fuse)), joint);
  return `${itemName(line, element.itemId, language, joint)} ${place}`;
}

/** What hangs on a fuse with none between: supplies that it feeds first, then items by their names. */
export function protectsText(
  line: LineResult,
  { node }: FuseFacts,
  most: number,
  language: SheetLanguage,
): string {
  const made = new Set(
    node.supplyIds.map(
      (id) =>
        line.machine.points.get(line.machine.book.tables.supplies.find((s) => s.id === id)?.positive ?? "")
          ?.itemId,
    ),
  );
  const items = node.loadIds.flatMap((id) => line.electric.loads.get(id)?.itemId ?? []);
  const own = [
    ...node.supplyIds.map((id) => supplyName(line, id, language)),
    ...node.fuses.map((f) => fuseName(line, { node: f, depth: 0, rating: null }, language)),
    ...items.filter((id) => !made.has(id)).map((id) => itemName(line, id, language)),
  ];
  return someOf(own, most, language);
}

/** `5 A, time-lag (T)`. */
export function ratingText({ node, rating }: FuseFacts, language: SheetLanguage): string {
  const amps = node.row?.rated_a ?? rating?.ratedA ?? node.element.row.amp;
  const speed = node.row?.speed ?? "resettable";
  const speedText = say(language, (w) => w.machine.speeds[speed]);
  return `${amps === null ? "–" : shortNumber(amps, 2)} A\n${speedText}`;
}

/** Root mean square of a fuse, and what that is of its rating. */
export function steadyText({ node, rating }: FuseFacts, line: LineResult): string {
  const carried = line.electric.elements.get(node.element.id);
  if (carried === undefined) return "–";
  const rated = node.row?.rated_a ?? rating?.ratedA ?? node.element.row.amp;
  const share = rated === null || rated === 0 ? "" : `\n${percentText(carried.rmsA.most / rated)}`;
  return `${ampsText(carried.rmsA.most)}${share}`;
}

/** Part of a fuse's melting I²t that its pulses ask for: null where none pass or nothing is known of it. */
export function pulseShare({ rating }: FuseFacts): number | null {
  if (rating === null || rating.neededA2s === null || rating.meltingA2s === null) return null;
  return rating.meltingA2s > 0 && rating.pulses > 0 ? rating.neededA2s / rating.meltingA2s : null;
}

/** Largest current, and what the pulses ask of the fuse. */
export function pulseText(fuse: FuseFacts, line: LineResult): string {
  const carried = line.electric.elements.get(fuse.node.element.id);
  if (carried === undefined) return "–";
  const share = pulseShare(fuse);
  return `${ampsText(carried.peakA.most)}${share === null ? "" : `\n${percentText(share)}`}`;
}
