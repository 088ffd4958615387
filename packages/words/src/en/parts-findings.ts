import type { RuleWords } from "../finding.ts";

/** What is used without a part, as it ends a sentence. */
const UNNAMED: Readonly<Record<string, string>> = {
  "bare-board": "its bare board",
  board: "the board itself, and nothing says what is on it",
  bond: "its ring or washer",
  cable: "the cable",
  contact: "its contact",
  device: "the device",
  fastener: "the fastener",
  fuse: "the fuse",
  holder: "what holds bundles on the lanes",
  housing: "its housing",
  key: "its key plug",
  mechanism: "the mechanism, and nothing says what is in it",
  panel: "what it is cut from",
  placement: "what is placed there",
  sleeve: "the sleeve",
  splice: "the splice",
  tie: "the tie",
  wire: "the wire",
};

/** Wording of the rules of parts. */
export const partsFindings: Readonly<Record<string, RuleWords>> = {
  "bill-circle": {
    title: "Parts contain each other in a circle",
    says: "{0} contains itself, through {parts} part(s): {0}, {rest}.",
    why: "The cost of one machine, and how many of these parts a run needs, cannot be told; both are shown without them.",
    todo: "Take the row out of bom that closes the circle.",
  },
  "long-lead": {
    title: "A part takes long to get",
    says: "{0} takes {lead_days} days however it is got; the shop calls out what takes more than {limit_days}.",
    why: "Nothing that needs it can be built earlier, and a late order moves the ship date.",
    todo: "Order it first, keep some in stock, or find a quicker supplier.",
  },
  "pack-bad": {
    title: "A price or pack cannot be used",
    says: "{0} from {1}: from {from_quantity} on {price} each, in packs of {pack}. A price and a pack are above nothing, and a pack holds whole parts.",
    why: "The cost of one machine and the orders to this supplier are uncertain by this part.",
    todo: "Ask the supplier, and correct the row of prices.",
  },
  "part-no-price": {
    title: "A part that is bought has no price",
    says: "{0} is bought or had made, and no supplier has a usable price for it. It is in {containers} place(s) of the bill.",
    why: "The cost of one machine, of all that contains the part, and of a run is short by it and says so.",
    todo: "Add a price, a way of getting it with its cost, or say that it is made.",
  },
  "part-no-source": {
    title: "Nothing says where a part comes from",
    says: "{0} is made, but it has no contents and no way of making it. It is in {containers} place(s) of the bill.",
    why: "The cost of one machine, of all that contains the part, and of a run is short by it and says so.",
    todo: "Add what it contains to bom, add a way of making it, or say that it is bought.",
  },
  "part-unit": {
    title: "A part is counted in another unit than it is used in",
    says: "{0} is used in {wanted} but counted in {unit}.",
    values: {
      wanted: { m: "metres", each: "pieces" },
      unit: { each: "pieces", m: "metres", m2: "square metres", kg: "kilograms", l: "litres" },
    },
    why: "Its price and its quantity do not belong together: the cost of one machine and every order of it are wrong.",
    todo: "Set the unit of the part, and its prices and packs with it.",
  },
  "part-unnamed": {
    title: "Something is used that has no part",
    says: "{0}: the book names no part for {kind}.",
    values: { kind: UNNAMED },
    why: "Nobody orders it, and the cost of one machine and of a run is short by it and says so.",
    todo: "Name a part for it.",
  },
  "price-currency": {
    title: "There is no rate for a supplier's currency",
    says: "{0} sells {parts} of the parts in {currency}, and the shop has no rate for it.",
    why: "The cost of one machine and the cash of a run are short by these parts and say so.",
    todo: "Add the currency with its rate, and say which one is the shop's own.",
  },
  "price-order": {
    title: "A larger quantity costs more each",
    says: "{0} from {1}: {price} each from {from_quantity} on, but {before} for fewer.",
    why: "It is likely a slip, and the cost of one machine at this quantity is wrong with it.",
    todo: "Ask the supplier, and correct the row of prices.",
  },
  "single-source": {
    title: "Only one supplier sells a part",
    says: "{0} comes from {1} only.",
    why: "When it stops selling, no machine can be built, and none repaired.",
    todo: "Find a second supplier or another part, or keep enough for the machines in the field.",
  },
  "tool-no-cost": {
    title: "Nobody knows what a tool costs",
    says: "{0}, which makes {1}, has no cost.",
    why: "Whether the tool pays cannot be told, and the cost of one machine made with it is short by its share.",
    todo: "Ask for a price and write it into tooling.",
  },
};
