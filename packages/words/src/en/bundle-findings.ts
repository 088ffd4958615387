import type { RuleWords } from "../finding.ts";

const overfull = (title: string, place: string, todo: string): RuleWords => ({
  title,
  says: `${place} {0}: {circles} wires and cables of {rest} together are {laid_mm} mm thick as laid ({packed_mm} mm packed as tightly as was found, {lower_bound_mm} mm at the very least); {max_mm} mm fit.`,
  why: "The bundle does not go through, or its insulation is crushed.",
  todo,
});

/** Wording of the rules of bundles and of what they go through. */
export const bundleFindings: Readonly<Record<string, RuleWords>> = {
  "lane-overfull": overfull("Lane too full", "Lane", "Route a harness another way, or widen the lane."),
  "crossing-overfull": overfull(
    "Crossing too full",
    "Crossing",
    "Route a harness over another crossing, or make more room.",
  ),
  "hole-overfull": overfull(
    "Hole too small",
    "Hole",
    "Bore it larger, or send a harness through another hole.",
  ),
  "clip-overfull": overfull("Clip too small", "The clip at", "Fit a larger clip or saddle, or a second one."),
  "clip-loose": {
    title: "Clip too large",
    says: "The clip at {0}: {circles} wires and cables of {rest} are {laid_mm} mm thick as laid; it holds {min_mm} to {max_mm} mm.",
    why: "A bundle that moves in its clip chafes.",
    todo: "Fit a smaller clip or saddle.",
  },
  "bend-tight": {
    title: "Bend without room",
    says: "Harness {1} turns {turn_deg}° at {0}, {diameter_mm} mm thick: a bend of {radius_mm} mm radius begins {tangent_mm} mm from the corner, half of the shorter branch is {room_mm} mm; a radius of {radius_possible_mm} mm would fit.",
    why: "Wire that is bent too tightly breaks in its strands, and its insulation cracks.",
    todo: "Move the waypoint, cut the corner with another lane, or accept the smaller radius.",
  },
};
