import {
  applies,
  choice,
  choiceOr,
  colours,
  flag,
  id,
  int,
  intOr,
  item,
  labels,
  localPoint,
  maybeColour,
  maybeInt,
  maybeItem,
  maybeNum,
  maybePoint,
  maybeRef,
  maybeText,
  num,
  numOr,
  point,
  ref,
  text,
} from "../column.ts";
import { table } from "../table.ts";
import { NET_CLASSES } from "./places.ts";

export const elements = table(
  "elements",
  "insides",
  "What joins two points inside a device type, board type or mechanism type.",
  ["id"],
  {
    id: id("Element."),
    device_type: maybeRef("device_types", "Device type that it is in; exactly one of the three is given."),
    board_type: maybeRef("board_types", "Board type that it is in."),
    mechanism_type: maybeRef(
      "mechanism_types",
      "Mechanism type that it is in; its points are `child:terminal`.",
    ),
    kind: choice(
      [
        "link",
        "resistor",
        "diode",
        "led",
        "coil",
        "motor",
        "contact",
        "driver",
        "input",
        "source",
        "load",
        "fuse",
        "capacitor",
        "speaker",
      ],
      "What it is. A link is a copper joint; a load draws a steady current.",
    ),
    from: localPoint("One point; of a diode or LED the anode, of a driver or source the positive."),
    to: localPoint("Other point."),
    control: maybeText("What closes or drives it: an address, a bit, a motion."),
    normally: choiceOr("open", ["open", "closed"], "Contact at rest."),
    ohm: maybeNum("Resistance.", { min: 0, max: 1e9 }),
    mh: maybeNum("Inductance in millihenry.", { min: 0, max: 1e6 }),
    uf: maybeNum("Capacitance in microfarad.", { min: 0, max: 1e6 }),
    volt: maybeNum("Voltage of a source, forward voltage of a diode, rated voltage of a load.", {
      min: 0,
      max: 1000,
    }),
    amp: maybeNum(
      "Current of a load or LED, mean current of a diode, limit of a driver, rating of a fuse; a fuse without a row in `fuses` is a resettable one that holds this.",
      { min: 0, max: 1000 },
    ),
    peak_a: maybeNum("Current that a diode or LED stands again and again.", { min: 0, max: 10000 }),
    block_v: maybeNum("Voltage that a diode or driver stands while it blocks.", { min: 0, max: 10000 }),
    rated_w: maybeNum("Power that a resistor, or the resistor within an LED lamp, is made for.", {
      min: 0,
      max: 10000,
    }),
  },
);

export const windings = table(
  "windings",
  "insides",
  "How a coil is wound, and how it warms; what is blank is not checked.",
  ["element"],
  {
    element: ref("elements", "The coil."),
    turns: maybeInt("Turns.", { min: 1, max: 1000000 }),
    wire_mm: maybeNum("Diameter of the bare conductor.", { min: 0.01, max: 10 }),
    enamel_mm: maybeNum("Diameter over the enamel.", { min: 0.01, max: 10 }),
    bore_mm: maybeNum("Diameter that the first layer is wound on.", { min: 0.5, max: 500 }),
    window_mm: maybeNum("Length of a layer, between the bobbin's flanges.", { min: 0.5, max: 1000 }),
    class: choiceOr(
      "B",
      ["A", "E", "B", "F", "H"],
      "Insulation class of IEC 60085: A 105, E 120, B 130, F 155, H 180 °C.",
    ),
    heat_w: maybeNum("Heat that it can give off all the time, as it is fitted, in air of 40 °C.", {
      min: 0.01,
      max: 100000,
    }),
    warm_min: maybeNum("Thermal time constant.", { min: 0.01, max: 10000 }),
    pole_mm2: maybeNum("Area of the plunger's face.", { min: 0.1, max: 100000 }),
    gap_mm: maybeNum("Air gap at the start of the stroke.", { min: 0.01, max: 500 }),
  },
);

