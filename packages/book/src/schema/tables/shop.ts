import {
  choice,
  choiceOr,
  colours,
  flag,
  id,
  int,
  intOr,
  labels,
  maybeInt,
  maybeNum,
  maybeRef,
  maybeText,
  num,
  numOr,
  ref,
  refs,
  text,
} from "../column.ts";
import { shopTable } from "../table.ts";

export const shop_settings = shopTable(
  "shop_settings",
  "A number that the shop decides once: times, steps, allowances.",
  ["id"],
  {
    id: id("Setting; `docs/book.md` lists those that are known."),
    value: num("Value, in the unit that its name ends with.", { min: -1e9, max: 1e9 }),
    remark: maybeText("Where the number comes from."),
  },
);

export const suppliers = shopTable("suppliers", "Who sells.", ["id"], {
  id: id("Supplier."),
  ...labels(),
  currency: text("Currency of its prices, as an ISO 4217 code."),
  lead_days: numOr(0, "Usual lead time in days of the calendar.", { min: 0, max: 1000 }),
  order_cost: maybeNum(
    "Cost of placing and receiving one order, in the shop's currency; blank: the shop's.",
    {
      min: 0,
      max: 1e6,
    },
  ),
  shipping: numOr(0, "Carriage of one order, in its currency.", { min: 0, max: 1e6 }),
  least_order: numOr(0, "Least value of an order, in its currency.", { min: 0, max: 1e7 }),
  payment_days: numOr(30, "Days from delivery to payment; negative: before delivery.", {
    min: -365,
    max: 365,
  }),
  deposit_pct: numOr(0, "Share that is paid with the order.", { min: 0, max: 100 }),
  contact: maybeText("Whom to write to, and where."),
});

export const currencies = shopTable("currencies", "Money that the shop pays in.", ["id"], {
  id: text("ISO 4217 code, in capitals."),
  own: choiceOr("no", ["yes", "no"], "The currency that the shop counts in; exactly one."),
  rate: numOr(1, "What one of it is worth in the shop's own currency.", { min: 1e-6, max: 1e6 }),
});

export const prices = shopTable(
  "prices",
  "What a part costs from a quantity on.",
  ["part", "supplier", "from_quantity"],
  {
    part: text("Part id; the part itself is in the book."),
    supplier: ref("suppliers", "Supplier."),
    from_quantity: num("Quantity from which the price holds.", { min: 0, max: 1e9 }),
    price: num("Price of one unit of the part.", { min: 0, max: 1e9 }),
    pack: numOr(1, "Sold in packs of.", { min: 0, max: 1e6 }),
    lead_days: maybeNum("Lead time; blank: the supplier's.", { min: 0, max: 1000 }),
    order_number: maybeText("The supplier's number for it."),
  },
);

export const ways = shopTable(
  "ways",
  "A way of getting a part: make it, have it made, or buy it.",
  ["part", "way"],
  {
    part: text("Part id; the part itself is in the book."),
    way: text("Name of the way: `turned`, `moulded`."),
    ...labels(),
    kind: choice(["make", "have-made", "buy"], "What is done."),
    supplier: maybeRef("suppliers", "Who makes or sells it; its price is added to the unit cost."),
    tooling: maybeText("Tooling of the book that it needs; its cost is paid once in the tool's life."),
    unit_cost: numOr(0, "Material and outside work for one, in the shop's currency.", { min: 0, max: 1e7 }),
    minutes: numOr(0, "Own work for one.", { min: 0, max: 1e5 }),
    setup_cost: numOr(0, "Cost of each lot, in the shop's currency.", { min: 0, max: 1e7 }),
    setup_minutes: numOr(0, "Own work for each lot.", { min: 0, max: 1e5 }),
    lead_days: maybeNum("Days until a lot is there, tooling apart.", { min: 0, max: 1000 }),
    chosen: choiceOr(
      "no",
      ["yes", "no"],
      "Somebody has decided for it; else the cheapest at the run's quantity.",
    ),
  },
);

export const stock_sheets = shopTable("stock_sheets", "Sheet goods as the shop buys them.", ["id"], {
  id: id("Stock sheet."),
  part: text("Part id of the sheet goods."),
  width_mm: num("Extent across the grain.", { min: 1, max: 10000 }),
  length_mm: num("Extent along the grain.", { min: 1, max: 10000 }),
  thickness_mm: num("Nominal thickness.", { min: 0.2, max: 100 }),
  measured_mm: maybeNum("Thickness measured on the stock at hand.", { min: 0.2, max: 100 }),
  trim_mm: numOr(0, "Trimmed off each edge.", { min: 0, max: 200 }),
  count: maybeInt("How many are there; blank: bought as wanted.", { min: 0, max: 1e5 }),
  offcut: flag("Left over from an earlier sheet: it is used before a new one is bought."),
});

