import {
  choice,
  choiceOr,
  colours,
  id,
  int,
  intOr,
  labels,
  maybeNum,
  maybeRef,
  maybeText,
  num,
  numOr,
  ref,
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
  currency: text("Currency of its prices."),
  lead_days: numOr(0, "Usual lead time.", { min: 0, max: 1000 }),
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
    pack: numOr(1, "Sold in packs of.", { min: 0.001, max: 1e6 }),
    lead_days: maybeNum("Lead time; blank: the supplier's.", { min: 0, max: 1000 }),
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