export const connector_families = table(
  "connector_families",
  "wiring",
  "How a wire ends: a contact in a housing, a tab, a ring, a lug, a screw.",
  ["id"],
  {
    id: id("Family."),
    ...labels(),
    kind: choice(
      ["housing", "tab", "ring", "lug", "screw", "idc", "splice"],
      "Kind of termination; a splice joins wires.",
    ),
    pitch_mm: maybeNum("Pitch of a housing.", { min: 0.5, max: 50 }),
    row_pitch_mm: maybeNum("Distance between rows of a housing.", { min: 0.5, max: 50 }),
    rated_a: num("Current limit of one contact.", { min: 0.01, max: 500 }),
    rated_v: numOr(250, "Voltage limit.", { min: 1, max: 1000 }),
    area_min_mm2: num("Smallest conductor.", { min: 0.01, max: 100 }),
    area_max_mm2: num("Largest conductor, or sum of the conductors.", { min: 0.01, max: 100 }),
    insulation_min_mm: maybeNum("Thinnest insulation.", { min: 0.1, max: 50 }),
    insulation_max_mm: num("Thickest insulation.", { min: 0.1, max: 50 }),
    strip_mm: num("Strip length.", { min: 0, max: 100 }),
    shared: choiceOr(
      "mild",
      ["none", "mild", "steep"],
      "What a contact's limit loses when its neighbours carry current too: nothing, a fifth for each doubling of loaded contacts, or down to 0.3 of it when all are loaded.",
    ),
    contact_mohm: num("Resistance of one mated contact, new.", { min: 0, max: 1000 }),
    wires_per_contact: intOr(1, "How many wires one contact takes.", { min: 1, max: 8 }),
    contact_part: maybeRef("parts", "Contact on the harness (of an in-line connector: half a)."),
    mate_contact_part: maybeRef("parts", "Contact of the mate (of an in-line connector: half b)."),
    tool: maybeText("Tool and die."),
    crimp_height_mm: maybeText("Crimp height by gauge, in words."),
    extraction_tool: maybeText("Tool that frees a contact; blank: none."),
    latch: flag("The contact latches in its cavity; tug each one."),
    crimped_at: choiceOr(
      "bench",
      ["bench", "board"],
      "Crimped at the cutting bench, or after trimming at the pinboard.",
    ),
  },
);

export const connectors = table(
  "connectors",
  "wiring",
  "A connector of a board type or device type, or a type of in-line connector.",
  ["id"],
  {
    id: id("Connector."),
    board_type: maybeRef(
      "board_types",
      "Board type that carries it; blank with `device_type` blank: in-line type.",
    ),
    device_type: maybeRef("device_types", "Device type that carries it."),
    name: text("Name on the board, as in `item:name.pin`: `j1`. Of an in-line type: any short name."),
    label: maybeText("What the connector is for."),
    family: ref("connector_families", "Family."),
    ways: int("Number of cavities.", { min: 1, max: 200 }),
    rows: intOr(1, "Rows of cavities.", { min: 1, max: 4 }),
    x_mm: numOr(0, "Place of pin 1 in the carrier's frame.", { min: -2000, max: 2000 }),
    y_mm: numOr(0, "Place of pin 1 in the carrier's frame.", { min: -2000, max: 2000 }),
    rotation_deg: numOr(0, "Direction of pin 2 seen from pin 1.", { min: -360, max: 360 }),
    housing_part: maybeRef("parts", "Housing on the harness (of an in-line type: half a)."),
    mate_part: maybeRef("parts", "Header on the board (of an in-line type: housing of half b)."),
    key_part: maybeRef("parts", "Key plug."),
  },
);

export const pins = table(
  "pins",
  "wiring",
  "A cavity that has something to say: what it is for, or that it is spare or a key.",
  ["connector", "pin"],
  {
    connector: ref("connectors", "Connector."),
    pin: int("Cavity number.", { min: 1, max: 200 }),
    label: maybeText("What it carries."),
    use: choiceOr("live", ["live", "spare", "key"], "A key cavity is blocked; a spare one may stay empty."),
    class: maybeText("Net class that it is meant for; blank: any."),
    max_a: maybeNum("Most current that it can deliver or take.", { min: 0, max: 500 }),
  },
);

export const terminals = table(
  "terminals",
  "wiring",
  "A single terminal of a device type: a tab, lug, stud or screw.",
  ["device_type", "terminal"],
  {
    device_type: ref("device_types", "Device type."),
    terminal: id("Name, as in `item:terminal`."),
    ...labels(),
    family: ref("connector_families", "How a wire ends on it."),
    x_mm: numOr(0, "Place in the device's frame.", { min: -2000, max: 2000 }),
    y_mm: numOr(0, "Place in the device's frame.", { min: -2000, max: 2000 }),
  },
);

