import {
  applies,
  choice,
  choiceOr,
  flag,
  id,
  int,
  intOr,
  items,
  labels,
  maybeItem,
  maybeNum,
  maybePoint,
  maybeRef,
  maybeText,
  names,
  num,
  numOr,
  ref,
  refs,
  text,
} from "../column.ts";
import { table } from "../table.ts";
import { through } from "./items.ts";
import { SIDES } from "./places.ts";

export const fastener_types = table(
  "fastener_types",
  "fastening",
  "A kind of screw, nut, post, stand-off or saddle.",
  ["id"],
  {
    id: id("Fastener type."),
    ...labels(),
    kind: choice(
      [
        "wood-screw",
        "machine-screw",
        "nut",
        "t-nut",
        "washer",
        "post",
        "standoff",
        "nail",
        "saddle",
        "other",
      ],
      "What it is.",
    ),
    thread: maybeText("Thread or wood screw size."),
    diameter_mm: num("Outer diameter of the thread or shank.", { min: 0.3, max: 50 }),
    length_mm: num("Length under the head.", { min: 0, max: 500 }),
    head: maybeText("Head shape in words."),
    head_diameter_mm: maybeNum("Diameter of the head.", { min: 0.5, max: 100 }),
    head_height_mm: maybeNum("Height of the head; 0 when countersunk.", { min: 0, max: 100 }),
    drive: maybeText("Drive and size, as marked on the bit."),
    pilot_mm: maybeNum("Pilot or clearance hole.", { min: 0.3, max: 50 }),
    bites: choiceOr(
      "usual",
      ["usual", "wood", "thread"],
      "What its thread holds in; usual: wood for wood screws, posts, stand-offs, nails and saddles, a thread for all others.",
    ),
    threadlocker: flag("Threadlocker on it; never in wood."),
    clutch: maybeNum("Clutch setting of the screwdriver.", { min: 0, max: 50 }),
    torque_nm: maybeNum("Tightening torque.", { min: 0, max: 500 }),
    colour: maybeText("Finish."),
    part: maybeRef("parts", "Part."),
  },
);

export const fasteners = table("fasteners", "fastening", "A fastener placed by itself.", ["id"], {
  id: id("Fastener."),
  type: ref("fastener_types", "Type."),
  panel: ref("panels", "Panel."),
  side: choice(SIDES, "Side that it is driven from."),
  x_mm: num("Place.", { min: -10000, max: 10000 }),
  y_mm: num("Place.", { min: -10000, max: 10000 }),
  holds: maybeItem("Item that it holds; blank: the panel itself or a bought part."),
  flange_mm: numOr(0, "Thickness of what it passes through before the panel.", { min: 0, max: 200 }),
  ...through(),
  moments: maybeText(
    "Moments of driving it, separated by one space: start align tighten recheck; blank: tighten.",
  ),
  purpose: maybeText("What it is for, in words."),
  ...applies(),
});

export const step_rules = table(
  "step_rules",
  "fastening",
  "The designer's own rule on the order of assembly, beside what geometry and wiring tell.",
  ["id"],
  {
    id: id("Rule."),
    first_item: maybeItem("Item that is mounted before; exactly one of these three is given."),
    first_harness: maybeRef("harnesses", "Harness that is laid and connected before."),
    first_step: maybeRef("steps", "Step that is done before."),
    then_item: maybeItem("Item that is mounted after it; exactly one of these three is given."),
    then_harness: maybeRef("harnesses", "Harness that is laid and connected after it."),
    then_step: maybeRef("steps", "Step that is done after it."),
    reason: maybeText("Why."),
  },
);

export const steps = table("steps", "fastening", "A step of work that the designer adds or fixes.", ["id"], {
  id: id("Step."),
  ...labels(),
  station: maybeRef("stations", "Station; blank: found by balancing."),
  after: refs("steps", "Steps that must be done before."),
  items: items("Items that it mounts or works on."),
  panel: maybeRef("panels", "Panel that lies before the builder."),
  side: choiceOr("under", SIDES, "Side that is up."),
  minutes: maybeNum("Time; blank: found from its motions.", { min: 0, max: 10000 }),
  skill: maybeText("Skill that it needs."),
  caution: maybeText("What to beware of."),
  caution_zh: maybeText("The same in Simplified Chinese."),
});