export const reels = shopTable("reels", "Wire on the shelf.", ["id"], {
  id: id("Reel."),
  wire_type: text("Wire type id; the type itself is in the book."),
  colours: colours("Colours on the shelf, one reel each."),
  length_m: num("Length of a full reel.", { min: 0.1, max: 1e5 }),
});

export const holders = shopTable(
  "holders",
  "Ties, sleeves and clips in stock, by the bundle that they take.",
  ["id"],
  {
    id: id("Holder."),
    ...labels(),
    kind: choice(["tie", "sleeve", "saddle", "clip"], "What it is."),
    min_diameter_mm: num("Thinnest bundle.", { min: 0, max: 200 }),
    max_diameter_mm: num("Thickest bundle.", { min: 0.1, max: 200 }),
    part: maybeText("Part id."),
  },
);

export const benches = shopTable("benches", "Where work is done.", ["id"], {
  id: id("Bench."),
  ...labels(),
  site: maybeRef("sites", "Site."),
  people: intOr(1, "People at it.", { min: 0, max: 100 }),
  kind: choiceOr(
    "assembly",
    ["assembly", "harness", "board", "panel", "paint", "test", "pack"],
    "What it is for.",
  ),
  hours_day: numOr(8, "Hours worked on a working day.", { min: 0, max: 24 }),
  rate: maybeNum("What an hour of one person costs, in the shop's currency; blank: the shop's.", {
    min: 0,
    max: 1e5,
  }),
});

export const sites = shopTable("sites", "A workshop building.", ["id"], {
  id: id("Site."),
  ...labels(),
});

export const calendars = shopTable("calendars", "Days on which nobody works.", ["site", "day"], {
  site: ref("sites", "Site."),
  day: text("Date as year-month-day."),
  hours: numOr(0, "Hours worked all the same.", { min: 0, max: 24 }),
});

export const pull_forces = shopTable(
  "pull_forces",
  "Least pull-off force of a crimp, by conductor.",
  ["awg"],
  {
    awg: int("Gauge.", { min: 0, max: 40 }),
    newton: num("Force.", { min: 0.1, max: 10000 }),
    source: maybeText("Where the value comes from."),
  },
);

export const drivers = shopTable(
  "drivers",
  "A tool that drives or holds a fastener, with the room that it and the hand need.",
  ["id"],
  {
    id: id("Tool."),
    ...labels(),
    kind: choice(["driver", "socket", "spanner"], "Turned from the end, or from the side."),
    fits: text("Drive and size that it fits, as in `drive` of the fastener types."),
    tip_diameter_mm: num("Diameter of bit or socket; across the jaws of a spanner.", { min: 0.5, max: 200 }),
    tip_length_mm: num("Length of bit or socket beyond the holder; thickness of a spanner.", {
      min: 0.5,
      max: 500,
    }),
    grip_diameter_mm: num("Diameter of tool and hand behind it; width of a spanner's handle.", {
      min: 1,
      max: 300,
    }),
    grip_length_mm: num("Length of tool and hand behind it; length of a spanner.", { min: 1, max: 1000 }),
    swing_deg: numOr(360, "Angle that a spanner must swing through.", { min: 10, max: 360 }),
  },
);

export const stages = shopTable(
  "stages",
  "A stage that every machine of a run goes through, in the order of the shop.",
  ["id"],
  {
    id: id("Stage."),
    ...labels(),
    kind: choice(
      ["panels", "paint", "boards", "mechanisms", "harness", "assembly", "test", "pack", "transport"],
      "What is done.",
    ),
    after: refs("stages", "Stages that a machine's things have to be through before."),
    benches: refs("benches", "Benches that it has; blank: all of its kind."),
    minutes: maybeNum("Work on one machine; blank: found from the book.", { min: 0, max: 1e5 }),
    batch: intOr(1, "Machines that go on together.", { min: 1, max: 1000 }),
    wait_hours: numOr(0, "Hours that a batch waits afterwards: drying, transport.", { min: 0, max: 2000 }),
    most_per_day: maybeNum("Most machines in a day, whatever the people; blank: no limit.", {
      min: 0.01,
      max: 1e4,
    }),
  },
);

export const coats = shopTable("coats", "A coat that a cabinet gets, in order.", ["id"], {
  id: id("Coat."),
  ...labels(),
  order: int("Order.", { min: 1, max: 100 }),
  minutes: num("Work on one cabinet: sanding before, spraying.", { min: 0, max: 1000 }),
  dry_hours: num("Hours on the rack until the next coat, or until it is handled.", { min: 0, max: 1000 }),
});

