import {
  type Book,
  type BookRow,
  type BookTableName,
  renameId,
  withRows,
} from "../../packages/book/src/index.ts";

/** A change to a book that a person could make, with the sentences that say what was done, in English. */
export interface ScriptedChange {
  readonly name: string;
  readonly after: Book;
  /** `subject: sentence` for each thing that was done; what follows from it is worked out elsewhere. */
  readonly says: readonly string[];
}

type Row<N extends BookTableName> = BookRow<N>;

/** So many victims of each kind of change. */
const VICTIMS = 3;

/** Rows that a predicate picks, spread over the table. */
function victims<N extends BookTableName>(
  book: Book,
  table: N,
  fits: (row: Row<N>) => boolean,
): readonly Row<N>[] {
  const rows: readonly Row<N>[] = book.tables[table];
  const all = rows.filter(fits);
  if (all.length < VICTIMS) throw new Error(`${table}: too few rows to change`);
  return Array.from({ length: VICTIMS }, (_, i) => {
    const victim = all[Math.floor((i * all.length) / VICTIMS)];
    if (victim === undefined) throw new Error(`${table}: no row`);
    return victim;
  });
}

function put<N extends BookTableName>(book: Book, table: N, victim: Row<N>, values: Partial<Row<N>>): Book {
  const rows: readonly Row<N>[] = book.tables[table];
  return withRows(
    book,
    table,
    rows.map((row) => (row === victim ? { ...row, ...values } : row)),
  );
}

function drop<N extends BookTableName>(book: Book, table: N, isGone: (row: Row<N>) => boolean): Book {
  const rows: readonly Row<N>[] = book.tables[table];
  return withRows(
    book,
    table,
    rows.filter((row) => !isGone(row)),
  );
}

/** One kind of change: whom it can befall, what is done, and what is then said. */
interface Kind<N extends BookTableName> {
  readonly name: string;
  readonly table: N;
  readonly fits: (row: Row<N>) => boolean;
  readonly does: (row: Row<N>) => Partial<Row<N>>;
  readonly says: (row: Row<N>, to: Row<N>, book: Book) => string | readonly string[];
}

const kind =
  <N extends BookTableName>(given: Kind<N>) =>
  (book: Book): readonly ScriptedChange[] =>
    victims(book, given.table, given.fits).map((row) => {
      const values = given.does(row);
      const to: Row<N> = { ...row, ...values };
      return {
        name: `${given.name}: ${Object.values(row).slice(0, 2).join(" ")}`,
        after: put(book, given.table, row, values),
        says: [given.says(row, to, book)].flat(),
      };
    });

const device = ({ number, label }: Row<"devices">): string =>
  number === null ? `Device, ${label}` : `Device ${number}, ${label}`;
const any = (): boolean => true;

