import { itemOf, labelOf, orBlank, spotOf, wayOf } from "./names.ts";
import { harnessesAlong, harnessesOf, harnessesOfType, waysAt } from "./reach.ts";
import { any, kind, plus, type Script } from "./script.ts";
import {
  AMOUNTS,
  ASSEMBLY,
  ELECTRIC,
  harness,
  kinds,
  LENGTHS,
  named,
  reaches,
  whereShown,
} from "./sheet-rules.ts";

/** Supplies, fuses, nets, harnesses, ways of wires, connectors. */
export const ELECTRIC_CHANGES: readonly Script[] = [
  kind({
    name: "another fuse rating",
    table: "fuses",
    count: 3,
    fits: any,
    does: ({ rated_a }) => ({ rated_a: plus(rated_a, rated_a) }),
    says: ({ label, rated_a }, to) => `Fuse, ${label}: Rated current: ${to.rated_a} A (was ${rated_a} A)`,
    sheets: () => reaches(named("supply-schedule", "wiring-chart"), kinds("loads")),
  }),
  kind({
    name: "another tolerance of a supply",
    table: "supplies",
    fits: any,
    does: () => ({ tolerance_pct: 7 }),
    says: ({ label, tolerance_pct }) => `Supply, ${label}: Tolerance: 7 % (was ${tolerance_pct} %)`,
    sheets: () => reaches(named("supply-schedule"), ELECTRIC),
  }),
  kind({
    name: "another limit of a supply",
    table: "supplies",
    fits: ({ limit_a }) => limit_a !== null,
    does: ({ limit_a }) => ({ limit_a: plus(limit_a, 1) }),
    says: ({ label, limit_a }, to) => `Supply, ${label}: Limit: ${to.limit_a} A (was ${limit_a} A)`,
    sheets: () => reaches(named("supply-schedule"), kinds("loads")),
  }),
  kind({
    name: "a longer pulse",
    table: "activity",
    fits: ({ pulse_ms }) => pulse_ms !== null,
    does: ({ pulse_ms }) => ({ pulse_ms: plus(pulse_ms, 5) }),
    says: ({ item, pulse_ms }, to, book) =>
      `${itemOf(book, item)}: Pulse: ${to.pulse_ms} ms (was ${pulse_ms} ms)`,
    sheets: () => reaches(named("program-map"), ELECTRIC),
  }),
  kind({
    name: "more of a group at once",
    table: "groups",
    fits: any,
    does: ({ most_on }) => ({ most_on: plus(most_on, 1) }),
    says: ({ label, most_on }, to) => `Group, ${label}: Most on: ${to.most_on} (was ${most_on})`,
    sheets: () => reaches(() => false, ELECTRIC, kinds("program-map")),
  }),
  kind({
    name: "a winding with more turns",
    table: "windings",
    fits: ({ turns }) => turns !== null,
    does: ({ turns }) => ({ turns: plus(turns, 20) }),
    says: ({ element, turns }, to, { tables }) => {
      const of = tables.elements.find(({ id }) => id === element)?.device_type ?? "";
      return `Device type, ${labelOf(tables.device_types, of)}: winding ${element}, Turns: ${to.turns} (was ${turns})`;
    },
    sheets: () => reaches(() => false, ELECTRIC),
  }),
  kind({
    name: "a lane takes less",
    table: "lanes",
    fits: any,
    does: ({ max_diameter_mm }) => ({ max_diameter_mm: plus(max_diameter_mm ?? 22, -1) }),
    says: (row, to, book) =>
      `${wayOf(book, "Lane", row)}: Largest bundle: ${to.max_diameter_mm} mm (was ${orBlank(row.max_diameter_mm, "mm")})`,
    sheets: ({ id }, _to, book) =>
      reaches(() => false, ASSEMBLY, AMOUNTS, ELECTRIC, harness(harnessesAlong(book, [id], ""), ...LENGTHS)),
  }),
  kind({
    name: "a waypoint moves",
    table: "waypoints",
    count: 3,
    fits: ({ panel }) => panel === "playfield",
    does: ({ x_mm }) => ({ x_mm: plus(x_mm, 4) }),
    says: ({ id }, _to, book) => `Waypoint ${id} (${spotOf(book, id)}): moved by 4 mm (x +4, y 0)`,
    sheets: ({ id }, _to, book) =>
      reaches(
        () => false,
        ASSEMBLY,
        AMOUNTS,
        ELECTRIC,
        harness(harnessesAlong(book, waysAt(book, id), id), ...LENGTHS),
      ),
  }),
  kind({
    name: "a longer crossing",
    table: "crossings",
    fits: ({ length_mm }) => length_mm !== null,
    does: ({ length_mm }) => ({ length_mm: plus(length_mm, 20) }),
    says: (row, to, book) =>
      `${wayOf(book, "Crossing", row)}: Length: ${to.length_mm} mm (was ${row.length_mm} mm)`,
    sheets: ({ id }, _to, book) =>
      reaches(
        harness(harnessesAlong(book, [id]), "from-to", "cut-list"),
        ASSEMBLY,
        AMOUNTS,
        ELECTRIC,
        harness(harnessesAlong(book, [id]), ...LENGTHS),
      ),
  }),
  kind({
    name: "a harness gets a longer service loop",
    table: "harnesses",
    fits: any,
    does: () => ({ service_loop_mm: 75 }),
    says: ({ label, number, service_loop_mm }) =>
      `Harness ${number}, ${label}: Service loop: 75 mm (was ${orBlank(service_loop_mm, "mm")})`,
    sheets: ({ id }) =>
      reaches(
        harness([id], "pinboard", "from-to", "cut-list", "lay-up"),
        AMOUNTS,
        ELECTRIC,
        harness([id], ...LENGTHS),
      ),
  }),
  kind({
    name: "a net with another wire type",
    table: "nets",
    fits: ({ wire_type }) => wire_type === "hu-22",
    does: () => ({ wire_type: "hu-20" }),
    says: ({ label, wire_type }, _to, { tables }) =>
      `Net, ${label}: Wire type: ${labelOf(tables.wire_types, "hu-20")} (was ${labelOf(tables.wire_types, wire_type)})`,
    sheets: ({ id }, _to, book) =>
      reaches(
        harness(harnessesOf(book, id), "from-to", "cut-list"),
        AMOUNTS,
        ELECTRIC,
        kinds("wiring-chart"),
        harness(harnessesOf(book, id)),
      ),
  }),
  kind({
    name: "a net is called otherwise",
    table: "nets",
    fits: ({ label }) => label !== "",
    does: () => ({ label: "line seven" }),
    says: ({ label }) => `Net, line seven: is now called “line seven” (was “${label}”)`,
    sheets: ({ id }, _to, book) =>
      reaches(harness(harnessesOf(book, id), "from-to", "continuity"), kinds("wiring-chart", "program-map")),
  }),
  kind({
    name: "a cable with more twists",
    table: "cables",
    fits: ({ twists_per_m }) => twists_per_m !== null,
    does: ({ twists_per_m }) => ({ twists_per_m: plus(twists_per_m, 10) }),
    says: ({ label, twists_per_m }, to) =>
      `Cable, ${label}: Twists: ${to.twists_per_m} per m (was ${twists_per_m} per m)`,
    sheets: ({ harness: id }) => reaches(() => false, harness([id]), AMOUNTS),
  }),
  kind({
    name: "an earth bond of another wire",
    table: "bonds",
    fits: ({ wire_type }) => wire_type === "pe-18",
    does: () => ({ wire_type: "pe-16" }),
    says: ({ label, wire_type }, _to, { tables }) =>
      `Earth bond, ${label}: Wire type: ${labelOf(tables.wire_types, "pe-16")} (was ${labelOf(tables.wire_types, wire_type)})`,
    sheets: (_row, _to, book) =>
      reaches(() => false, AMOUNTS, ELECTRIC, kinds("wiring-chart"), harness(harnessesOf(book, "pe"))),
  }),
  kind({
    name: "a pin is called otherwise",
    table: "pins",
    fits: ({ use }) => use === "live",
    does: () => ({ label: "renamed" }),
    says: ({ connector, pin, label }, _to, { tables }) => {
      const at = tables.connectors.find(({ id }) => id === connector);
      return `Board type, ${labelOf(tables.board_types, at?.board_type ?? "")}: pin ${at?.name.toUpperCase()}-${pin}, Name: renamed (was ${orBlank(label)})`;
    },
    sheets: ({ connector }, _to, book) =>
      reaches(
        () => false,
        kinds("board-register", "wiring-chart"),
        harness(
          harnessesOfType(book, book.tables.connectors.find(({ id }) => id === connector)?.board_type ?? ""),
          "connector-loading",
          "pinboard",
        ),
      ),
  }),
  kind({
    name: "a connector of another family",
    table: "connectors",
    fits: ({ family, board_type }) => family === "s250" && board_type !== null,
    does: () => ({ family: "p396" }),
    says: (row, _to, { tables }) =>
      `Board type, ${labelOf(tables.board_types, row.board_type)}: connector ${row.name.toUpperCase()}, Family: ${labelOf(tables.connector_families, "p396")} (was ${labelOf(tables.connector_families, row.family)})`,
    sheets: ({ board_type, name }, _to, book) =>
      reaches(
        harness(harnessesOfType(book, board_type ?? "", name), "connector-loading"),
        AMOUNTS,
        ELECTRIC,
        kinds("wiring-chart", "board-register", "screw-map"),
        harness(harnessesOfType(book, board_type ?? "", name)),
      ),
  }),
  kind({
    name: "a connector with another key plug",
    table: "connectors",
    fits: ({ key_part, board_type }) => key_part === "key.s250" && board_type !== null,
    does: () => ({ key_part: "key.p396" }),
    says: (row, _to, { tables }) =>
      `Board type, ${labelOf(tables.board_types, row.board_type)}: connector ${row.name.toUpperCase()}, Key plug: ${labelOf(tables.parts, "key.p396")} (was ${labelOf(tables.parts, row.key_part)})`,
    sheets: ({ board_type }, _to, book) =>
      reaches(named("parts-list"), AMOUNTS, harness(harnessesOfType(book, board_type ?? ""))),
  }),
  kind({
    name: "a family is crimped with another tool",
    table: "connector_families",
    // A tool that other families share stands on their sheets too.
    fits: ({ id }) => id === "m750" || id === "ring-m4",
    does: () => ({ tool: "bench press, die N" }),
    says: ({ label, tool }) => `Connector family, ${label}: Tool: bench press, die N (was ${orBlank(tool)})`,
    sheets: ({ tool }) =>
      whereShown(
        tool,
        () => false,
        AMOUNTS,
        ({ of }) => of.startsWith("hs."),
      ),
  }),
];