export const stations = table("stations", "fastening", "A bench where steps are done.", ["id"], {
  id: id("Station."),
  ...labels(),
  people: intOr(1, "People who work there together.", { min: 1, max: 20 }),
  skills: names("Skills that are there."),
  tools: maybeText("Tools that stay there."),
});

export const placements = table(
  "placements",
  "boards",
  "A part on a board type.",
  ["board_type", "reference"],
  {
    board_type: ref("board_types", "Board type."),
    reference: text("Reference, as printed on the board."),
    part: ref("parts", "Part."),
    x_mm: num("Place of its centre in the board's frame.", { min: -10, max: 1000 }),
    y_mm: num("Place of its centre in the board's frame.", { min: -10, max: 1000 }),
    rotation_deg: numOr(0, "Rotation.", { min: -360, max: 360 }),
    width_mm: num("Extent in its own x.", { min: 0.2, max: 300 }),
    depth_mm: num("Extent in its own y.", { min: 0.2, max: 300 }),
    height_mm: num("Height above the board.", { min: 0, max: 300 }),
    joints: int("Solder joints.", { min: 0, max: 500 }),
    polarity: maybeText(
      "What marks the right way round, at the left of the part's own frame; a mark that is turned `to the edge` lies at the side nearest to the edge of the board; blank: either way.",
    ),
    after_wash: flag("Goes in after bath and wash."),
    masks: intOr(0, "Holes or contacts of it that are masked before a solder bath.", { min: 0, max: 500 }),
    hidden: flag("Its joints are hidden below parts: after a bath they are mended by hand from the side."),
  },
);

export const tests = table("tests", "boards", "A test of a board type, harness or whole machine.", ["id"], {
  id: id("Test."),
  ...labels(),
  scope: choice(["board", "harness", "mechanism", "machine"], "What is tested."),
  board_type: maybeRef("board_types", "Board type, for the scope `board`."),
  harness: maybeRef("harnesses", "Harness, for the scope `harness`."),
  mechanism_type: maybeRef("mechanism_types", "Mechanism type, for the scope `mechanism`."),
  order: int("Order; least risk first.", { min: 1, max: 10000 }),
  kind: choice(["visual", "yes-no", "measure", "sequence"], "How it is judged."),
  purpose: choice(
    [
      "bond",
      "insulation",
      "polarity",
      "interlock",
      "supply",
      "logic",
      "switch",
      "lamp",
      "coil",
      "motor",
      "ball",
      "burn-in",
      "other",
    ],
    "What the test is about; the first four can never be overridden.",
  ),
  from: maybePoint("Measured from this point, in a machine or harness test."),
  to: maybePoint("Measured to this point."),
  unit: maybeText("Unit of the reading."),
  nominal: maybeNum("Value expected.", { min: -1e9, max: 1e9 }),
  min: maybeNum("Lower limit, from the design.", { min: -1e9, max: 1e9 }),
  max: maybeNum("Upper limit, from the design.", { min: -1e9, max: 1e9 }),
  do: maybeText("What to do, in English."),
  do_zh: maybeText("What to do, in Simplified Chinese."),
  caution: maybeText("What to beware of."),
  caution_zh: maybeText("The same in Simplified Chinese."),
  ...applies(),
});

export const parts = table("parts", "parts", "Anything that is bought or made.", ["id"], {
  id: id("Part."),
  ...labels(),
  kind: choice(
    [
      "electronic",
      "connector",
      "contact",
      "wire",
      "cable",
      "screw",
      "hardware",
      "sheet",
      "turned",
      "laser-cut",
      "moulded",
      "wood",
      "mechanism",
      "bought-in",
      "board",
      "consumable",
    ],
    "What it is.",
  ),
  source: choiceOr("buy", ["buy", "make", "have-made"], "How it comes."),
  unit: choiceOr("each", ["each", "m", "m2", "kg", "l"], "What one of it is."),
  value: maybeText("Electrical value, or size and material."),
  order_number: maybeText("Ordering number in the service book."),
  mass_g: maybeNum("Mass of one.", { min: 0, max: 1e6 }),
  wear: flag("Wears; a spare is worth keeping."),
  revision: maybeText("Revision that is made now; drawings and samples belong to one."),
  material: maybeText("Material that it is made of, as a shop is told."),
  thickness_mm: maybeNum("Thickness of its material.", { min: 0.01, max: 500 }),
  finish: maybeText("Finish, as a shop is told."),
  scrap_pct: maybeNum("Share that is spoilt when it is fitted or made; blank: that of the shop.", {
    min: 0,
    max: 90,
  }),
  fails_per_year: maybeNum(
    "Failures of one in one machine and year in the field; blank: none are expected.",
    {
      min: 0,
      max: 100,
    },
  ),
});

