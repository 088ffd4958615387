import type { RuleWords } from "../finding.ts";

/** Wording of the rules of boards. */
export const boardsFindings: Readonly<Record<string, RuleWords>> = {
  "bath-blocked": {
    title: "The solder bath never pays for a board",
    says: "{0}: {bath_min} min a board in the bath, {hand_min} min by hand ({joints} joints, {hidden} of them hidden, {masks} masked places, {after_wash} joints after the wash).",
    why: "Masks, hidden joints, dips and the wash take longer than its joints by hand, however many boards there are.",
    todo: "Solder it by hand, or put more of its boards into one carrier, and place its parts so that fewer holes are masked.",
  },
  "board-no-parts": {
    title: "A board has no parts",
    says: "{0}: {boards} in the machine; the book has no parts for it, and no part for the board as it is bought.",
    why: "It can be neither stuffed nor ordered, and its cost is missing from the machine's.",
    todo: "Enter its parts in the table of placements, or name the part under which it is bought or had made with its parts on (`stuffed_part`).",
  },
  "board-no-test": {
    title: "A board is not tested",
    says: "{0}: {boards} in the machine; no test has the scope `board` for it.",
    why: "A fault of the board is found in the machine, where it takes longest to find.",
    todo: "Add a look at its joints, its current without load and one answer for each of its outputs, with limits.",
  },
  "placement-hole": {
    title: "A part stands where a fixing screw goes",
    says: "{1} on {0}: {gap_mm} mm from the middle of a fixing hole; the screw's head needs {least_mm} mm.",
    why: "The screw cannot be driven, or its head cuts into the part.",
    todo: "Move the part or the hole.",
  },
  "placement-off": {
    title: "A part stands over the edge of its board",
    says: "{1} on {0}: {over_mm} mm beyond the edge.",
    why: "It cannot be soldered there, or it hits what the board is mounted to.",
    todo: "Correct its place, its size or its rotation, or the outline of the board.",
  },
  "placement-overlap": {
    title: "Two parts of a board are in one place",
    says: "{1} and {2} on {0} share {area_mm2} mm².",
    why: "Only one of them can be put in.",
    todo: "Correct a place, a size or a rotation; where one really lies below the other, mark its joints as hidden.",
  },
  "placement-too-high": {
    title: "A part is higher than its board is said to be",
    says: "{1} on {0}: {height_mm} mm high; the board's height is given as {board_mm} mm.",
    why: "The room above the board was checked with the lower figure: something may stand in the part's way.",
    todo: "Correct the height of the part or of the board type, or choose a lower part.",
  },
  "polarity-missing": {
    title: "Nothing says which way round a part goes",
    says: "{1} ({2}) on {0}: no mark is given.",
    why: "Put in the wrong way round it fails, at once or in a customer's house, and the stuffing guide cannot show it.",
    todo: "Say what marks the right way round (ring, notch, flat side, stripe), or accept this if either way is right.",
  },
  "test-no-limits": {
    title: "A measurement has no limits",
    says: "{0} measures something, and neither a least nor a greatest value is given.",
    why: "Whoever tests writes a figure down and cannot tell whether it is good.",
    todo: "Give the least or the greatest value, or both, from the design.",
  },
};
