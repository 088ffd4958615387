import {
  applies,
  choice,
  choiceOr,
  flag,
  id,
  int,
  intOr,
  item,
  labels,
  maybeInt,
  maybeNum,
  maybeOutline,
  maybeRef,
  maybeText,
  num,
  numOr,
  ref,
  text,
} from "../column.ts";
import { table } from "../table.ts";
import { SIDES } from "./places.ts";

const place = () =>
  ({
    panel: ref("panels", "Panel that it is placed on."),
    side: choice(SIDES, "Side that it is fixed to."),
    x_mm: num("Place of its own origin.", { min: -10000, max: 10000 }),
    y_mm: num("Place of its own origin.", { min: -10000, max: 10000 }),
    rotation_deg: numOr(0, "Rotation, anticlockwise seen from `top`.", { min: -360, max: 360 }),
  }) as const;

/** What a fastener goes on with, and what holds it on the far side. */
export const through = () =>
  ({
    washer: maybeRef("fastener_types", "Washer under its head."),
    nut: maybeRef("fastener_types", "Nut or T-nut on the far side of the panel; blank: none."),
    tapped_mm: maybeNum(
      "Depth of the tapped hole that it screws into beyond the panel; blank: it bites in the panel or in a nut.",
      { min: 0.5, max: 200 },
    ),
  }) as const;

const plastic = () => flag("Its fasteners bear on a plastic, which threadlocker cracks.");

const DEVICE_CLASSES = [
  "switch",
  "lamp",
  "coil",
  "motor",
  "sensor",
  "button",
  "speaker",
  "display",
  "supply",
  "inlet",
  "filter",
  "earth",
  "other",
] as const;

export const device_types = table(
  "device_types",
  "items",
  "A kind of device: a switch, lamp, coil, motor and so on.",
  ["id"],
  {
    id: id("Device type."),
    ...labels(),
    class: choice(DEVICE_CLASSES, "What it does."),
    letter: maybeText("Class letter of IEC 81346-2."),
    outline: maybeOutline("Outline seen from its own side; blank: a rectangle about its origin."),
    width_mm: num("Extent in its own x.", { min: 0.5, max: 3000 }),
    depth_mm: num("Extent in its own y.", { min: 0.5, max: 3000 }),
    height_mm: num("Height off the panel side that it is fixed to.", { min: 0, max: 1000 }),
    reach_mm: numOr(0, "How far it passes through to the other side.", { min: 0, max: 1000 }),
    needs_bond: flag("Has metal that can be touched when the machine is open: it must be bonded to earth."),
    plastic: plastic(),
    part: maybeRef("parts", "Part that is bought or made."),
  },
);

export const devices = table("devices", "items", "A device placed by itself.", ["id"], {
  id: id("Device."),
  ...labels(),
  type: ref("device_types", "Its type."),
  ...place(),
  z_mm: numOr(0, "Height of its origin off the panel side, for a device on a ramp or a bracket.", {
    min: -500,
    max: 1000,
  }),
  number: maybeInt("Service number within its class.", { min: 1, max: 9999 }),
  light_from: maybeRef("devices", "Emitter whose light falls on it, of a receiver of light."),
  ...applies(),
});

export const board_types = table("board_types", "items", "A kind of circuit board.", ["id"], {
  id: id("Board type."),
  ...labels(),
  revision: text("Revision letter or number."),
  purpose: maybeText("What the board is for, in a sentence."),
  purpose_zh: maybeText("The same in Simplified Chinese."),
  outline: maybeOutline("Outline; blank: a rectangle from its origin."),
  width_mm: num("Extent in its own x, from its lower left corner.", { min: 1, max: 1000 }),
  depth_mm: num("Extent in its own y, from its lower left corner.", { min: 1, max: 1000 }),
  height_mm: num("Tallest part above the board.", { min: 0.5, max: 300 }),
  standoff_mm: numOr(10, "Height of its stand-offs.", { min: 0, max: 100 }),
  holes: maybeText("Fixing holes as `x,y` pairs in mm separated by one space."),
  part: maybeRef("parts", "Bare board."),
  stuffed_part: maybeRef("parts", "Part number of the stuffed and tested board."),
  carrier: intOr(1, "Boards of this type that one carrier takes into the solder bath.", { min: 1, max: 100 }),
});

export const boards = table("boards", "items", "A circuit board in the machine.", ["id"], {
  id: id("Board."),
  ...labels(),
  type: ref("board_types", "Its type."),
  ...place(),
  address: maybeInt("Address set on the board.", { min: 0, max: 255 }),
  terminated: flag("The bus ends here."),
  ...applies(),
});

export const mechanism_types = table(
  "mechanism_types",
  "items",
  "A kind of mechanism with its own devices and fasteners.",
  ["id"],
  {
    id: id("Mechanism type."),
    ...labels(),
    outline: maybeOutline("Outline at the panel; blank: a rectangle about its origin."),
    width_mm: num("Extent in its own x.", { min: 1, max: 2000 }),
    depth_mm: num("Extent in its own y.", { min: 1, max: 2000 }),
    height_mm: num("Height off the side that it is fixed to.", { min: 0, max: 1000 }),
    reach_mm: numOr(0, "Height on the other side, through the panel.", { min: 0, max: 1000 }),
    needs_bond: flag("Has metal that can be touched when the machine is open: it must be bonded to earth."),
    plastic: plastic(),
    cycle_test: maybeText("Bench test in words: cycles and what is watched."),
    cycle_test_zh: maybeText("The same in Simplified Chinese."),
    part: maybeRef("parts", "Part number of the assembled mechanism."),
  },
);