export const drawings = table(
  "drawings",
  "parts",
  "A file that a part is made from: a drawing, an outline or a solid model. The file lies in the folder `drawings`.",
  ["part", "revision", "file"],
  {
    part: ref("parts", "Part."),
    revision: text("Revision of the part that the file shows."),
    file: text("File name: letters, digits, dots and hyphens, ending in .pdf, .dxf, .svg, .step or .stp."),
    kind: choice(["drawing", "outline", "model"], "What it is."),
    sha256: maybeText("Hash of the file's bytes, in hexadecimal; blank: not yet known."),
    remark: maybeText("What it shows."),
  },
);

export const dimensions = table(
  "dimensions",
  "parts",
  "A dimension of a part that the first article is measured for.",
  ["part", "mark"],
  {
    part: ref("parts", "Part."),
    mark: text("Number in the balloon on the drawing."),
    ...labels(),
    nominal: maybeNum("Nominal value; blank: it is only looked at.", { min: -1e6, max: 1e6 }),
    minus: numOr(0, "How far below nominal it may be.", { min: 0, max: 1e6 }),
    plus: numOr(0, "How far above nominal it may be.", { min: 0, max: 1e6 }),
    unit: maybeText("Unit; blank: mm."),
    how: maybeText("What it is measured with."),
    how_zh: maybeText("The same in Simplified Chinese."),
  },
);

export const tooling = table("tooling", "parts", "A tool, mould or jig that a part needs.", ["id"], {
  id: id("Tooling."),
  ...labels(),
  part: ref("parts", "Part that it makes."),
  cost: maybeNum("Cost of the tool.", { min: 0, max: 1e8 }),
  life: maybeNum("Parts that it makes before it is worn; blank: no limit.", { min: 1, max: 1e9 }),
  lead_days: maybeNum("Days until it is there.", { min: 0, max: 1000 }),
  replaces: maybeText("Way of making that it replaces, in words."),
});

export const bom = table(
  "bom",
  "parts",
  "What geometry and wiring cannot tell: what a part, or the machine, also contains.",
  ["parent", "part"],
  {
    parent: maybeRef("parts", "Part that contains it; blank: the machine."),
    part: ref("parts", "Part that is contained."),
    quantity: num("How many.", { min: 0, max: 1e6 }),
    remark: maybeText("Why."),
    travels: choiceOr(
      "in",
      ["in", "loose", "packing"],
      "How it goes to the owner, for a row of the machine: in the machine, loose beside it in the crate, or as packing.",
    ),
    ...applies(),
  },
);

export const options = table("options", "options", "A variant that a machine can be built with.", ["id"], {
  id: id("Option."),
  ...labels(),
  kind: maybeText("Options of one kind exclude each other: `mains`, `language`."),
  usual: choiceOr("no", ["yes", "no"], "Chosen when nothing is said."),
});

export const choices = table(
  "choices",
  "choices",
  "Where a person decides what the line would decide otherwise, or a result that is kept.",
  ["kind", "subject"],
  {
    kind: choice(
      [
        "colour",
        "wire-type",
        "chain",
        "trunk",
        "attach",
        "splice-place",
        "wire-number",
        "peg",
        "key",
        "spare",
        "matrix",
        "step",
        "time",
        "symbol",
        "station",
        "accept",
      ],
      "What is decided.",
    ),
    subject: text("What it is decided for: a wire, net, harness, housing, point or finding."),
    value: maybeText("The decision."),
    held: choiceOr("pinned", ["pinned", "settled"], "Pinned by a person, or kept from an earlier result."),
    by: maybeText("Who."),
    reason: maybeText("Why."),
    basis: maybeText("The numbers that it was decided on."),
  },
);

export const renames = table(
  "renames",
  "choices",
  "Old names that still lead to the new one.",
  ["table", "old"],
  {
    table: text("Table."),
    old: text("Old id."),
    new: text("New id."),
  },
);
