import type { RuleWords } from "../finding.ts";

/** Wording of the rules of what can catch the ball, and of the symbols of screws. */
export const ballFindings: Readonly<Record<string, RuleWords>> = {
  "ball-pocket": {
    title: "The ball stays where it is",
    says: "{panel}, x {x_mm}, y {y_mm} mm, {lean}: the ball rests between {rest}, {depth_mm} mm deep; {limit_mm} mm is allowed; {way}.",
    values: {
      lean: {
        level: "machine level",
        left: "machine leaning 1° to the left",
        right: "machine leaning 1° to the right",
      },
      way: { over: "it must climb out", none: "there is no way out" },
    },
    why: "The game stops until somebody shakes the machine or opens it.",
    todo: "Close the pocket, turn its open side downhill, or put a hole or a kicker there.",
  },
  "ball-gap": {
    title: "A gap holds the ball",
    says: "{0} and {1}: {gap_mm} mm apart at x {x_mm}, y {y_mm} mm on {panel}; the ball is {ball_mm} mm; at least {limit_mm} mm more or less is expected.",
    why: "The ball wedges there, or comes through by chance.",
    todo: "Close the gap with a post, or make it wider.",
  },
  "ramp-clearance": {
    title: "Too little room over the ball",
    says: "{0}: {room_mm} mm of room at x {x_mm}, y {y_mm} mm on {panel}; the ball needs {need_mm} mm.",
    why: "The ball gets in below, is braked or jams, and wears the part.",
    todo: "Lift the part, or keep the ball out with a wall or a post.",
  },
  "screw-lookalike": {
    title: "Screws that look alike stand side by side",
    says: "{0} ({2}, {length_mm} mm) and {1} ({3}, {other_length_mm} mm), {distance_mm} mm apart, {alike_pct} % alike in the hand; {pairs} such places. In place of {0} the other {harm}.",
    values: {
      harm: {
        through: "comes through the far face",
        bottom: "bottoms in its tapped hole",
        short: "is too short to hold",
        askew: "holds its board or plastic askew",
      },
    },
    why: "The builder takes one for the other, and the harm is seen late.",
    todo: "Use one type for both, choose one of another colour or head, or set a pinned symbol that differs most.",
  },
  "symbol-alike": {
    title: "Two symbols are too much alike",
    says: "{0} ({letter}) and {1} ({other_letter}): symbols {alike_pct} % alike, limit {limit_pct} %; {pairs} pairs stand close together.",
    why: "On the map one screw is taken for the other.",
    todo: "Take back one of the two choices, or choose a symbol of another shape and shade.",
  },
};
