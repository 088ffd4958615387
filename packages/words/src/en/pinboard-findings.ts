import type { RuleWords } from "../finding.ts";

/** Wording of the rules of the pinboard. */
export const pinboardFindings: Readonly<Record<string, RuleWords>> = {
  "pinboard-too-large": {
    title: "A pinboard is larger than the bench",
    says: "{0}: the board is {width_mm} × {height_mm} mm; the bench takes {bench_width_mm} × {bench_height_mm} mm.",
    why: "The harness cannot be laid out in one piece.",
    todo: "Split the harness at an in-line connector, or give it a larger bench.",
  },
  "pinboard-crossing": {
    title: "Branches cross on a pinboard",
    says: "{0}: branches {1} and {2} cross.",
    why: "The upper bundle is built round the lower one and does not come off the board.",
    todo: "Take back the pegs that force it, or move one of the two branches.",
  },
  "pinboard-overlap": {
    title: "Things overlap on a pinboard",
    says: "{0}: the holder of {1} lies on {2}.",
    why: "The board cannot be drilled like this.",
    todo: "Lead fewer branches to one breakout, lengthen the tail, or move a peg.",
  },
  "pinboard-hand-room": {
    title: "Holders are too near for hands",
    says: "{0}: {1} is {room_mm} mm from {2}, the tightest place; hands want {wanted_mm} mm. Holders concerned: {holders}.",
    why: "A housing that is loaded past its neighbours is loaded slowly, and wrongly.",
    todo: "Lead fewer branches to one breakout, lengthen the tails, or move a peg.",
  },
  "pinboard-tail-short": {
    title: "A tail is too short to load its housing",
    says: "{0} in {2}: tail {tail_mm} mm; hands want {wanted_mm} mm.",
    why: "The housing cannot be turned to its wire-entry side beside the breakout.",
    todo: "Attach it to a waypoint farther away.",
  },
  "pinboard-peg-moved": {
    title: "A peg is not where it was to be",
    says: "{0} in {1}: {off_mm} mm from {asked_x_mm}, {asked_y_mm}, which its branches do not reach.",
    why: "A board that was drilled before no longer fits this harness.",
    todo: "Drill the board again, or give the branches their old lengths.",
  },
  "pinboard-direction-lost": {
    title: "A branch does not run in the direction that was chosen",
    says: "{0} in {1}: {off_deg}° off the chosen {asked_deg}°, because its pegs are held.",
    why: "What a person decided is not what will be built.",
    todo: "Take back the direction, or the places of the pegs.",
  },
  "pinboard-peg-unreadable": {
    title: "A choice of a peg cannot be read",
    says: "{0} in {1}: expected x,y in mm on the board, or one direction in degrees.",
    why: "The peg is placed by the program instead.",
    todo: "Write it as 420,310 or as 90.",
  },
  "pinboard-peg-unknown": {
    title: "A choice of a peg belongs to nothing",
    says: "{0}: {1} has no such node or branch.",
    why: "It may have been made for a harness that has changed since.",
    todo: "Delete the choice, or correct its subject.",
  },
};
