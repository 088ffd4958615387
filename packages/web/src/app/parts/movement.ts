import { type Decimal, decimal } from "@pinwright/kernel";
import type { ViewEntry } from "../../worker/protocol.ts";

type Line = ViewEntry<"stock">;

export const MOVEMENT_KINDS = ["received", "kitted", "used", "scrapped", "counted"] as const;
type MovementKind = (typeof MOVEMENT_KINDS)[number];

/** A movement as it is being written. */
export interface Draft {
  readonly kind: MovementKind;
  readonly partId: string;
  readonly revision: string;
  readonly quantity: string;
  readonly day: string;
  readonly runId: string;
  readonly stageId: string;
  readonly orderId: string;
  readonly siteId: string;
  readonly reason: string;
}

/** Why a draft cannot be written down. */
type DraftFault = "noPart" | "noQuantity" | "onlyCount" | "noDay" | "below";

/** What a draft says, taken apart. */
export interface Judged {
  /** What lies there of the part and revision now, and what it would leave; null: the quantity is no number. */
  readonly before: Decimal;
  readonly after: Decimal | null;
  readonly faults: readonly DraftFault[];
}

const DAY = /^\d{4}-\d{2}-\d{2}$/u;
const QUANTITY = /^\d+(?:[.,]\d+)?$/u;

/** The quantity of a draft; null when it is no number. A comma is a point: people type both. */
export function quantityOf(text: string): Decimal | null {
  const trimmed = text.trim();
  return QUANTITY.test(trimmed) ? decimal(trimmed.replace(",", ".")) : null;
}

/**
 * Whether a movement may be written down: the shelf may be less than empty only for a reason.
 * @param line what is known of its part; undefined: there is no such part
 */
export function judged(draft: Draft, line: Line | undefined): Judged {
  const before = line?.revisions.find(({ revision }) => revision === draft.revision)?.count ?? 0n;
  const quantity = quantityOf(draft.quantity);
  const faults: DraftFault[] = [];
  if (line === undefined) faults.push("noPart");
  if (quantity === null) faults.push("noQuantity");
  else if (quantity === 0n && draft.kind !== "counted") faults.push("onlyCount");
  if (!DAY.test(draft.day)) faults.push("noDay");
  const after =
    quantity === null
      ? null
      : draft.kind === "counted"
        ? quantity
        : draft.kind === "received"
          ? before + quantity
          : before - quantity;
  if (after !== null && after < 0n && draft.kind !== "received" && draft.reason.trim() === "")
    faults.push("below");
  return { before, after, faults };
}
