/**
 * When a number of a finding makes it worse: `more` or `less` than it was; `other` than it was, where no direction
 * is better; `name` tells findings of one rule about the same ids apart; `free` is told, but makes nothing worse,
 * because it follows from the others or is an example.
 */
export type Worse = "more" | "less" | "other" | "name" | "free";

type Numbers = Readonly<Record<string, Worse>>;

const OVERFULL: Numbers = {
  laid_mm: "more",
  max_mm: "less",
  packed_mm: "free",
  lower_bound_mm: "free",
  min_mm: "free",
  circles: "free",
};
const FIT: Numbers = { wire_type: "other", family: "other" };
const HARM: Numbers = { pins: "more", plug_net: "other", socket_net: "other" };
const REACH: Numbers = { reach_mm: "more", distance_mm: "less" };
/** A choice that is not followed: `kind` and what was asked for tell which. */
const CHOICE: Numbers = {
  kind: "name",
  value: "other",
  unknown: "more",
  missing: "more",
  off_trunk: "more",
  number: "free",
  clash: "free",
};

/**
 * For each rule whose findings have numbers, which of them make a finding worse. An acceptance holds as long as
 * none of these is worse than what was accepted. A rule or number that is not told here counts as `other`: an
 * acceptance must never outlive what was accepted because something was forgotten.
 */
export const WORSE: Readonly<Record<string, Numbers>> = {
  "lane-overfull": OVERFULL,
  "crossing-overfull": OVERFULL,
  "hole-overfull": OVERFULL,
  "clip-overfull": OVERFULL,
  "clip-loose": { ...OVERFULL, laid_mm: "less", min_mm: "more", max_mm: "free" },
  "bend-tight": {
    radius_mm: "more",
    radius_possible_mm: "less",
    turn_deg: "free",
    diameter_mm: "free",
    tangent_mm: "free",
    room_mm: "free",
  },
  "tie-missing": { laid_mm: "more", thickest_tie_mm: "less", circles: "free" },

  "pinboard-too-large": {
    width_mm: "more",
    height_mm: "more",
    bench_width_mm: "less",
    bench_height_mm: "less",
  },
  "pinboard-hand-room": { room_mm: "less", wanted_mm: "more", holders: "more" },
  "pinboard-tail-short": { tail_mm: "less", wanted_mm: "more" },
  "pinboard-peg-moved": { off_mm: "more", asked_x_mm: "other", asked_y_mm: "other", settled: "free" },
  "pinboard-direction-lost": { off_deg: "more", asked_deg: "other" },

  "classes-together": { class: "name", other_class: "name", length_mm: "more" },
  "mains-together": { class: "name", other_class: "name", length_mm: "more" },
  "lane-class-barred": { class: "name", wires: "more" },
  "crossing-bend": {
    radius_mm: "less",
    least_mm: "more",
    diameter_mm: "free",
    length_mm: "free",
    distance_mm: "free",
  },
  "crossing-pinch": {
    depth_mm: "more",
    deepest_mm: "more",
    room_mm: "less",
    length_mm: "free",
    distance_mm: "free",
  },
  "crossing-pull": { short_mm: "more", length_mm: "free", distance_mm: "free" },
  "hinge-earth": { extra_mm: "more", length_mm: "free" },
  "landing-unreached": { wires_missing: "more", tail_max_mm: "free" },
  "tail-long": { tail_mm: "more", tail_max_mm: "less" },

  "chain-drop": { length_mm: "more", limit_mm: "less", drop_limit_pct: "free" },
  "choice-not-followed": CHOICE,
  "settled-dropped": CHOICE,
  "contact-conductor": { ...FIT, area_mm2: "other", least_mm2: "more", most_mm2: "less" },
  "contact-insulation": { ...FIT, diameter_mm: "other", least_mm: "more", most_mm: "less" },
  "contact-volts": { family: "free", rated_v: "less", net_v: "more" },
  "contact-amps": { rated_a: "less", net_a: "more", contacts: "free" },
  "contact-overfull": {
    family: "free",
    wires: "more",
    area_mm2: "more",
    most_wires: "less",
    most_mm2: "less",
  },
  "core-unwired": { core: "name" },
  "crimp-height-missing": { area_mm2: "other", ends: "free" },
  "end-unwired": { alone: "free" },
  "net-classes-mixed": { loud: "other", quiet: "other" },
  "net-split": { parts: "more" },
  "pin-class": { pin_class: "other", net_class: "other" },
  "splice-area": { wires: "more", area_mm2: "other", least_mm2: "more", most_mm2: "less" },
  "wire-voltage": { wire_type: "free", rated_v: "less", net_v: "more" },
  "wire-mains": { wire_type: "free", rated_v: "less", least_v: "more" },

  "colour-earth": { colour: "other", net_class: "other" },
  "colour-not-stocked": { colour: "other", wire_type: "other" },
  "mains-colour": { colour: "other", neutral: "other" },
  "housing-short-of-colours": { wires: "more", colours: "less" },
  "colour-alike": { colour: "other", wires: "more" },

  "plug-swap": { ...HARM, ...REACH },
  "plug-on-longer": { ...HARM, ...REACH, offset: "free" },
  "plug-offset": { ...HARM, offset: "other" },
  "plug-reversed": HARM,
  "plugs-alike": { plugs: "more", pairs: "more" },
};
