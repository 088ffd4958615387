import type { Decimal } from "@pinwright/kernel";

/** Why a figure is uncertain. */
export type Lack =
  /** No price anywhere for a part that is bought. */
  | "no-price"
  /** The book names no part for something that is used. */
  | "no-part"
  /** A supplier's currency has no rate. */
  | "no-rate"
  /** A part that is made has neither contents nor a way of making it. */
  | "no-source"
  /** A tool's cost is not known. */
  | "no-tool-cost"
  /** Nobody has said how long it takes. */
  | "no-minutes"
  /** The contents run in a circle. */
  | "circle"
  /** A pack of nothing, or a price that cannot be used. */
  | "bad-pack";

/** Something that a total does not contain. */
export interface Missing {
  readonly lack: Lack;
  /** Part, tool, supplier or other thing whose figure is not there. */
  readonly id: string;
}

/** A sum, with what is not in it. A total that lacks something is shown so beside the number. */
export interface Total {
  readonly value: Decimal;
  /** In code-point order of `id`, each once. */
  readonly missing: readonly Missing[];
}

/** An amount in a currency of ISO 4217. */
export interface Money {
  readonly currency: string;
  readonly amount: Decimal;
}
