import { labelOf, orBlank } from "./names.ts";
import { any, kind, plus, type Row, type Script, spread } from "./script.ts";
import { todo } from "./sheet-rules.ts";

/** Value and unit of a test, step or dimension. */
const withUnit = (value: number | null, unit: string, blank = ""): string =>
  orBlank(value, unit === "" ? blank : unit);

const panelWords = ({ label }: Row<"panels">): string => `Panel, ${label}`;

/** Panels, parts, boards as they are made, steps, tests, screws of types. */
export const MAKING_CHANGES: readonly Script[] = [
  kind({
    name: "another upper limit of a test",
    table: "tests",
    fits: ({ max }) => max !== null,
    does: ({ max }) => ({ max: plus(max, 1) }),
    says: ({ label, max, unit }, to) =>
      `Test, ${label}: Upper limit: ${withUnit(to.max, unit)} (was ${withUnit(max, unit)})`,
    sheets: () => todo,
  }),
  kind({
    name: "another text of a test",
    table: "tests",
    fits: ({ do: text }) => text !== "",
    does: ({ do: text }) => ({ do: `${text} Twice.` }),
    says: ({ label, do: text }) => `Test, ${label}: What to do: ${text} Twice. (was ${text})`,
    sheets: () => todo,
  }),
  kind({
    name: "another text of a step of a test",
    table: "test_steps",
    fits: any,
    does: () => ({ label: "Look twice" }),
    says: ({ test, no, label }, _to, { tables }) =>
      `Test, ${labelOf(tables.tests, test)}: step ${no}, Name: Look twice (was ${label})`,
    sheets: () => todo,
  }),
  kind({
    name: "a step takes longer",
    table: "steps",
    fits: ({ minutes }) => minutes !== null,
    does: ({ minutes }) => ({ minutes: plus(minutes, 3) }),
    says: () => [],
    sheets: () => todo,
  }),
  kind({
    name: "more people at a station",
    table: "stations",
    fits: ({ people }) => people > 1,
    does: ({ people }) => ({ people: plus(people, 1) }),
    says: ({ label, people }, to) => `Station, ${label}: People: ${to.people} (was ${people})`,
    sheets: () => todo,
  }),
  kind({
    name: "a part moves on a board",
    table: "placements",
    fits: ({ reference }) => reference.startsWith("R"),
    does: ({ x_mm }) => ({ x_mm: plus(x_mm, 0.5) }),
    says: ({ board_type, reference }, _to, { tables }) =>
      `Board type, ${labelOf(tables.board_types, board_type)}: part ${reference} is moved by 0.5 mm (x +0.5, y 0)`,
    sheets: () => todo,
  }),
  kind({
    name: "another revision of a board",
    table: "board_types",
    fits: any,
    does: () => ({ revision: "Q" }),
    says: ({ label, revision }) => `Board type, ${label}: Revision: Q (was ${orBlank(revision)})`,
    sheets: () => todo,
  }),
  kind({
    name: "more of a part in the machine",
    table: "bom",
    count: 3,
    fits: ({ parent, options }) => parent === null && options.length === 0,
    does: ({ quantity }) => ({ quantity: plus(quantity, 2) }),
    says: ({ part, quantity }, to, { tables }) =>
      `Part, ${labelOf(tables.parts, part)}: in the machine itself, Quantity: ${to.quantity} (was ${quantity})`,
    sheets: () => todo,
  }),
  kind({
    name: "more of a part in another part",
    table: "bom",
    fits: ({ parent }) => parent !== null,
    does: ({ quantity }) => ({ quantity: plus(quantity, 1) }),
    says: ({ parent, part, quantity }, to, { tables }) =>
      `Part, ${labelOf(tables.parts, parent)}: part ${labelOf(tables.parts, part)}, Quantity: ${to.quantity} (was ${quantity})`,
    sheets: () => todo,
  }),
  kind({
    name: "a part only with an option",
    table: "bom",
    fits: ({ parent, options }) => parent === null && options.length === 0,
    does: () => ({ options: ["language-zh"] }),
    says: ({ part }, _to, { tables }) =>
      `Part, ${labelOf(tables.parts, part)}: in the machine itself, Options: ${labelOf(tables.options, "language-zh")} (was always)`,
    sheets: () => todo,
  }),
  kind({
    name: "a part has another order number",
    table: "parts",
    fits: ({ order_number }) => order_number === "",
    does: () => ({ order_number: "98-7654" }),
    says: ({ label }) => `Part, ${label}: Ordering number: 98-7654 (was not set)`,
    sheets: () => todo,
  }),
  kind({
    name: "an alternate with another remark",
    table: "alternates",
    fits: any,
    does: () => ({ remark: "For a time only" }),
    says: ({ part, instead, remark }, _to, { tables }) =>
      `Part, ${labelOf(tables.parts, part)}: alternate ${labelOf(tables.parts, instead)}, Remark: For a time only (was ${orBlank(remark)})`,
    sheets: () => todo,
  }),
  kind({
    name: "a thicker panel",
    table: "panels",
    fits: ({ id }) => id.startsWith("cab."),
    does: ({ thickness_mm }) => ({ thickness_mm: plus(thickness_mm, 0.5) }),
    says: (row, to) => `${panelWords(row)}: Thickness: ${to.thickness_mm} mm (was ${row.thickness_mm} mm)`,
    sheets: () => todo,
  }),
  kind({
    name: "a wider panel",
    table: "panels",
    fits: ({ id }) => id.startsWith("cab."),
    does: ({ width_mm }) => ({ width_mm: plus(width_mm, 2) }),
    says: (row, to) => `${panelWords(row)}: Width: ${to.width_mm} mm (was ${row.width_mm} mm)`,
    sheets: () => todo,
  }),
  kind({
    name: "another edge of a panel",
    table: "panels",
    fits: any,
    does: () => ({ edge: "rounded 2 mm" }),
    says: (row) => `${panelWords(row)}: Edge: rounded 2 mm (was ${orBlank(row.edge)})`,
    sheets: () => todo,
  }),
  kind({
    name: "a cutout moves",
    table: "cutouts",
    fits: ({ panel }) => panel === "playfield",
    does: ({ y_mm }) => ({ y_mm: plus(y_mm, 2) }),
    says: ({ panel, id }, _to, { tables }) =>
      `Panel, ${labelOf(tables.panels, panel)}: cutout ${id} is moved by 2 mm (x 0, y +2)`,
    sheets: () => todo,
  }),
  kind({
    name: "a fit with another limit",
    table: "fits",
    fits: ({ max_mm }) => max_mm !== null,
    does: ({ max_mm }) => ({ max_mm: plus(max_mm, 1) }),
    says: ({ label, max_mm }, to) => `Fit, ${label}: Max: ${to.max_mm} mm (was ${max_mm} mm)`,
    sheets: () => todo,
  }),
  kind({
    name: "a screw needs more torque",
    table: "fastener_types",
    fits: ({ torque_nm }) => torque_nm !== null,
    does: ({ torque_nm }) => ({ torque_nm: plus(torque_nm, 0.1) }),
    says: ({ label, torque_nm }, to) =>
      `Fastener type, ${label}: Torque: ${to.torque_nm} N·m (was ${torque_nm} N·m)`,
    sheets: () => todo,
  }),
  kind({
    name: "another screw of a mechanism",
    table: "mechanism_fasteners",
    fits: ({ fastener_type }) => fastener_type === "ft.wood-40x12",
    does: () => ({ fastener_type: "ft.wood-40x16" }),
    says: ({ mechanism_type, child, fastener_type }, to, { tables }) =>
      `Mechanism type, ${labelOf(tables.mechanism_types, mechanism_type)}: fastener ${child}, Fastener type: ${labelOf(tables.fastener_types, to.fastener_type)} (was ${labelOf(tables.fastener_types, fastener_type)})`,
    sheets: () => todo,
  }),
  kind({
    name: "a gap of a mechanism",
    table: "mechanism_steps",
    fits: ({ max }) => max !== null,
    does: ({ max }) => ({ max: plus(max, 0.1) }),
    says: ({ mechanism_type, order, max, unit }, to, { tables }) =>
      `Mechanism type, ${labelOf(tables.mechanism_types, mechanism_type)}: bench step ${order}, Upper limit: ${withUnit(to.max, unit)} (was ${withUnit(max, unit)})`,
    sheets: () => todo,
  }),
  kind({
    name: "a dimension of a drawing",
    table: "dimensions",
    fits: ({ plus: above }) => above > 0,
    does: ({ plus: above }) => ({ plus: plus(above, 0.05) }),
    says: ({ part, mark, plus: above, unit }, to, { tables }) =>
      `Part, ${labelOf(tables.parts, part)}: dimension ${mark}, Plus: ${withUnit(to.plus, unit, "mm")} (was ${withUnit(above, unit, "mm")})`,
    sheets: () => todo,
  }),
  kind({
    name: "a tool comes later",
    table: "tooling",
    fits: ({ lead_days }) => lead_days !== null,
    does: ({ lead_days }) => ({ lead_days: plus(lead_days, 7) }),
    says: ({ label, lead_days }, to) =>
      `Tooling, ${label}: Lead time: ${to.lead_days} days (was ${lead_days} days)`,
    sheets: () => todo,
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
        sheets: todo,
      };
    }),
];