export const nets = table("nets", "wiring", "What is electrically one.", ["id"], {
  id: id("Net."),
  ...labels(),
  class: choice(NET_CLASSES, "Class; decides what may lie beside it."),
  supply: maybeRef("supplies", "Supply that feeds it or that it returns to."),
  volts: maybeNum("Nominal voltage to the supply's return.", { min: -1000, max: 1000 }),
  amps: maybeNum("Largest steady current that the designer expects.", { min: 0, max: 500 }),
  shape: choiceOr("auto", ["chain", "star", "splice", "auto"], "How its ends are joined in a harness."),
  source: maybePoint("The point that a chain starts from; blank: found from the elements."),
  max_drop_pct: maybeNum("Largest voltage drop allowed, in percent of nominal.", { min: 0, max: 100 }),
  wire_type: maybeRef("wire_types", "Wire; blank: the least stocked one that both ends take."),
  sized: choiceOr(
    "wire",
    ["wire", "net"],
    "Without a wire given: each wire as thick as it must be, or all alike.",
  ),
  colour: maybeColour("Colour that the designer wants; blank: decided by the line."),
});

export const ends = table(
  "ends",
  "wiring",
  "This point belongs to this net, in this harness.",
  ["point", "harness"],
  {
    point: point("Point."),
    net: ref("nets", "Net."),
    harness: ref("harnesses", "Harness whose wire lands on it."),
    ...applies(),
  },
);

export const wire_types = table("wire_types", "wiring", "A kind of wire that the shop stocks.", ["id"], {
  id: id("Wire type."),
  ...labels(),
  area_mm2: num("Conductor area.", { min: 0.01, max: 100 }),
  awg: maybeInt("Gauge number if it is sold by gauge.", { min: 0, max: 40 }),
  strands: int("Number of strands.", { min: 1, max: 2000 }),
  strand_mm: num("Diameter of one strand.", { min: 0.02, max: 10 }),
  od_mm: num("Diameter over the insulation.", { min: 0.2, max: 50 }),
  temperature_c: num("Insulation temperature limit.", { min: 40, max: 300 }),
  insulation: choiceOr(
    "pvc",
    ["pvc", "xlpe", "rubber"],
    "Insulation; decides how hot a short circuit may make it.",
  ),
  volts: num("Insulation voltage limit.", { min: 10, max: 10000 }),
  colours: colours("Stocked colours, base then stripe."),
  part: maybeRef("parts", "Part number of the reel; the colour is added."),
});

export const cables = table("cables", "wiring", "Cores of one harness that keep together.", ["id"], {
  id: id("Cable."),
  ...labels(),
  harness: ref("harnesses", "Harness."),
  kind: choice(["twisted", "shielded", "ribbon", "cord"], "Twisted pair, shielded, ribbon, mains cord."),
  from: item("Item that it comes from."),
  to: maybeItem("Item that it goes to; blank: wherever its cores lead."),
  od_mm: num("Overall diameter.", { min: 0.5, max: 50 }),
  twists_per_m: maybeNum("Twists a metre, of a twisted pair.", { min: 0, max: 200 }),
  part: maybeRef("parts", "Bought cable; blank: made from its cores."),
});

export const cable_cores = table("cable_cores", "wiring", "One core of a cable.", ["cable", "core"], {
  cable: ref("cables", "Cable."),
  core: int("Core number.", { min: 1, max: 100 }),
  net: ref("nets", "Net that it carries."),
  colour: maybeColour("Colour of the core as bought; blank: decided by the line."),
});

export const harnesses = table(
  "harnesses",
  "wiring",
  "A harness that is built by itself on a pinboard.",
  ["id"],
  {
    id: id("Harness."),
    ...labels(),
    number: int("Short number, printed on sheets and wire labels.", { min: 1, max: 999 }),
    board_width_mm: numOr(2400, "Widest pinboard that the bench takes.", { min: 200, max: 6000 }),
    board_height_mm: numOr(900, "Highest pinboard that the bench takes.", { min: 200, max: 3000 }),
    service_loop_mm: maybeNum("Loop at each board connector; blank: the shop's.", { min: 0, max: 1000 }),
    ...applies(),
  },
);
