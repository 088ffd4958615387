import {
  applies,
  choice,
  choiceOr,
  id,
  int,
  labels,
  maybeItem,
  maybeNum,
  maybeOutline,
  maybeRef,
  maybeText,
  names,
  num,
  numOr,
  point,
  ref,
  text,
} from "../column.ts";
import { table } from "../table.ts";

export const SIDES = ["top", "under"] as const;

/** What may share a lane and what may not is decided by the class of a net. */
export const NET_CLASSES = [
  "mains",
  "earth",
  "coil",
  "motor",
  "lamp",
  "switch",
  "logic",
  "data",
  "audio",
  "sensor",
] as const;

export const panels = table("panels", "places", "A flat board with a thickness and two sides.", ["id"], {
  id: id("Panel."),
  ...labels(),
  purpose: choice(["playfield", "cabinet", "backbox", "glass", "other"], "Where the panel belongs."),
  outline: maybeOutline("Outline drawing; blank: a rectangle of the given width and height."),
  width_mm: num("Extent in x.", { min: 1, max: 5000 }),
  height_mm: num("Extent in y.", { min: 1, max: 5000 }),
  thickness_mm: num("Nominal thickness.", { min: 0.2, max: 100 }),
  material: maybeText("Material in words."),
  wood: choiceOr(
    "none",
    ["none", "softwood", "hardwood"],
    "Wood that pilot holes are chosen for; none: screws do not bite in it.",
  ),
  grain: choiceOr("none", ["x", "y", "none"], "Direction of the face grain."),
  part: maybeRef("parts", "Sheet goods that the panel is cut from."),
  edge: maybeText("Edge treatment or machining in words."),
  ...applies(),
});

export const cutouts = table(
  "cutouts",
  "places",
  "Wood that is not there: holes, slots, pockets, grooves.",
  ["id"],
  {
    id: id("Cutout."),
    panel: ref("panels", "Panel that is cut."),
    side: choice(SIDES, "Side that the cut starts from."),
    purpose: choice(
      [
        "insert",
        "ball-path",
        "mechanism",
        "wire-hole",
        "fixing",
        "pocket",
        "groove",
        "slot",
        "vent",
        "other",
      ],
      "What the cut is for.",
    ),
    shape: choice(
      ["circle", "rect", "slot", "outline"],
      "A slot is a rectangle with round ends, longest in its own x.",
    ),
    x_mm: num("Centre.", { min: -10000, max: 10000 }),
    y_mm: num("Centre.", { min: -10000, max: 10000 }),
    rotation_deg: numOr(0, "Rotation.", { min: -360, max: 360 }),
    width_mm: maybeNum("Diameter of a circle, or extent in its own x.", { min: 0.5, max: 5000 }),
    height_mm: maybeNum("Extent in its own y; blank for a circle.", { min: 0.5, max: 5000 }),
    outline: maybeOutline("Drawing of the cut, for the shape `outline`."),
    depth_mm: maybeNum("Depth from that side; blank: right through.", { min: 0.1, max: 100 }),
    serves: maybeText("Item that the cut is made for, as a remark."),
    takes: maybeRef(
      "panels",
      "Panel whose edge stands in it: its width follows the measured thickness of that panel.",
    ),
    ...applies(),
  },
);

export const panel_sizes = table(
  "panel_sizes",
  "places",
  "How one size of a panel is cut: with which others at one setting of the fence, and following which thickness.",
  ["panel", "direction"],
  {
    panel: ref("panels", "Panel."),
    direction: choice(["x", "y"], "Its width (x) or its height (y)."),
    setting: maybeText(
      "Name of the fence setting; sizes with the same name mate and are cut at one setting.",
    ),
    thickness_of: maybeRef("panels", "Panel whose measured thickness this size follows."),
    times: numOr(
      0,
      "How many of those thicknesses the size grows with; -2 for a panel that stands between two others.",
      { min: -20, max: 20 },
    ),
    minus_mm: maybeNum("How much smaller it may be; blank: the shop's tolerance.", { min: 0, max: 100 }),
    plus_mm: maybeNum("How much larger it may be; blank: the shop's tolerance.", { min: 0, max: 100 }),
  },
);

export const fits = table(
  "fits",
  "places",
  "A gap or size of the assembled box that must come out, from the panels that add up to it.",
  ["id"],
  {
    id: id("Fit."),
    ...labels(),
    min_mm: maybeNum("Least that is good.", { min: -10000, max: 10000 }),
    max_mm: maybeNum("Most that is good.", { min: -10000, max: 10000 }),
    reason: maybeText("Why it matters."),
  },
);

