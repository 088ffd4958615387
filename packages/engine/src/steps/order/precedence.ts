import type { FasteningResult, HarnessResult, Machine, Precedence } from "../../model/index.ts";

/**
 * What must be done before what, between items that are put in as a whole, fasteners that hold none, harnesses, and
 * the designer's steps: from what hides, covers and wires what, and from the designer's rules. One row for each pair,
 * with its weightiest reason; sorted by ids. It may contain loops.
 *
 * A fastener that holds an item goes with that item, a child with its mechanism. The in-line connectors are done when
 * both their harnesses are.
 */
export function itemPrecedence(
  _machine: Machine,
  _fastening: FasteningResult,
  _harnesses: ReadonlyMap<string, HarnessResult>,
): readonly Precedence[] {
  return [];
}