const KINDS: readonly ((book: Book) => readonly ScriptedChange[])[] = [
  kind({
    name: "move a switch",
    table: "devices",
    fits: ({ id }) => id.startsWith("sw."),
    does: ({ x_mm }) => ({ x_mm: x_mm + 12 }),
    says: (row) => `${device(row)}: moved by 12 mm (x +12, y 0)`,
  }),
  kind({
    name: "move a lamp aslant",
    table: "devices",
    fits: ({ id }) => id.startsWith("lp."),
    does: ({ x_mm, y_mm }) => ({ x_mm: x_mm - 3, y_mm: y_mm + 4 }),
    says: (row) => `${device(row)}: moved by 5 mm (x −3, y +4)`,
  }),
  kind({
    name: "turn a switch",
    table: "devices",
    fits: ({ id, rotation_deg }) => id.startsWith("sw.") && rotation_deg === 0,
    does: () => ({ rotation_deg: 90 }),
    says: (row) => `${device(row)}: is turned to 90° (was 0°)`,
  }),
  kind({
    name: "call a device otherwise",
    table: "devices",
    fits: ({ id }) => id.startsWith("lp."),
    does: () => ({ label: "Beacon flash" }),
    says: (row, to) => `${device(to)}: is now called “Beacon flash” (was “${row.label}”)`,
  }),
  kind({
    name: "renumber a lamp",
    table: "devices",
    fits: ({ id, number }) => id.startsWith("lp.") && number !== null,
    does: ({ number }) => ({ number: (number ?? 0) + 400 }),
    says: (row, to) => `${device(to)}: Number: ${to.number} (was ${row.number})`,
  }),
  kind({
    name: "move a board",
    table: "boards",
    fits: ({ panel }) => panel === "playfield",
    does: ({ y_mm }) => ({ y_mm: y_mm + 6 }),
    says: ({ label, address }) =>
      `${address === null ? "Board" : `Board ${address}`}, ${label}: moved by 6 mm (x 0, y +6)`,
  }),
  kind({
    name: "move a mechanism",
    table: "mechanisms",
    fits: any,
    does: ({ x_mm }) => ({ x_mm: x_mm + 2 }),
    says: ({ label }) => `Mechanism, ${label}: moved by 2 mm (x +2, y 0)`,
  }),
  kind({
    name: "move a screw",
    table: "fasteners",
    fits: ({ id }) => id.startsWith("fx."),
    does: ({ x_mm }) => ({ x_mm: x_mm + 1 }),
    says: ({ id, type }, _to, book) =>
      `Fastener, ${book.tables.fastener_types.find((one) => one.id === type)?.label} (${id}): moved by 1 mm (x +1, y 0)`,
  }),
  kind({
    name: "another fuse rating",
    table: "fuses",
    fits: any,
    does: ({ rated_a }) => ({ rated_a: rated_a * 2 }),
    says: ({ label, rated_a }) => `Fuse, ${label}: Rated current: ${rated_a * 2} A (was ${rated_a} A)`,
  }),
  kind({
    name: "another tolerance of a supply",
    table: "supplies",
    fits: any,
    does: () => ({ tolerance_pct: 7 }),
    says: ({ label, tolerance_pct }) =>
      `Supply, ${label}: Tolerance: 7 % (was ${tolerance_pct === 0 ? "nothing" : `${tolerance_pct} %`})`,
  }),
  kind({
    name: "a longer pulse",
    table: "activity",
    fits: ({ pulse_ms }) => pulse_ms !== null,
    does: ({ pulse_ms }) => ({ pulse_ms: (pulse_ms ?? 0) + 5 }),
    says: () => [],
  }),
  kind({
    name: "another upper limit of a test",
    table: "tests",
    fits: ({ max }) => max !== null,
    does: ({ max }) => ({ max: (max ?? 0) + 1 }),
    says: ({ label, max }) => `Test, ${label}: Upper limit: ${(max ?? 0) + 1} (was ${max})`,
  }),
  kind({
    name: "another text of a test",
    table: "tests",
    fits: ({ do: text }) => text !== "",
    does: ({ do: text }) => ({ do: `${text} Twice.` }),
    says: () => [],
  }),
  kind({
    name: "a step takes longer",
    table: "steps",
    fits: ({ minutes }) => minutes !== null,
    does: ({ minutes }) => ({ minutes: (minutes ?? 0) + 3 }),
    says: () => [],
  }),
  kind({
    name: "a part moves on a board",
    table: "placements",
    fits: ({ reference }) => reference.startsWith("R"),
    does: ({ x_mm }) => ({ x_mm: x_mm + 0.5 }),
    says: () => [],
  }),
  kind({
    name: "another revision of a board",
    table: "board_types",
    fits: any,
    does: () => ({ revision: "Q" }),
    says: () => [],
  }),
  kind({
    name: "more of a part in the machine",
    table: "bom",
    fits: ({ parent }) => parent === null,
    does: ({ quantity }) => ({ quantity: quantity + 2 }),
    says: () => [],
  }),
  kind({
    name: "a thicker panel",
    table: "panels",
    fits: ({ id }) => id.startsWith("cab."),
    does: ({ thickness_mm }) => ({ thickness_mm: thickness_mm + 0.5 }),
    says: ({ label, thickness_mm }) =>
      `Panel, ${label}: Thickness: ${thickness_mm + 0.5} mm (was ${thickness_mm} mm)`,
  }),
  kind({
    name: "a wider panel",
    table: "panels",
    fits: ({ id }) => id.startsWith("cab."),
    does: ({ width_mm }) => ({ width_mm: width_mm + 2 }),
    says: ({ label, width_mm }) => `Panel, ${label}: Width: ${width_mm + 2} mm (was ${width_mm} mm)`,
  }),
  kind({
    name: "another edge of a panel",
    table: "panels",
    fits: any,
    does: () => ({ edge: "rounded 2 mm" }),
    says: ({ label, edge }) => `Panel, ${label}: Edge: rounded 2 mm (was ${edge === "" ? "nothing" : edge})`,
  }),
  kind({
    name: "a lane takes less",
    table: "lanes",
    fits: any,
    does: ({ max_diameter_mm }) => ({ max_diameter_mm: (max_diameter_mm ?? 22) - 1 }),
    says: () => [],
  }),
  kind({
    name: "a waypoint moves",
    table: "waypoints",
    fits: ({ panel }) => panel === "playfield",
    does: ({ x_mm }) => ({ x_mm: x_mm + 4 }),
    says: () => [],
  }),
  kind({
    name: "a harness gets a longer service loop",
    table: "harnesses",
    fits: any,
    does: () => ({ service_loop_mm: 75 }),
    says: () => [],
  }),
  kind({
    name: "a net with another wire type",
    table: "nets",
    fits: ({ wire_type }) => wire_type === "hu-22",
    does: () => ({ wire_type: "hu-20" }),
    says: () => [],
  }),
  kind({
    name: "a net is called otherwise",
    table: "nets",
    fits: ({ label }) => label !== "",
    does: () => ({ label: "line seven" }),
    says: ({ label }) => `Net, line seven: is now called “line seven” (was “${label}”)`,
  }),
  kind({
    name: "a part has another order number",
    table: "parts",
    fits: ({ order_number }) => order_number === "",
    does: () => ({ order_number: "98-7654" }),
    says: () => [],
  }),
  kind({
    name: "a screw needs more torque",
    table: "fastener_types",
    fits: ({ torque_nm }) => torque_nm !== null,
    does: ({ torque_nm }) => ({ torque_nm: (torque_nm ?? 0) + 0.1 }),
    says: () => [],
  }),
  kind({
    name: "a dimension of a drawing",
    table: "dimensions",
    fits: ({ plus }) => plus !== null,
    does: ({ plus }) => ({ plus: (plus ?? 0) + 0.05 }),
    says: () => [],
  }),
  kind({
    name: "a gap of a mechanism",
    table: "mechanism_steps",
    fits: ({ max }) => max !== null,
    does: ({ max }) => ({ max: (max ?? 0) + 0.1 }),
    says: () => [],
  }),
  kind({
    name: "a pin is called otherwise",
    table: "pins",
    fits: ({ use }) => use === "live",
    does: () => ({ label: "renamed" }),
    says: () => [],
  }),
  (book) =>
    victims(book, "devices", ({ id }) => id.startsWith("sw.")).map((row) => ({
      name: `take out a switch: ${row.id}`,
      after: drop(
        drop(book, "devices", (one) => one === row),
        "ends",
        ({ point }) => point.startsWith(`${row.id}:`),
      ),
      says: [`${device(row)}: is gone`],
    })),
  (book) =>
    victims(book, "devices", ({ id }) => id.startsWith("lp.")).map((row) => ({
      name: `add a lamp beside: ${row.id}`,
      after: withRows(book, "devices", [
        ...book.tables.devices,
        { ...row, id: `${row.id}-two`, label: `${row.label} two`, x_mm: row.x_mm + 25, number: null },
      ]),
      says: [
        `Device, ${row.label} two: is new: ${book.tables.device_types.find(({ id }) => id === row.type)?.label}, on the ${
          row.side === "top" ? "top side" : "underside"
        } of ${book.tables.panels.find(({ id }) => id === row.panel)?.label}`,
      ],
    })),
  (book) =>
    victims(book, "devices", ({ id }) => id.startsWith("lp.")).map((row) => {
      const renamed = renameId(book, "devices", row.id, `${row.id}-x`);
      if (!renamed.ok) throw new Error(renamed.reason);
      return {
        name: `another id: ${row.id}`,
        after: renamed.book,
        says: [`${device(row)}: was ${row.id} and is now called ${row.id}-x`],
      };
    }),
  (book) =>
    victims(book, "ends", ({ point }) => /^bd\.lamp-\d+:j\d\.\d+$/u.test(point)).map((end) => {
      const board = end.point.split(".").slice(0, -1).join(".");
      const other = book.tables.ends.find(
        ({ point, net }) => point.startsWith(`${board}.`) && point !== end.point && net !== end.net,
      );
      if (other === undefined) throw new Error("no other pin");
      return {
        name: `exchange two pins: ${end.point} and ${other.point}`,
        after: withRows(
          book,
          "ends",
          book.tables.ends.map((one) =>
            one === end ? { ...one, point: other.point } : one === other ? { ...one, point: end.point } : one,
          ),
        ),
        says: [],
      };
    }),
];

/** All of them, a hundred or more. */
export const scriptedChanges = (book: Book): readonly ScriptedChange[] => KINDS.flatMap((of) => of(book));