export const mechanism_devices = table(
  "mechanism_devices",
  "items",
  "A device that is part of a mechanism type, in the mechanism's own frame.",
  ["mechanism_type", "child"],
  {
    mechanism_type: ref("mechanism_types", "Mechanism type."),
    child: id("Name within the mechanism; the machine's item is `mechanism/child`."),
    ...labels(),
    device_type: ref("device_types", "Type."),
    x_mm: num("Place in the mechanism's frame.", { min: -2000, max: 2000 }),
    y_mm: num("Place in the mechanism's frame.", { min: -2000, max: 2000 }),
    z_mm: numOr(0, "Height off the panel side.", { min: -500, max: 1000 }),
    rotation_deg: numOr(0, "Rotation in the mechanism's frame.", { min: -360, max: 360 }),
  },
);

export const mechanism_numbers = table(
  "mechanism_numbers",
  "items",
  "The service number of a device of a mechanism; a device of its own has it in `devices`.",
  ["item"],
  {
    item: item("Device of a mechanism, `mechanism/child`."),
    number: int("Service number within its class.", { min: 1, max: 9999 }),
  },
);

export const mechanism_fasteners = table(
  "mechanism_fasteners",
  "items",
  "A fastener that holds a mechanism type to its panel.",
  ["mechanism_type", "child"],
  {
    mechanism_type: ref("mechanism_types", "Mechanism type."),
    child: id("Name within the mechanism."),
    fastener_type: ref("fastener_types", "Type."),
    x_mm: num("Place in the mechanism's frame.", { min: -2000, max: 2000 }),
    y_mm: num("Place in the mechanism's frame.", { min: -2000, max: 2000 }),
    flange_mm: numOr(0, "Thickness of what the fastener passes through before the panel.", {
      min: 0,
      max: 200,
    }),
    ...through(),
    moments: maybeText(
      "Moments of driving it, separated by one space: start align tighten recheck; blank: tighten.",
    ),
  },
);

export const bodies = table(
  "bodies",
  "items",
  "A solid part of a device type or mechanism type, where its whole outline over its whole height says too much.",
  ["id"],
  {
    id: id("Body."),
    device_type: maybeRef("device_types", "Device type that it is part of; exactly one of the two is given."),
    mechanism_type: maybeRef("mechanism_types", "Mechanism type that it is part of."),
    ...labels(),
    outline: maybeOutline(
      "Outline in the type's frame, about its place; blank: a rectangle about its place.",
    ),
    x_mm: numOr(0, "Place in the type's frame.", { min: -2000, max: 2000 }),
    y_mm: numOr(0, "Place in the type's frame.", { min: -2000, max: 2000 }),
    rotation_deg: numOr(0, "Rotation in the type's frame.", { min: -360, max: 360 }),
    width_mm: maybeNum("Extent in its own x; blank: it has an outline.", { min: 0.2, max: 2000 }),
    depth_mm: maybeNum("Extent in its own y; blank: as wide as deep.", { min: 0.2, max: 2000 }),
    round: flag("A disc of the given width."),
    from_mm: num(
      "Where it begins, off the side that the type is fixed to; below zero: in the panel, and through it.",
      {
        min: -1000,
        max: 1000,
      },
    ),
    to_mm: num("Where it ends.", { min: -1000, max: 1000 }),
    moves: flag("Moves: this is all that it sweeps."),
  },
);

export const mechanism_steps = table(
  "mechanism_steps",
  "items",
  "How a mechanism type is built and adjusted on its bench, with its gauges.",
  ["mechanism_type", "order"],
  {
    mechanism_type: ref("mechanism_types", "Mechanism type."),
    order: int("Order.", { min: 1, max: 1000 }),
    kind: choice(
      ["build", "adjust", "cycle", "retighten"],
      "Put together, set to a gauge, cycled, or tightened again.",
    ),
    ...labels(),
    tool: maybeText("Tool or gauge."),
    unit: maybeText("Unit of what is set or read."),
    nominal: maybeNum("Value to set.", { min: -1e6, max: 1e6 }),
    min: maybeNum("Lower limit.", { min: -1e6, max: 1e6 }),
    max: maybeNum("Upper limit.", { min: -1e6, max: 1e6 }),
    minutes: maybeNum("Time; blank: found from its motions.", { min: 0, max: 1000 }),
    caution: maybeText("What to beware of."),
    caution_zh: maybeText("The same in Simplified Chinese."),
  },
);

export const mechanisms = table("mechanisms", "items", "A mechanism in the machine.", ["id"], {
  id: id("Mechanism."),
  ...labels(),
  type: ref("mechanism_types", "Its type."),
  ...place(),
  ...applies(),
});

export const inlines = table(
  "inlines",
  "items",
  "An in-line connector between two harnesses; its halves are `a` and `b`.",
  ["id"],
  {
    id: id("In-line connector."),
    ...labels(),
    connector: ref("connectors", "Its connector type."),
    ...place(),
    mounting: choiceOr(
      "free",
      ["free", "clip", "panel"],
      "Hangs free, sits in a clip, or is fixed in a panel.",
    ),
    ...applies(),
  },
);
