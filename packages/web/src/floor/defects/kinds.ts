import type { UnitKind } from "@pinwright/contract";

/** What can be wrong with a unit, as its tiles show it; the commonest first. Common practice, no source. */
export const DEFECTS = {
  board: [
    "solder-bridge",
    "dry-joint",
    "wrong-way-round",
    "wrong-part",
    "missing-part",
    "damaged-part",
    "test-failed",
    "other",
  ],
  harness: [
    "contact-out",
    "wrong-cavity",
    "swapped",
    "open",
    "short",
    "missing-wire",
    "wire-damaged",
    "wrong-length",
    "label-missing",
    "other",
  ],
  mechanism: [
    "out-of-adjustment",
    "does-not-move",
    "loose",
    "missing-part",
    "wrong-part",
    "damaged-part",
    "test-failed",
    "other",
  ],
  machine: [
    "screw-stripped",
    "screw-missing",
    "wire-pinched",
    "scratch",
    "loose",
    "missing-part",
    "wrong-part",
    "damaged-part",
    "out-of-adjustment",
    "does-not-move",
    "test-failed",
    "other",
  ],
} as const satisfies Record<UnitKind, readonly string[]>;

export type DefectWhat = (typeof DEFECTS)[UnitKind][number];