export const runs = shopTable("runs", "A batch of machines that is built together.", ["id"], {
  id: id("Run."),
  ...labels(),
  book: text("Id of the machine that is built, as in its `machine.json`."),
  machines: int("How many.", { min: 1, max: 1e5 }),
  ship: text("Day on which the last one leaves, as year-month-day."),
  begin: maybeText("First day of work or orders, as year-month-day; blank: as late as the ship day allows."),
  state: choiceOr(
    "planned",
    ["planned", "frozen", "building", "done"],
    "From `frozen` on its prices are those of `run_prices`.",
  ),
  confidence_pct: numOr(95, "Confidence that the spares last.", { min: 50, max: 99.99 }),
  spare_years: numOr(5, "Years in the field that spares are bought for.", { min: 0, max: 50 }),
  remark: maybeText("What to remember."),
});

export const run_mix = shopTable(
  "run_mix",
  "How many machines of a run are built with which options; the rest have the usual ones.",
  ["run", "options"],
  {
    run: ref("runs", "Run."),
    options: text(
      "Options of the book, separated by one space; kinds that are not named have their usual one.",
    ),
    machines: int("How many.", { min: 0, max: 1e5 }),
  },
);

export const run_prices = shopTable(
  "run_prices",
  "Prices as they were when the run was frozen.",
  ["run", "part", "supplier", "from_quantity"],
  {
    run: ref("runs", "Run."),
    part: text("Part id; the part itself is in the book."),
    supplier: ref("suppliers", "Supplier."),
    from_quantity: num("Quantity from which the price holds.", { min: 0, max: 1e9 }),
    price: num("Price of one unit of the part, in the supplier's currency.", { min: 0, max: 1e9 }),
    rate: numOr(1, "What one of that currency was worth in the shop's own.", { min: 1e-6, max: 1e6 }),
    pack: numOr(1, "Sold in packs of.", { min: 0, max: 1e6 }),
    lead_days: maybeNum("Lead time; blank: the supplier's.", { min: 0, max: 1000 }),
  },
);

export const orders = shopTable("orders", "An order that was placed.", ["id"], {
  id: id("Order."),
  supplier: ref("suppliers", "Supplier."),
  day: text("Day of the order, as year-month-day."),
  due: text("Day on which it comes, as year-month-day."),
  run: maybeRef("runs", "Run that it is for."),
  state: choiceOr("draft", ["draft", "sent", "confirmed", "received", "cancelled"], "How far it is."),
  remark: maybeText("What was agreed."),
});

export const order_lines = shopTable("order_lines", "What an order asks for.", ["order", "part"], {
  order: ref("orders", "Order."),
  part: text("Part id; the part itself is in the book."),
  revision: maybeText("Revision of the part."),
  quantity: num("How many.", { min: 0, max: 1e9 }),
  price: maybeNum("Price of one, in the supplier's currency.", { min: 0, max: 1e9 }),
});

export const movements = shopTable(
  "movements",
  "What came into the stock or left it. Nothing is changed later: a mistake is put right by a count.",
  ["id"],
  {
    id: id("Movement."),
    day: text("Day, as year-month-day."),
    part: text("Part id; the part itself is in the book."),
    revision: maybeText("Revision of the part."),
    kind: choice(
      ["received", "kitted", "used", "scrapped", "counted"],
      "Received adds; kitted, used and scrapped take away; counted says what is there.",
    ),
    quantity: num("How many, in the part's unit.", { min: 0, max: 1e9 }),
    run: maybeRef("runs", "Run that it was for."),
    stage: maybeRef("stages", "Stage that took it."),
    order: maybeRef("orders", "Order that it came with."),
    site: maybeRef("sites", "Site."),
    reason: maybeText("Why; needed when it leaves less than nothing."),
    by: maybeText("Who."),
  },
);

export const samples = shopTable("samples", "A first article of a part, and what became of it.", ["id"], {
  id: id("Sample."),
  part: text("Part id; the part itself is in the book."),
  revision: text("Revision of the part that it was made to."),
  made: maybeText("How it was made: `laser-cut plastic`, `final metal`."),
  supplier: maybeRef("suppliers", "Who made it; blank: own shop."),
  asked: maybeText("Day on which it was asked for, as year-month-day."),
  received: maybeText("Day on which it came, as year-month-day."),
  state: choiceOr("asked", ["asked", "received", "approved", "sent-back"], "How far it is."),
  decided: maybeText("Day of the decision, as year-month-day."),
  by: maybeText("Who decided."),
  remark: maybeText("What was seen and agreed."),
});

export const sample_values = shopTable(
  "sample_values",
  "What was measured on a sample.",
  ["sample", "mark"],
  {
    sample: ref("samples", "Sample."),
    mark: text("Number in the balloon on the drawing."),
    value: maybeNum("Reading; blank: it was only looked at.", { min: -1e6, max: 1e6 }),
    good: choiceOr("unsaid", ["yes", "no", "unsaid"], "For what is only looked at: whether it is as wanted."),
    by: maybeText("Who measured."),
  },
);
