import type { Row, Table } from "../table.ts";
import * as activityTables from "./activity.ts";
import * as buildTables from "./build.ts";
import * as insteadTables from "./instead.ts";
import * as itemTables from "./items.ts";
import * as placeTables from "./places.ts";
import * as shopTables from "./shop.ts";
import * as testingTables from "./testing.ts";
import * as wiringTables from "./wiring.ts";

const {
  panels,
  cutouts,
  panel_sizes,
  fits,
  fit_terms,
  poses,
  pose_places,
  waypoints,
  lanes,
  crossings,
  bonds,
} = placeTables;
const {
  device_types,
  devices,
  board_types,
  boards,
  mechanism_types,
  mechanism_devices,
  mechanism_numbers,
  mechanism_fasteners,
  mechanism_steps,
  bodies,
  mechanisms,
  inlines,
} = itemTables;
const {
  elements,
  windings,
  connector_families,
  connectors,
  pins,
  terminals,
  nets,
  ends,
  wire_types,
  cables,
  cable_cores,
  harnesses,
} = wiringTables;
const { activity, groups, fuses, supplies } = activityTables;
const {
  fastener_types,
  fasteners,
  step_rules,
  steps,
  stations,
  placements,
  tests,
  parts,
  drawings,
  dimensions,
  tooling,
  bom,
  options,
  choices,
  renames,
} = buildTables;
const {
  shop_settings,
  suppliers,
  prices,
  stock_sheets,
  reels,
  holders,
  benches,
  sites,
  calendars,
  pull_forces,
  drivers,
  currencies,
  ways,
  stages,
  coats,
  runs,
  run_mix,
  run_prices,
  orders,
  order_lines,
  movements,
  samples,
  sample_values,
} = shopTables;
const { alternates } = insteadTables;
const { test_steps, instruments, instrument_measures } = testingTables;

/** Every table of the book, in the order of the documentation, the workbook and the ZIP. */
export const BOOK_TABLES = {
  panels,
  cutouts,
  panel_sizes,
  fits,
  fit_terms,
  poses,
  pose_places,
  waypoints,
  lanes,
  crossings,
  bonds,
  device_types,
  devices,
  board_types,
  boards,
  mechanism_types,
  mechanism_devices,
  mechanism_numbers,
  mechanism_fasteners,
  mechanism_steps,
  bodies,
  mechanisms,
  inlines,
  elements,
  windings,
  connector_families,
  connectors,
  pins,
  terminals,
  nets,
  ends,
  wire_types,
  cables,
  cable_cores,
  harnesses,
  activity,
  groups,
  fuses,
  supplies,
  fastener_types,
  fasteners,
  step_rules,
  steps,
  stations,
  placements,
  tests,
  test_steps,
  parts,
  drawings,
  dimensions,
  tooling,
  bom,
  alternates,
  options,
  choices,
  renames,
} as const;

/** Tables that the shop's machines share. They live in a `shop` folder of their own. */
export const SHOP_TABLES = {
  shop_settings,
  suppliers,
  prices,
  stock_sheets,
  reels,
  holders,
  benches,
  sites,
  calendars,
  pull_forces,
  drivers,
  currencies,
  ways,
  stages,
  coats,
  runs,
  run_mix,
  run_prices,
  orders,
  order_lines,
  movements,
  samples,
  sample_values,
  instruments,
  instrument_measures,
} as const;

export type BookTableName = keyof typeof BOOK_TABLES;
export type ShopTableName = keyof typeof SHOP_TABLES;

export type BookRow<N extends BookTableName> = Row<(typeof BOOK_TABLES)[N]>;
export type ShopRow<N extends ShopTableName> = Row<(typeof SHOP_TABLES)[N]>;

export type BookTables = { readonly [N in BookTableName]: readonly BookRow<N>[] };
export type ShopTables = { readonly [N in ShopTableName]: readonly ShopRow<N>[] };

/** Any table, for code that walks all of them. */
export const ALL_TABLES: Readonly<Record<string, Table>> = { ...BOOK_TABLES, ...SHOP_TABLES };
