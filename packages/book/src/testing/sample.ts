import type { Book, Shop } from "../book.ts";
import { emptyBook, emptyShop } from "../read/empty.ts";
import type { AnyRow } from "../read/raw.ts";
import { shopNumbers } from "../read/shop.ts";
import type { Table } from "../schema/table.ts";
import { BOOK_TABLES, type BookTables, SHOP_TABLES, type ShopTables } from "../schema/tables/index.ts";

/** Rows with every blank cell filled in from the schema. */
function fill(schema: Readonly<Record<string, Table>>, given: Readonly<Record<string, readonly AnyRow[]>>) {
  return Object.fromEntries(
    Object.entries(schema).map(([name, table]) => {
      const blanks = Object.fromEntries(
        Object.entries(table.columns).map(([column, { blank }]) => [column, blank]),
      );
      return [name, (given[name] ?? []).map((row): AnyRow => ({ ...blanks, ...row }))];
    }),
  );
}

const on = { panel: "playfield", side: "under", x_mm: 10, y_mm: 20.5 };

const ROWS: Readonly<Record<string, readonly AnyRow[]>> = {
  panels: [
    {
      id: "playfield",
      label: "Playfield",
      label_zh: "面板",
      purpose: "playfield",
      outline: "playfield.svg",
      width_mm: 500,
      height_mm: 1000,
      thickness_mm: 13,
      grain: "y",
      part: "p.sheet",
      options: ["mains-230"],
    },
    { id: "cabinet", purpose: "cabinet", width_mm: 600, height_mm: 1300, thickness_mm: 18 },
  ],
  cutouts: [
    {
      id: "cut.hole",
      panel: "playfield",
      side: "top",
      purpose: "wire-hole",
      shape: "circle",
      x_mm: 1,
      y_mm: 2,
      width_mm: 20,
      serves: "sw.left",
      takes: "cabinet",
      options: ["mains-230"],
    },
    {
      id: "cut.drawn",
      panel: "playfield",
      side: "top",
      purpose: "mechanism",
      shape: "outline",
      x_mm: 1,
      y_mm: 2,
      outline: "slot.dxf",
      depth_mm: 3,
    },
  ],
  poses: [
    { id: "play", usual: "yes" },
    { id: "lifted", caution: "Prop it first." },
  ],
  pose_places: [{ pose: "play", panel: "playfield", x_mm: 0, y_mm: 0, z_mm: 900, rx_deg: 6.5 }],
  waypoints: [
    { id: "w1", ...on, hold: "saddle", hold_part: "p.saddle", options: ["mains-230"] },
    { id: "w2", ...on, x_mm: 60 },
    { id: "w3", panel: "cabinet", side: "top", x_mm: 5, y_mm: 5 },
  ],
  lanes: [
    {
      id: "lane.1",
      from: "w1",
      to: "w2",
      max_diameter_mm: 20,
      classes: ["coil", "lamp"],
      options: ["mains-230"],
    },
  ],
  crossings: [
    {
      id: "x.1",
      from: "w1",
      to: "w3",
      kind: "hinge",
      length_mm: 200,
      max_diameter_mm: 25,
      classes: ["coil"],
      options: ["mains-230"],
    },
  ],
  bonds: [
    {
      id: "bond.1",
      metal: "Lockdown bar",
      item: "sw.left",
      at: "sw.left:com",
      wire_type: "wt.22",
      ring: "p.ring",
      washer: "p.washer",
      order: 1,
      options: ["mains-230"],
    },
  ],
  device_types: [
    {
      id: "microswitch",
      class: "switch",
      outline: "slot.dxf",
      width_mm: 20,
      depth_mm: 6,
      height_mm: 10,
      part: "p.switch",
    },
    { id: "coil-flat", class: "coil", width_mm: 30, depth_mm: 30, height_mm: 40 },
    { id: "lamp-plug", class: "lamp", width_mm: 8, depth_mm: 8, height_mm: 8 },
  ],
  devices: [
    {
      id: "sw.left",
      label: "Left lane",
      label_zh: "左道",
      type: "microswitch",
      ...on,
      number: 11,
      light_from: "lamp.left",
      options: ["mains-230"],
    },
    { id: "lamp.left", type: "lamp-plug", ...on },
  ],
  panel_sizes: [
    {
      panel: "cabinet",
      direction: "x",
      setting: "floor",
      thickness_of: "playfield",
      times: -2,
      plus_mm: 0.2,
    },
  ],
  fits: [{ id: "fit.play", label: "Play at the sides", min_mm: 1, max_mm: 5 }],
  fit_terms: [
    { fit: "fit.play", term: "a", panel: "cabinet" },
    { fit: "fit.play", term: "b", dimension: "other", times: -1, nominal_mm: 597 },
  ],
  board_types: [
    {
      id: "bt.driver",
      revision: "B",
      outline: "slot.dxf",
      width_mm: 80,
      depth_mm: 60,
      height_mm: 15,
      holes: "4,4 76,4",
      part: "p.pcb",
      stuffed_part: "p.pcb",
    },
  ],
  boards: [
    { id: "brd.driver", type: "bt.driver", ...on, address: 3, terminated: true, options: ["mains-230"] },
  ],
  mechanism_types: [
    { id: "mt.flipper", outline: "slot.dxf", width_mm: 100, depth_mm: 60, height_mm: 70, part: "p.mech" },
  ],
  mechanism_devices: [
    { mechanism_type: "mt.flipper", child: "coil", device_type: "coil-flat", x_mm: 1, y_mm: 2 },
  ],
  mechanism_numbers: [{ item: "flip.left/coil", number: 1 }],
  mechanism_fasteners: [
    {
      mechanism_type: "mt.flipper",
      child: "s1",
      fastener_type: "ws.4x16",
      x_mm: 1,
      y_mm: 2,
      moments: "start tighten",
      washer: "ws.4x16",
      nut: "ws.4x16",
    },
  ],
  mechanism_steps: [
    { mechanism_type: "mt.flipper", order: 1, kind: "adjust", unit: "mm", min: 1, nominal: 2, max: 3 },
  ],
  bodies: [
    { id: "bo.1", mechanism_type: "mt.flipper", width_mm: 20, from_mm: 0, to_mm: 30 },
    { id: "bo.2", device_type: "microswitch", outline: "slot.dxf", from_mm: 0, to_mm: 5 },
  ],
  mechanisms: [{ id: "flip.left", type: "mt.flipper", ...on, options: ["mains-230"] }],
  inlines: [{ id: "inl.pf", connector: "cn.inline", ...on, options: ["mains-230"] }],
  elements: [
    {
      id: "el.contact",
      device_type: "microswitch",
      kind: "contact",
      from: "com",
      to: "no",
      normally: "open",
    },
    { id: "el.driver", board_type: "bt.driver", kind: "driver", from: "j1.1", to: "j1.2", amp: 3 },
    { id: "el.link", mechanism_type: "mt.flipper", kind: "link", from: "coil:a", to: "coil:b" },
    { id: "el.coil", device_type: "coil-flat", kind: "coil", from: "a", to: "b", ohm: 8, mh: 24 },
  ],
  windings: [{ element: "el.coil", turns: 900, wire_mm: 0.4, enamel_mm: 0.45, class: "B", heat_w: 12 }],
  connector_families: [
    {
      id: "fam.25",
      kind: "housing",
      pitch_mm: 2.5,
      rated_a: 3,
      area_min_mm2: 0.1,
      area_max_mm2: 0.5,
      insulation_max_mm: 2,
      strip_mm: 3,
      contact_mohm: 10,
      contact_part: "p.contact",
      mate_contact_part: "p.contact",
      latch: true,
    },
  ],
  connectors: [
    {
      id: "cn.j1",
      board_type: "bt.driver",
      name: "j1",
      family: "fam.25",
      ways: 6,
      housing_part: "p.housing",
      mate_part: "p.header",
      key_part: "p.key",
    },
    { id: "cn.lamp", device_type: "lamp-plug", name: "p1", family: "fam.25", ways: 2 },
    { id: "cn.inline", name: "pf", family: "fam.25", ways: 4 },
  ],
  pins: [{ connector: "cn.j1", pin: 4, label: "key", use: "key", class: "coil" }],
  terminals: [
    { device_type: "microswitch", terminal: "com", family: "fam.25" },
    { device_type: "microswitch", terminal: "no", family: "fam.25" },
    { device_type: "coil-flat", terminal: "a", family: "fam.25" },
    { device_type: "coil-flat", terminal: "b", family: "fam.25" },
  ],
  nets: [
    {
      id: "net.coil",
      class: "coil",
      supply: "sup.48",
      volts: 48,
      amps: 2,
      shape: "star",
      source: "brd.driver:j1.1",
      wire_type: "wt.22",
      colour: "RD",
    },
  ],
  ends: [
    { point: "brd.driver:j1.1", net: "net.coil", harness: "h.pf", options: ["mains-230"] },
    { point: "flip.left/coil:a", net: "net.coil", harness: "h.pf" },
    { point: "inl.pf:a.1", net: "net.coil", harness: "h.pf" },
  ],
  wire_types: [
    {
      id: "wt.22",
      area_mm2: 0.34,
      awg: 22,
      strands: 7,
      strand_mm: 0.25,
      od_mm: 1.6,
      temperature_c: 105,
      volts: 300,
      colours: ["RD", "WHRD", "GNYE"],
      part: "p.wire",
    },
  ],
  cables: [
    {
      id: "cab.1",
      harness: "h.pf",
      kind: "twisted",
      from: "brd.driver",
      to: "flip.left/coil",
      od_mm: 4,
      part: "p.wire",
    },
  ],
  cable_cores: [{ cable: "cab.1", core: 1, net: "net.coil", colour: "BK" }],
  harnesses: [{ id: "h.pf", number: 1, service_loop_mm: 80, options: ["mains-230"] }],
  activity: [{ item: "flip.left/coil", pulse_ms: 40, hold_duty_pct: 12.5 }],
  groups: [{ id: "g.flippers", most_on: 2, items: ["flip.left/coil", "lamp.left"] }],
  fuses: [
    { id: "f1", from: "brd.driver:j1.1", to: "brd.driver:j1.2", rated_a: 3.15, speed: "t", part: "p.fuse" },
  ],
  supplies: [
    {
      id: "sup.48",
      volts: 48,
      positive: "brd.driver:j1.1",
      negative: "brd.driver:j1.2",
      rated_a: 10,
      limit_mode: "hiccup",
    },
  ],
  fastener_types: [{ id: "ws.4x16", kind: "wood-screw", diameter_mm: 4, length_mm: 16, part: "p.screw" }],
  fasteners: [
    {
      id: "s.1",
      type: "ws.4x16",
      ...on,
      holds: "brd.driver",
      washer: "ws.4x16",
      nut: "ws.4x16",
      moments: "tighten",
      options: ["mains-230"],
    },
  ],
  step_rules: [
    { id: "sr.1", first_item: "flip.left", then_step: "st.2", reason: "sample" },
    { id: "sr.2", first_step: "st.1", then_harness: "h.pf" },
    { id: "sr.3", first_harness: "h.pf", then_item: "brd.driver" },
  ],
  steps: [
    { id: "st.1", station: "bench-a", items: ["flip.left"], panel: "playfield" },
    { id: "st.2", after: ["st.1"], minutes: 2.5 },
  ],
  stations: [{ id: "bench-a", skills: ["solder", "fit"] }],
  placements: [
    {
      board_type: "bt.driver",
      reference: "R1",
      part: "p.resistor",
      x_mm: 10,
      y_mm: 10,
      width_mm: 6,
      depth_mm: 3,
      height_mm: 3,
      joints: 2,
    },
  ],
  tests: [
    {
      id: "t.1",
      scope: "board",
      board_type: "bt.driver",
      order: 1,
      kind: "measure",
      purpose: "supply",
      from: "brd.driver:j1.1",
      to: "brd.driver:j1.2",
      nominal: 5,
      min: 4.9,
      max: 5.1,
    },
    {
      id: "t.2",
      scope: "harness",
      harness: "h.pf",
      order: 2,
      kind: "visual",
      purpose: "other",
      options: ["mains-230"],
    },
    {
      id: "t.3",
      scope: "mechanism",
      mechanism_type: "mt.flipper",
      order: 3,
      kind: "yes-no",
      purpose: "coil",
    },
    {
      id: "t.4",
      scope: "board",
      board_type: "bt.driver",
      order: 4,
      kind: "sequence",
      purpose: "logic",
    },
    { id: "t.5", scope: "machine", order: 5, kind: "yes-no", purpose: "bond" },
    { id: "t.6", scope: "machine", order: 6, kind: "yes-no", purpose: "coil" },
  ],
  test_steps: [
    { test: "t.4", no: 1, label: "Under load", unit: "V", nominal: 12, min: 11.4, max: 12.6 },
    { test: "t.4", no: 2, label: "Answers" },
  ],
  parts: [
    ...[
      "sheet",
      "saddle",
      "ring",
      "washer",
      "switch",
      "pcb",
      "mech",
      "contact",
      "housing",
      "header",
      "key",
      "wire",
      "fuse",
      "screw",
      "resistor",
    ].map((name): AnyRow => ({ id: `p.${name}`, label: name, kind: "hardware" })),
  ],
  drawings: [{ part: "p.mech", revision: "A", file: "mech-a.pdf", kind: "drawing" }],
  dimensions: [
    { part: "p.mech", mark: "1", label: "Length", nominal: 40, minus: 0.1, plus: 0.2, how: "calliper" },
    { part: "p.mech", mark: "2", label: "No burrs" },
  ],
  tooling: [{ id: "tool.1", part: "p.mech", cost: 120.5 }],
  bom: [{ parent: "p.mech", part: "p.screw", quantity: 4, travels: "loose", options: ["mains-230"] }],
  alternates: [{ part: "p.screw", instead: "p.washer", remark: "Same thread", options: ["mains-230"] }],
  options: [{ id: "mains-230", kind: "mains", usual: "yes" }],
  choices: [
    {
      kind: "colour",
      subject: "net.coil|h.pf|brd.driver:j1.1|flip.left/coil:a",
      value: "RD",
      held: "settled",
      by: "ann",
    },
  ],
  renames: [{ table: "devices", old: "sw.old", new: "sw.left" }],
};