export const fit_terms = table("fit_terms", "places", "What adds up to a fit.", ["fit", "term"], {
  fit: ref("fits", "Fit."),
  term: text("Name of the term within its fit: `a`, `b`."),
  panel: maybeRef("panels", "Panel; blank: something bought or measured, with a nominal value."),
  dimension: choiceOr("width", ["width", "height", "thickness", "other"], "Which size of the panel."),
  times: numOr(1, "How often it is added; negative: taken away.", { min: -100, max: 100 }),
  nominal_mm: maybeNum("Nominal value; blank: that of the panel.", { min: -10000, max: 10000 }),
  minus_mm: maybeNum("How much smaller it may be; blank: that of the panel.", { min: 0, max: 1000 }),
  plus_mm: maybeNum("How much larger it may be; blank: that of the panel.", { min: 0, max: 1000 }),
});

export const poses = table(
  "poses",
  "places",
  "Ways in which the machine can stand: play, lifted, folded.",
  ["id"],
  {
    id: id("Pose."),
    ...labels(),
    usual: choiceOr("no", ["yes", "no"], "The one pose in which the machine is played."),
    caution: maybeText("What to beware of in this pose."),
    caution_zh: maybeText("The same in Simplified Chinese."),
  },
);

export const pose_places = table(
  "pose_places",
  "places",
  "Where a panel is in a pose: its frame's origin and turn in the room (x right, y away from the player, z up).",
  ["pose", "panel"],
  {
    pose: ref("poses", "Pose."),
    panel: ref("panels", "Panel."),
    x_mm: num("Place of the panel's origin on its top face.", { min: -10000, max: 10000 }),
    y_mm: num("Place of the panel's origin on its top face.", { min: -10000, max: 10000 }),
    z_mm: num("Place of the panel's origin on its top face.", { min: -10000, max: 10000 }),
    rx_deg: numOr(0, "Turn about the room's x axis, done first.", { min: -360, max: 360 }),
    ry_deg: numOr(0, "Turn about the room's y axis, done second.", { min: -360, max: 360 }),
    rz_deg: numOr(0, "Turn about the room's z axis, done last.", { min: -360, max: 360 }),
  },
);

export const waypoints = table(
  "waypoints",
  "places",
  "A place on a panel side where lanes meet or wires may leave.",
  ["id"],
  {
    id: id("Waypoint."),
    panel: ref("panels", "Panel."),
    side: choice(SIDES, "Side."),
    x_mm: num("Place.", { min: -10000, max: 10000 }),
    y_mm: num("Place.", { min: -10000, max: 10000 }),
    hold: choiceOr("none", ["none", "saddle", "clamp", "tie-mount"], "What holds the bundle here."),
    hold_part: maybeRef("parts", "Part that holds the bundle."),
    ...applies(),
  },
);

export const lanes = table(
  "lanes",
  "places",
  "An allowed way for wires, straight between two waypoints of one panel side.",
  ["id"],
  {
    id: id("Lane."),
    from: ref("waypoints", "One end."),
    to: ref("waypoints", "Other end."),
    max_diameter_mm: num("Largest bundle that fits, all harnesses together.", { min: 1, max: 200 }),
    classes: names("Net classes that may use the lane; blank: all but mains."),
    ...applies(),
  },
);

export const crossings = table(
  "crossings",
  "places",
  "A way from one panel or side to another: over a hinge, over a gap, through a hole.",
  ["id"],
  {
    id: id("Crossing."),
    from: ref("waypoints", "Tie on one side."),
    to: ref("waypoints", "Tie on the other side."),
    kind: choice(
      ["hinge", "gap", "hole"],
      "A hinge is crossed along its axis; a hole joins the two sides of one panel.",
    ),
    length_mm: maybeNum("Length between the ties; blank: found from the poses.", { min: 1, max: 5000 }),
    room_mm: maybeNum("Depth free for the slack when it is shut; blank: not checked.", { min: 0, max: 2000 }),
    max_diameter_mm: num("Largest bundle that fits, all harnesses together.", { min: 1, max: 200 }),
    classes: names("Net classes that may use the crossing; blank: all but mains."),
    ...applies(),
  },
);

export const bonds = table(
  "bonds",
  "places",
  "A touchable metal part and the conductor that ties it to earth.",
  ["id"],
  {
    id: id("Bond."),
    ...labels(),
    metal: text("The metal part, in words."),
    item: maybeItem("Device or mechanism that the metal belongs to; blank: none of them."),
    at: point("Earth stud or tab of that part, as a point."),
    wire_type: maybeRef("wire_types", "Conductor."),
    stud: maybeText("Thread and material of the stud."),
    ring: maybeRef("parts", "Ring terminal."),
    washer: maybeRef("parts", "Toothed washer."),
    order: int("Order in which the bond test visits it.", { min: 1, max: 1000 }),
    ...applies(),
  },
);
