/** Kinds of what an electrical finding can be computed from. */
export type BasisKind = "wire" | "contact" | "fuse" | "coil" | "lamp" | "supply" | "net";

/** Rules whose findings are computed, each with what of its subjects the computation is of. */
const COMPUTED: ReadonlyMap<string, readonly BasisKind[]> = new Map([
  ["coil-diode-missing", ["coil"]],
  ["coil-diode-small", ["coil"]],
  ["coil-held", ["coil"]],
  ["coil-hot", ["coil"]],
  ["coil-stuck", ["coil"]],
  ["coil-winding", ["coil"]],
  ["contact-hot", ["contact"]],
  ["fuse-breaking", ["fuse"]],
  ["fuse-large", ["fuse", "wire"]],
  ["fuse-never-opens", ["fuse"]],
  ["fuse-overloaded", ["fuse"]],
  ["fuse-pulsed", ["fuse"]],
  ["fuse-slow", ["fuse", "wire"]],
  ["fuse-volts", ["fuse"]],
  ["led-current", ["lamp"]],
  ["net-drop", ["net"]],
  ["resistor-hot", ["lamp"]],
  ["supply-overloaded", ["supply"]],
  ["supply-peak", ["supply"]],
  ["wire-hot", ["wire"]],
  ["wire-unprotected", ["wire"]],
]);

/** What a rule's findings are computed from; none of a rule that is not electrical. */
export const computedFrom = (rule: string): readonly BasisKind[] => COMPUTED.get(rule) ?? [];

/** Every rule whose computation can be shown, in code-point order. */
export const COMPUTED_RULES: readonly string[] = [...COMPUTED.keys()].sort();