const SHOP_ROWS: Readonly<Record<string, readonly AnyRow[]>> = {
  shop_settings: [{ id: "tie_min", value: 0.2, remark: "timed" }],
  suppliers: [{ id: "sup-a", currency: "EUR", lead_days: 10 }],
  prices: [{ part: "p.wire", supplier: "sup-a", from_quantity: 1, price: 0.25 }],
  stock_sheets: [
    { id: "ply-18", part: "p.sheet", width_mm: 1220, length_mm: 2440, thickness_mm: 18, measured_mm: 17.6 },
  ],
  reels: [{ id: "reel-22", wire_type: "wt.22", colours: ["RD", "WHRD"], length_m: 100 }],
  holders: [{ id: "tie-s", kind: "tie", min_diameter_mm: 1, max_diameter_mm: 15 }],
  benches: [{ id: "bench-1", site: "main", people: 2 }],
  sites: [{ id: "main", label: "Main shop" }],
  calendars: [{ site: "main", day: "2026-12-25" }],
  drivers: [
    {
      id: "drv.1",
      kind: "driver",
      fits: "cross 2",
      tip_diameter_mm: 7,
      tip_length_mm: 40,
      grip_diameter_mm: 45,
      grip_length_mm: 150,
    },
  ],
  currencies: [
    { id: "EUR", own: "yes" },
    { id: "USD", rate: 0.9 },
  ],
  ways: [{ part: "p.mech", way: "turned", kind: "have-made", supplier: "sup-a", tooling: "tool.1" }],
  stages: [
    { id: "panels", kind: "panels" },
    { id: "assembly", kind: "assembly", after: ["panels"], benches: ["bench-1"] },
  ],
  coats: [{ id: "primer", order: 1, minutes: 12, dry_hours: 4 }],
  runs: [{ id: "run-1", book: "sample", machines: 25, ship: "2027-03-31", begin: "2027-01-04" }],
  run_mix: [{ run: "run-1", options: "mains-230", machines: 25 }],
  run_prices: [{ run: "run-1", part: "p.wire", supplier: "sup-a", from_quantity: 1, price: 0.25 }],
  orders: [
    { id: "o-1", supplier: "sup-a", day: "2027-01-04", due: "2027-01-14", run: "run-1", state: "sent" },
  ],
  order_lines: [{ order: "o-1", part: "p.wire", quantity: 100, price: 0.25 }],
  movements: [
    {
      id: "m-1",
      day: "2027-01-14",
      part: "p.wire",
      kind: "received",
      quantity: 100,
      run: "run-1",
      stage: "assembly",
      order: "o-1",
      site: "main",
    },
  ],
  samples: [
    {
      id: "s-1",
      part: "p.mech",
      revision: "A",
      made: "laser-cut plastic",
      supplier: "sup-a",
      asked: "2026-11-02",
      received: "2026-11-04",
      decided: "2026-11-05",
      state: "approved",
    },
  ],
  sample_values: [
    { sample: "s-1", mark: "1", value: 40.05 },
    { sample: "s-1", mark: "2", good: "yes" },
  ],
  pull_forces: [{ awg: 22, newton: 36, source: "sample" }],
  instruments: [
    {
      id: "meter",
      kind: "scpi",
      station: "bench",
      host: "meter.example",
      port: 5025,
      calibrated_until: "2027-06-30",
    },
    { id: "tester", kind: "continuity", device: "/dev/ttyUSB0", baud: 9600, wait_s: 20 },
  ],
  instrument_measures: [
    { instrument: "meter", measure: "volts-dc", unit: "V", query: "MEAS:VOLT:DC?", min: 0, max: 60 },
    { instrument: "meter", measure: "amps-dc", unit: "mA", query: "MEAS:CURR:DC?", factor: 1000 },
  ],
};

