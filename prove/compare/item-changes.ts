import { board, device, fastener, itemOf, labelOf } from "./names.ts";
import { harnessesAt } from "./reach.ts";
import { any, kind, plus, type Script } from "./script.ts";
import {
  AMOUNTS,
  ASSEMBLY,
  ELECTRIC,
  exactly,
  harness,
  kinds,
  LENGTHS,
  NO_SHEET,
  named,
  reaches,
  whereShown,
} from "./sheet-rules.ts";

/** What stands in the machine: moved, turned, renamed, of another type. */
export const ITEM_CHANGES: readonly Script[] = [
  kind({
    name: "move a switch",
    table: "devices",
    count: 3,
    fits: ({ id }) => id.startsWith("sw."),
    does: ({ x_mm }) => ({ x_mm: plus(x_mm, 12) }),
    says: (row, _to, book) => `${device(book, row)}: moved by 12 mm (x +12, y 0)`,
    sheets: ({ id }, _to, book) =>
      reaches(named("step-cards"), ASSEMBLY, AMOUNTS, ELECTRIC, harness(harnessesAt(book, id), ...LENGTHS)),
  }),
  kind({
    name: "move a lamp aslant",
    table: "devices",
    count: 3,
    fits: ({ id }) => id.startsWith("lp."),
    does: ({ x_mm, y_mm }) => ({ x_mm: plus(x_mm, -3), y_mm: plus(y_mm, 4) }),
    says: (row, _to, book) => `${device(book, row)}: moved by 5 mm (x −3, y +4)`,
    sheets: ({ id }, _to, book) =>
      reaches(named("step-cards"), ASSEMBLY, AMOUNTS, ELECTRIC, harness(harnessesAt(book, id), ...LENGTHS)),
  }),
  kind({
    name: "turn a switch",
    table: "devices",
    fits: ({ id, rotation_deg }) => id.startsWith("sw.") && rotation_deg === 0,
    does: () => ({ rotation_deg: 90 }),
    says: (row, _to, book) => `${device(book, row)}: is turned to 90° (was 0°)`,
    sheets: ({ id }, _to, book) =>
      reaches(named("step-cards"), ASSEMBLY, AMOUNTS, ELECTRIC, harness(harnessesAt(book, id), ...LENGTHS)),
  }),
  kind({
    name: "call a device otherwise",
    table: "devices",
    count: 3,
    fits: ({ id, label }, { tables }) =>
      id.startsWith("lp.") && tables.devices.filter((one) => one.label === label).length === 1,
    does: () => ({ label: "Beacon flash" }),
    says: (row, to, book) => `${device(book, to)}: is now called “Beacon flash” (was “${row.label}”)`,
    sheets: ({ id, label }, _to, book) =>
      whereShown(
        label,
        // Continuity lists name nets, which are called as their lamps are; so do lists of harnesses that pass the net on.
        (sheet) =>
          sheet.kind === "continuity" || (sheet.of !== "machine" && !harness(harnessesAt(book, id))(sheet)),
      ),
  }),
  kind({
    name: "call a device otherwise in Chinese",
    table: "devices",
    fits: ({ id }) => id.startsWith("sw."),
    does: () => ({ label_zh: "暗礁开关" }),
    says: (row, _to, book) =>
      `${device(book, row)}: is now called “暗礁开关” in Chinese (was “${row.label_zh}”)`,
    // The map has a name that is worked out from all that it says, in both languages.
    sheets: () => exactly(named("program-map")),
  }),
  kind({
    name: "renumber a lamp",
    table: "devices",
    fits: ({ id, number }) => id.startsWith("lp.") && number !== null,
    does: ({ number }) => ({ number: plus(number, 400) }),
    says: (row, to, book) => `${device(book, to)}: Number: ${to.number} (was ${row.number})`,
    sheets: () => exactly(named("program-map")),
  }),
  kind({
    name: "renumber a device of a mechanism",
    table: "mechanism_numbers",
    fits: any,
    does: ({ number }) => ({ number: plus(number, 400) }),
    says: ({ item, number }, to, book) =>
      `${itemOf(book, item, to.number)}: Number: ${to.number} (was ${number})`,
    sheets: () => exactly(named("program-map")),
  }),
  kind({
    name: "light from another emitter",
    table: "devices",
    fits: ({ light_from }) => light_from !== null,
    does: ({ light_from }) => ({ light_from: light_from === "sn.wreck-tx" ? "sn.skill-tx" : "sn.wreck-tx" }),
    says: (row, to, book) =>
      `${device(book, row)}: Light from: ${labelOf(book.tables.devices, to.light_from ?? "")} (was ${labelOf(book.tables.devices, row.light_from ?? "")})`,
    sheets: () => NO_SHEET,
  }),
  kind({
    name: "a device only with an option",
    table: "devices",
    fits: ({ id }) => id.startsWith("tp."),
    does: () => ({ options: ["mains-230"] }),
    says: (row, _to, book) => `${device(book, row)}: Options: Mains 230 V (was always)`,
    sheets: () => reaches(() => false, ASSEMBLY, AMOUNTS),
  }),
  kind({
    name: "move a board",
    table: "boards",
    count: 3,
    fits: ({ panel }) => panel === "playfield",
    does: ({ y_mm }) => ({ y_mm: plus(y_mm, 6) }),
    says: (row) => `${board(row)}: moved by 6 mm (x 0, y +6)`,
    sheets: ({ id }, _to, book) =>
      reaches(
        named("step-cards", "board-register"),
        // A landing beside its waypoint may move by less than what a length is rounded to: then its pinboard stays.
        harness(harnessesAt(book, id), "pinboard"),
        ASSEMBLY,
        AMOUNTS,
        ELECTRIC,
        harness(harnessesAt(book, id), ...LENGTHS),
      ),
  }),
  kind({
    name: "move a mechanism",
    table: "mechanisms",
    fits: any,
    does: ({ x_mm }) => ({ x_mm: plus(x_mm, 2) }),
    says: ({ label }) => `Mechanism, ${label}: moved by 2 mm (x +2, y 0)`,
    sheets: ({ id, panel, side }, _to, book) =>
      reaches(
        named(
          "step-cards",
          `screw-map-mount-${id}`,
          `screw-tray-mount-${id}`,
          `drill-table-${panel}-${side}`,
          `pilot-template-${panel}-${side}`,
        ),
        ASSEMBLY,
        AMOUNTS,
        ELECTRIC,
        harness(harnessesAt(book, id), ...LENGTHS),
      ),
  }),
  kind({
    name: "another type of a mechanism",
    table: "mechanisms",
    fits: ({ type }) => type.startsWith("mt.slingshot-"),
    does: ({ type }) => ({
      type: type === "mt.slingshot-left" ? "mt.slingshot-right" : "mt.slingshot-left",
    }),
    says: (row, to, { tables }) =>
      `Mechanism, ${row.label}: is now of type ${labelOf(tables.mechanism_types, to.type)} (was ${labelOf(tables.mechanism_types, row.type)})`,
    sheets: ({ id, panel, side }, _to, book) =>
      reaches(
        named("step-cards", `screw-map-mount-${id}`, `drill-table-${panel}-${side}`),
        ASSEMBLY,
        AMOUNTS,
        ELECTRIC,
        kinds("program-map", "wiring-chart"),
        harness(harnessesAt(book, id)),
      ),
  }),
  kind({
    name: "move a screw",
    table: "fasteners",
    count: 3,
    fits: ({ id }) => id.startsWith("fx."),
    does: ({ x_mm }) => ({ x_mm: plus(x_mm, 1) }),
    says: (row, _to, book) => `${fastener(book, row)}: moved by 1 mm (x +1, y 0)`,
    sheets: ({ panel, side }) =>
      reaches(
        named(
          "step-cards",
          "screw-map-overview",
          `drill-table-${panel}-${side}`,
          `pilot-template-${panel}-${side}`,
        ),
        ASSEMBLY,
      ),
  }),
  kind({
    name: "another type of a screw",
    table: "fasteners",
    fits: ({ type }) => type === "ft.wood-30x12",
    does: () => ({ type: "ft.wood-35x12" }),
    says: (row, to, book) => {
      const name = (type: string): string => labelOf(book.tables.fastener_types, type);
      return `${fastener(book, to)}: is now of type ${name(to.type)} (was ${name(row.type)})`;
    },
    sheets: ({ panel, side }) =>
      reaches(named("step-cards", "screw-map-overview", `drill-table-${panel}-${side}`), ASSEMBLY, AMOUNTS),
  }),
];
