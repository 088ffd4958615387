import type { RuleWords } from "../finding.ts";

/** Wording of the rules of what stands in the way of what: items, boards, bundles, poses, glass. */
export const clashFindings: Readonly<Record<string, RuleWords>> = {
  "solids-clash": {
    title: "Two things want the same place",
    says: "{0} and {1}, between {from_mm} and {to_mm} mm over the panel's top face{moves}: they share {overlap_mm2} mm² and stand {gap_mm} mm apart; {wanted_mm} mm is wanted.",
    values: { moves: { true: ", where one of them moves", false: "" } },
    why: "They cannot be mounted together, or they rub and short when something bends.",
    todo: "Move one of them, or draw its parts as they really are.",
  },
  "board-over": {
    title: "Something below a board is too tall",
    says: "{1} under {0}: {gap_mm} mm of room on {overlap_mm2} mm²; {wanted_mm} mm is wanted.",
    why: "The board cannot lie on its stand-offs, or its solder side shorts on what is below.",
    todo: "Use taller stand-offs, or move the board or what lies below it.",
  },
  "standoff-height": {
    title: "A stand-off is not as high as its board wants",
    says: "{0} is {height_mm} mm high; the type of {1} asks for {wanted_mm} mm.",
    why: "The board is bent when it is screwed down, or lies too low over what is below it.",
    todo: "Use the stand-off of that height, or correct the height in the board type.",
  },
  "standoff-missing": {
    title: "A fixing hole of a board has no stand-off",
    says: "{0}: no stand-off that holds it under hole {hole}, at x {x_mm}, y {y_mm} mm.",
    why: "The board hangs loose there and breaks at its neighbour hole.",
    todo: "Place a stand-off there that holds the board, or take the hole out of the board type.",
  },
  "bundle-blocked": {
    title: "A bundle would pass through something",
    says: "{0} of harness {1}, {diameter_mm} mm thick, meets {2}{moves}: the way round or over it is {extra_mm} mm longer, and there are {spare_mm} mm to spare.",
    values: { moves: { true: ", which moves there", false: "" } },
    why: "The harness cannot be laid as it was made, or it is cut by what moves.",
    todo: "Lead the lane another way, move the thing, or draw the room that it leaves for wires.",
  },
  "no-opening": {
    title: "Something passes through a panel that is closed there",
    says: "{0} in {1}: {opening} {part}; {missing_mm2} mm² of it run into wood.",
    values: { opening: { none: "there is no opening for", small: "the opening is too small for" } },
    why: "It cannot be put in.",
    todo: "Cut the opening, make it larger, or move the item to its opening.",
  },
  "off-panel": {
    title: "Something sticks out beyond its panel",
    says: "{0} is {over_mm} mm beyond the edge of {1}{off}.",
    values: { off: { true: ", wholly off it", false: "" } },
    why: "There is nothing that it could be screwed to, and it meets the next panel.",
    todo: "Move it, or correct the panel's outline.",
  },
  "pose-clash": {
    title: "Things on different panels meet",
    says: "{0} and {1}, in {poses}: they stand {gap_mm} mm apart and share {overlap_mm2} mm² in plan; {wanted_mm} mm is wanted.",
    why: "The machine cannot be brought into that pose, or breaks something in doing so.",
    todo: "Move one of them, cut an opening where one should pass, or correct the pose.",
  },
  "glass-clearance": {
    title: "Something stands too high under the glass",
    says: "{0} under {1}, in {poses}: {gap_mm} mm of room; {wanted_mm} mm is wanted.",
    why: "The glass breaks on it when it is leant on, or rattles.",
    todo: "Make it lower, move it towards the end where the glass is higher, or raise the glass.",
  },
};
