import { labelOf, orBlank } from "./names.ts";
import { inName } from "./reach.ts";
import { any, kind, plus, type Row, type Script, spread } from "./script.ts";
import {
  AMOUNTS,
  ASSEMBLY,
  exactly,
  kinds,
  NO_SHEET,
  named,
  reaches,
  type SheetRule,
} from "./sheet-rules.ts";

/** Value and unit of a test, step or dimension. */
const withUnit = (value: number | null, unit: string, blank = ""): string =>
  orBlank(value, unit === "" ? blank : unit);

const panelWords = ({ label }: Row<"panels">): string => `Panel, ${label}`;

/** A test of a board is on the sheet of that board's tests; others are on the floor's screens and in the cards of steps. */
const testSheets = (boardType: string | null): SheetRule =>
  boardType === null
    ? reaches(() => false, kinds("board-test", "step-cards"))
    : exactly(named(`board-test-${inName(boardType)}`));

/** Panels, parts, boards as they are made, steps, tests, screws of types. */
export const MAKING_CHANGES: readonly Script[] = [
  kind({
    name: "another upper limit of a test",
    table: "tests",
    fits: ({ max }) => max !== null,
    does: ({ max }) => ({ max: plus(max, 1) }),
    says: ({ label, max, unit }, to) =>
      `Test, ${label}: Upper limit: ${withUnit(to.max, unit)} (was ${withUnit(max, unit)})`,
    sheets: ({ board_type }) => testSheets(board_type),
  }),
  kind({
    name: "another text of a test",
    table: "tests",
    fits: ({ do: text }) => text !== "",
    does: ({ do: text }) => ({ do: `${text} Twice.` }),
    says: ({ label, do: text }) => `Test, ${label}: What to do: ${text} Twice. (was ${text})`,
    sheets: ({ board_type }) => testSheets(board_type),
  }),
  kind({
    name: "another text of a step of a test",
    table: "test_steps",
    fits: any,
    does: () => ({ label: "Look twice" }),
    says: ({ test, no, label }, _to, { tables }) =>
      `Test, ${labelOf(tables.tests, test)}: step ${no}, Name: Look twice (was ${label})`,
    // Steps of a test are shown on the floor; the sheet of the board has the test.
    sheets: () => reaches(() => false, kinds("board-test")),
  }),
  kind({
    name: "a step takes longer",
    table: "steps",
    fits: ({ minutes }) => minutes !== null,
    does: ({ minutes }) => ({ minutes: plus(minutes, 3) }),
    says: () => [],
    sheets: () => reaches(named("step-cards"), kinds("kit-list")),
  }),
  kind({
    name: "more people at a station",
    table: "stations",
    fits: ({ people }) => people > 1,
    does: ({ people }) => ({ people: plus(people, 1) }),
    says: ({ label, people }, to) => `Station, ${label}: People: ${to.people} (was ${people})`,
    sheets: () => reaches(() => false, kinds("kit-list", "step-cards")),
  }),
  kind({
    name: "a part moves on a board",
    table: "placements",
    fits: ({ reference }) => reference.startsWith("R"),
    does: ({ x_mm }) => ({ x_mm: plus(x_mm, 0.5) }),
    says: ({ board_type, reference }, _to, { tables }) =>
      `Board type, ${labelOf(tables.board_types, board_type)}: part ${reference} is moved by 0.5 mm (x +0.5, y 0)`,
    sheets: ({ board_type }) =>
      reaches(named(`stuffing-guide-${inName(board_type)}`), named(`board-kit-${inName(board_type)}`)),
  }),
  kind({
    name: "another revision of a board",
    table: "board_types",
    fits: any,
    does: () => ({ revision: "Q" }),
    says: ({ label, revision }) => `Board type, ${label}: Revision: Q (was ${orBlank(revision)})`,
    sheets: ({ id }) =>
      reaches(
        named("board-register", `stuffing-guide-${inName(id)}`, `board-kit-${inName(id)}`),
        named(`board-test-${inName(id)}`),
      ),
  }),
  kind({
    name: "more of a part in the machine",
    table: "bom",
    count: 3,
    fits: ({ parent, options }) => parent === null && options.length === 0,
    does: ({ quantity }) => ({ quantity: plus(quantity, 2) }),
    says: ({ part, quantity }, to, { tables }) =>
      `Part, ${labelOf(tables.parts, part)}: in the machine itself, Quantity: ${to.quantity} (was ${quantity})`,
    sheets: () => reaches(named("parts-list"), AMOUNTS),
  }),
  kind({
    name: "more of a part in another part",
    table: "bom",
    fits: ({ parent }) => parent !== null,
    does: ({ quantity }) => ({ quantity: plus(quantity, 1) }),
    says: ({ parent, part, quantity }, to, { tables }) =>
      `Part, ${labelOf(tables.parts, parent)}: part ${labelOf(tables.parts, part)}, Quantity: ${to.quantity} (was ${quantity})`,
    sheets: () => reaches(named("parts-list"), AMOUNTS, kinds("board-kit")),
  }),
  kind({
    name: "a part only with an option",
    table: "bom",
    fits: ({ parent, options }) => parent === null && options.length === 0,
    does: () => ({ options: ["language-zh"] }),
    says: ({ part }, _to, { tables }) =>
      `Part, ${labelOf(tables.parts, part)}: in the machine itself, Options: ${labelOf(tables.options, "language-zh")} (was always)`,
    sheets: () => reaches(() => false, AMOUNTS),
  }),
  kind({
    name: "a part has another order number",
    table: "parts",
    fits: ({ order_number }) => order_number === "",
    does: () => ({ order_number: "98-7654" }),
    says: ({ label }) => `Part, ${label}: Ordering number: 98-7654 (was not set)`,
    sheets: () => reaches(() => false, kinds("parts-list", "board-kit")),
  }),
  kind({
    name: "an alternate with another remark",
    table: "alternates",
    fits: any,
    does: () => ({ remark: "For a time only" }),
    says: ({ part, instead, remark }, _to, { tables }) =>
      `Part, ${labelOf(tables.parts, part)}: alternate ${labelOf(tables.parts, instead)}, Remark: For a time only (was ${orBlank(remark)})`,
    sheets: () => NO_SHEET,
  }),
  kind({
    name: "a thicker panel",
    table: "panels",
    fits: ({ id }) => id.startsWith("cab."),
    does: ({ thickness_mm }) => ({ thickness_mm: plus(thickness_mm, 0.5) }),
    says: (row, to) => `${panelWords(row)}: Thickness: ${to.thickness_mm} mm (was ${row.thickness_mm} mm)`,
    sheets: ({ part }) =>
      reaches(
        named("panel-labels", `cutting-plan-${part}`),
        ASSEMBLY,
        AMOUNTS,
        kinds("cutting-plan", "cutting-order", "panel-labels", "panel-drawing", "paint-plan"),
      ),
  }),
  kind({
    name: "a wider panel",
    table: "panels",
    fits: ({ id }) => id.startsWith("cab."),
    does: ({ width_mm }) => ({ width_mm: plus(width_mm, 2) }),
    says: (row, to) => `${panelWords(row)}: Width: ${to.width_mm} mm (was ${row.width_mm} mm)`,
    sheets: ({ id, part }) =>
      reaches(
        named("panel-labels", `panel-drawing-${id}`, `cutting-plan-${part}`, `cutting-order-${part}`),
        ASSEMBLY,
        AMOUNTS,
        kinds("cutting-plan", "cutting-order", "panel-drawing", "paint-plan", "board-register"),
      ),
  }),
  kind({
    name: "another edge of a panel",
    table: "panels",
    fits: any,
    does: () => ({ edge: "rounded 2 mm" }),
    says: (row) => `${panelWords(row)}: Edge: rounded 2 mm (was ${orBlank(row.edge)})`,
    sheets: ({ id }) => exactly(named(`panel-drawing-${id}`)),
  }),
  kind({
    name: "a cutout moves",
    table: "cutouts",
    fits: ({ panel }) => panel === "playfield",
    does: ({ y_mm }) => ({ y_mm: plus(y_mm, 2) }),
    says: ({ panel, id }, _to, { tables }) =>
      `Panel, ${labelOf(tables.panels, panel)}: cutout ${id} is moved by 2 mm (x 0, y +2)`,
    sheets: ({ panel }) => reaches(named(`panel-drawing-${panel}`), ASSEMBLY, kinds("board-register")),
  }),
  kind({
    name: "a fit with another limit",
    table: "fits",
    fits: ({ max_mm }) => max_mm !== null,
    does: ({ max_mm }) => ({ max_mm: plus(max_mm, 1) }),
    says: ({ label, max_mm }, to) => `Fit, ${label}: Max: ${to.max_mm} mm (was ${max_mm} mm)`,
    sheets: () => reaches(() => false, kinds("panel-drawing", "cutting-plan")),
  }),
  kind({
    name: "a screw needs more torque",
    table: "fastener_types",
    fits: ({ torque_nm }) => torque_nm !== null,
    does: ({ torque_nm }) => ({ torque_nm: plus(torque_nm, 0.1) }),
    says: ({ label, torque_nm }, to) =>
      `Fastener type, ${label}: Torque: ${to.torque_nm} N·m (was ${torque_nm} N·m)`,
    sheets: () => reaches(named("step-cards", "screw-poster"), ASSEMBLY),
  }),
  kind({
    name: "another screw of a mechanism",
    table: "mechanism_fasteners",
    fits: ({ fastener_type }) => fastener_type === "ft.wood-40x12",
    does: () => ({ fastener_type: "ft.wood-40x16" }),
    says: ({ mechanism_type, child, fastener_type }, to, { tables }) =>
      `Mechanism type, ${labelOf(tables.mechanism_types, mechanism_type)}: fastener ${child}, Fastener type: ${labelOf(tables.fastener_types, to.fastener_type)} (was ${labelOf(tables.fastener_types, fastener_type)})`,
    sheets: () => reaches(named("step-cards", "screw-map-overview"), ASSEMBLY, AMOUNTS),
  }),
  kind({
    name: "a gap of a mechanism",
    table: "mechanism_steps",
    fits: ({ max }) => max !== null,
    does: ({ max }) => ({ max: plus(max, 0.1) }),
    says: ({ mechanism_type, order, max, unit }, to, { tables }) =>
      `Mechanism type, ${labelOf(tables.mechanism_types, mechanism_type)}: bench step ${order}, Upper limit: ${withUnit(to.max, unit)} (was ${withUnit(max, unit)})`,
    sheets: () => reaches(named("step-cards"), kinds("kit-list")),
  }),
  kind({
    name: "a dimension of a drawing",
    table: "dimensions",
    fits: ({ plus: above }) => above > 0,
    does: ({ plus: above }) => ({ plus: plus(above, 0.05) }),
    says: ({ part, mark, plus: above, unit }, to, { tables }) =>
      `Part, ${labelOf(tables.parts, part)}: dimension ${mark}, Plus: ${withUnit(to.plus, unit, "mm")} (was ${withUnit(above, unit, "mm")})`,
    sheets: () => NO_SHEET,
  }),
  kind({
    name: "a tool comes later",
    table: "tooling",
    fits: ({ lead_days }) => lead_days !== null,
    does: ({ lead_days }) => ({ lead_days: plus(lead_days, 7) }),
    says: ({ label, lead_days }, to) =>
      `Tooling, ${label}: Lead time: ${to.lead_days} days (was ${lead_days} days)`,
    sheets: () => NO_SHEET,
  }),
  (book) =>
    spread([...book.outlines.keys()].sort()).map((name) => {
      const outline = book.outlines.get(name);
      if (outline === undefined) throw new Error("no outline");
      const rings = outline.rings.map((ring, r) =>
        ring.map((corner, i) => (r === 0 && i === 0 ? { ...corner, xMm: plus(corner.xMm, 0.5) } : corner)),
      );
      return {
        name: `an outline is drawn otherwise: ${name}`,
        after: { ...book, outlines: new Map([...book.outlines, [name, { ...outline, rings }]]) },
        says: [`Outline, ${name}: is drawn otherwise`],
        follows: [],
        sheets: reaches(() => false, ASSEMBLY, kinds("panel-drawing", "board-register")),
      };
    }),
];
