import type { RuleWords } from "../finding.ts";

/** Wording of the rules of the chapter `route`. */
export const routeFindings: Readonly<Record<string, RuleWords>> = {
  "classes-together": {
    title: "Classes lie together that should not",
    says: "Lane {0} ({rest}): {class} beside {other_class} over {length_mm} mm.",
    why: "Coil pulses couple into sensors and audio.",
    todo: "Move one harness to another lane, or bar the class on this lane.",
  },
  "crossing-bend": {
    title: "Crossing bends too tightly",
    says: "Crossing {0} in pose {1}: radius {radius_mm} mm, needs {least_mm} mm at Ø {diameter_mm} mm ({length_mm} mm over a gap of {distance_mm} mm).",
    why: "Strands break after some hundred openings.",
    todo: "Make the crossing longer, or split the bundle.",
  },
  "crossing-pinch": {
    title: "Crossing can be pinched",
    says: "Crossing {0} in pose {1}: a loop {depth_mm} mm deep (up to {deepest_mm} mm); there is room for {room_mm} mm.",
    why: "Closed on the loop, the panel cuts it.",
    todo: "Shorten the crossing, guide the loop, or make room for it.",
  },
  "crossing-pull": {
    title: "Crossing is too short",
    says: "Crossing {0} ({rest}): {length_mm} mm for a distance of {distance_mm} mm, {short_mm} mm short.",
    why: "Opening the machine tears the harness.",
    todo: "Make the crossing longer, or tie its sides nearer to the hinge.",
  },
  "hinge-earth": {
    title: "Earth over a hinge is the longest",
    says: "{0} over {1}: {extra_mm} mm more than the {length_mm} mm of its neighbours.",
    why: "If the bundle is pulled, the earth must part last.",
    todo: "Cut it as listed; nothing else to do.",
  },
  "joint-at-hinge": {
    title: "Joint in a flexing length",
    says: "{0} lies at {2}, beside the moving crossing {1}, in {3}.",
    why: "A splice or a terminal that flexes breaks at its edge.",
    todo: "Move the joint away from the crossing.",
  },
  "landing-unreached": {
    title: "No lane leads there",
    says: "{0} in {1}: nothing within a tail of {tail_max_mm} mm; {wires_missing} wires are missing.",
    why: "These wires have no length and are on no sheet.",
    todo: "Draw a lane past it, or allow a longer tail.",
  },
  "lane-class-barred": {
    title: "Class on a lane that bars it",
    says: "Lane {0} ({rest}) is closed to class {class}; wires of it there: {wires}.",
    why: "The lane was closed to that class for a reason.",
    todo: "Route the harness elsewhere, or open the lane.",
  },
  "lane-unusable": {
    title: "Lane leads nowhere",
    says: "{0} has no two different ends that exist.",
    why: "No harness can use it.",
    todo: "Correct the waypoints at its ends.",
  },
  "mains-together": {
    title: "Mains lies with something else",
    says: "Lane {0} ({rest}): {class} beside {other_class} over {length_mm} mm.",
    why: "Damaged insulation would put mains onto low-voltage wiring.",
    todo: "Give mains a lane of its own.",
  },
  "tail-long": {
    title: "Tail longer than allowed",
    says: "{0} in {1}: {tail_mm} mm of tail, {tail_max_mm} mm allowed.",
    why: "A long unheld tail chafes and tires its contacts.",
    todo: "Bring a lane nearer, or allow a longer tail for the shop.",
  },
};