const SVG =
  '<svg xmlns="http://www.w3.org/2000/svg" width="500mm" height="1000mm" viewBox="0 0 500 1000"><path d="M0 0H500V1000H0Z"/></svg>\n';

const DXF = [
  "0",
  "SECTION",
  "2",
  "ENTITIES",
  "0",
  "CIRCLE",
  "8",
  "0",
  "10",
  "0",
  "20",
  "0",
  "40",
  "5",
  "0",
  "ENDSEC",
  "0",
  "EOF",
  "",
].join("\r\n");

/** Texts of the sample's outline files. */
export const SAMPLE_OUTLINES: ReadonlyMap<string, string> = new Map([
  ["playfield.svg", SVG],
  ["slot.dxf", DXF],
]);

/** A small book without a fault that has rows in every table and a value in every column that refers. */
export function sampleBook(): Book {
  return {
    ...emptyBook(),
    // The rows above are checked against the schema by the test of this file's faults.
    tables: fill(BOOK_TABLES, ROWS) as unknown as BookTables,
    outlines: new Map([...SAMPLE_OUTLINES].map(([name, source]) => [name, { rings: [], source }])),
  };
}

/** A shop without a fault that has rows in every table. */
export function sampleShop(): Shop {
  const tables = fill(SHOP_TABLES, SHOP_ROWS) as unknown as ShopTables;
  return { ...emptyShop(), tables, numbers: shopNumbers(tables.shop_settings) };
}
