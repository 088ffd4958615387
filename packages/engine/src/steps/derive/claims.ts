import { compareText } from "@pinwright/kernel";
import type { FastenerItem, Finding, Item, Machine } from "../../model/index.ts";
import { makeFinding } from "../../model/index.ts";

/** Begins the id of a derived step that items can be moved to. */
const MOVABLE = ["mount", "devices", "boards", "fixings", "join"] as const;
export type Movable = (typeof MOVABLE)[number];

/** A derived step that an id names, as far as the id tells. */
export const movableOf = (stepId: string): Movable | undefined =>
  MOVABLE.find((kind) => stepId.startsWith(`${kind}:`));

/** Who decides where an item goes: a step of the designer, or a person's choice. */
export interface Claims {
  /** Step by item, of items and fasteners alike. */
  readonly stepOf: ReadonlyMap<string, string>;
  readonly findings: readonly Finding[];
}

/**
 * Items that somebody has given to a step. A choice goes before the designer's table; of two steps in the table that
 * claim the same item the first has it, which is found. A choice of a step that is not there is passed over and found.
 */
export function claimsOf({ book, items, choices }: Machine): Claims {
  const stepOf = new Map<string, string>();
  const findings: Finding[] = [];
  for (const step of book.tables.steps) {
    for (const id of new Set(step.items)) {
      const item = items.get(id);
      if (item === undefined) continue;
      const first = stepOf.get(id);
      if (first === undefined) stepOf.set(id, step.id);
      else if (item.parentId === null || item.kind === "fastener")
        findings.push(makeFinding("fastener-two-steps", "error", [id, first, step.id]));
    }
  }
  const own = new Set(book.tables.steps.map((step) => step.id));
  for (const [subject, choice] of choices.get("step") ?? []) {
    const { value, held } = choice;
    if (items.has(subject) && (own.has(value) || movableOf(value) !== undefined)) stepOf.set(subject, value);
    else if (held === "pinned")
      findings.push(makeFinding("choice-not-followed", "error", [subject, value], { kind: "step" }));
  }
  return { stepOf, findings };
}

/** Items that are put in as a whole, each with what holds it, and fasteners that hold nothing, in code-point order. */
export interface Holdings {
  readonly wholes: readonly Exclude<Item, FastenerItem>[];
  /** By whole item. */
  readonly fastenersOf: ReadonlyMap<string, readonly string[]>;
  readonly loose: readonly FastenerItem[];
  readonly findings: readonly Finding[];
}

/**
 * What each fastener holds. One that holds a child holds its mechanism; one that holds a fastener goes with it.
 * A fastener that holds what this machine does not have is in no step, and found.
 */
export function holdingsOf({ items }: Machine, isClaimed: (fastenerId: string) => boolean): Holdings {
  const wholes: Exclude<Item, FastenerItem>[] = [];
  const loose: FastenerItem[] = [];
  const fastenersOf = new Map<string, string[]>();
  const findings: Finding[] = [];
  for (const item of items.values()) {
    if (item.kind !== "fastener") {
      if (item.parentId === null) wholes.push(item);
      continue;
    }
    if (isClaimed(item.id)) continue;
    const held = heldBy(items, item);
    if (held === undefined)
      findings.push(makeFinding("fastener-no-step", "error", [item.id, item.holds ?? ""]));
    else if (held.kind === "fastener") loose.push(item);
    else {
      const known = fastenersOf.get(held.id);
      if (known === undefined) fastenersOf.set(held.id, [item.id]);
      else known.push(item.id);
    }
  }
  const byId = (a: Item, b: Item): number => compareText(a.id, b.id);
  for (const ids of fastenersOf.values()) ids.sort(compareText);
  return { wholes: wholes.sort(byId), fastenersOf, loose: loose.sort(byId), findings };
}

/** The whole item that a fastener holds in the end; itself when it holds nothing; nothing when that is not there. */
function heldBy(items: Machine["items"], fastener: FastenerItem): Item | undefined {
  const seen = new Set<string>();
  let at: Item = fastener;
  while (at.kind === "fastener" && at.holds !== null) {
    if (seen.has(at.id)) return fastener;
    seen.add(at.id);
    const held: Item | undefined = items.get(at.holds);
    if (held === undefined) return undefined;
    at = held;
  }
  return at.parentId === null || at.kind === "fastener" ? at : items.get(at.parentId);
}
