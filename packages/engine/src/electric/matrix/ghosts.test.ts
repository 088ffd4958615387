import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createMachine } from "../../testing/book.ts";
import { createMatrixTables, type TestSwitch } from "../../testing/matrix.ts";
import { ngspice } from "../physics/testing/ngspice.ts";
import { checkMatrices } from "./check-ghosts.ts";
import { type Crossing, type SwitchMatrix, switchMatrices } from "./find.ts";
import { ghostSets, ghostsOf, type MatrixGrid, missingDiodes, readsClosed } from "./ghosts.ts";

const full = (columns: number, rows: number, diode: TestSwitch["diode"]): readonly TestSwitch[] =>
  Array.from({ length: columns * rows }, (_, i) => ({
    id: `s${1 + (i % columns)}${1 + Math.floor(i / columns)}`,
    x: 50 + 50 * (i % columns),
    y: 200 + 60 * Math.floor(i / columns),
    column: 1 + (i % columns),
    row: 1 + Math.floor(i / columns),
    ...(diode === undefined ? {} : { diode }),
  }));

const matrixOf = (
  columns: number,
  rows: number,
  switches: readonly TestSwitch[],
  more: { high?: boolean; inline?: boolean } = {},
): SwitchMatrix => {
  const matrix = switchMatrices(createMachine(createMatrixTables({ columns, rows, switches, ...more })))[0];
  if (matrix === undefined) throw new Error("no matrix was found");
  return matrix;
};

describe("switchMatrices", () => {
  test.each([[{}], [{ high: true }], [{ inline: true }]])(
    "finds lines and crossings by elements and nets alone %j",
    (more) => {
      const switches = full(3, 4, "none").filter(({ id }) => id !== "s24");
      const matrix = matrixOf(3, 4, switches, more);
      expect(matrix.id).toBe("mx");
      expect(matrix.columns.map((line) => line.id)).toEqual(["col.1", "col.2", "col.3"]);
      expect(matrix.rows.map((line) => line.id)).toEqual(["row.1", "row.2", "row.3", "row.4"]);
      expect(matrix.crossings.map(({ itemId, column, row }) => `${itemId} ${column} ${row}`)).toEqual(
        switches.map(({ id, column, row }) => `${id} ${column - 1} ${row - 1}`).sort(),
      );
    },
  );

  test("knows an idle line that has a net, and a diode within the switch, in its wire or the wrong way round", () => {
    const switches: TestSwitch[] = [
      { id: "a", x: 0, y: 200, column: 1, row: 1, diode: "with" },
      { id: "b", x: 0, y: 300, column: 1, row: 2, diode: "against" },
      { id: "c", x: 0, y: 400, column: 2, row: 1, diode: "apart" },
      { id: "d", x: 0, y: 500, column: 2, row: 2 },
    ];
    const matrix = matrixOf(3, 3, switches);
    expect(matrix.columns).toHaveLength(3);
    expect(matrix.rows).toHaveLength(3);
    expect(matrix.crossings.map((c) => c.diode)).toEqual(["with", "against", "with", "none"]);
    expect(matrix.crossings[2]?.rowPointId).toBe("c.diode:a");
    const machine = createMachine(createMatrixTables({ columns: 3, rows: 3, switches }));
    expect(checkMatrices(machine).map((f) => `${f.rule} ${f.subjects[0]}`)).toEqual([
      "matrix-diode-reversed b",
    ]);
  });
});

/** A matrix of up to 3 × 3 with any switches and diodes. */
const grids: fc.Arbitrary<MatrixGrid> = fc
  .record({
    columns: fc.integer({ min: 2, max: 3 }),
    rows: fc.integer({ min: 2, max: 3 }),
    current: fc.constantFrom("row-to-column" as const, "column-to-row" as const),
    places: fc.array(fc.constantFrom("none" as const, "with" as const, "against" as const, null), {
      minLength: 9,
      maxLength: 9,
    }),
  })
  .map(({ columns, rows, current, places }) => ({
    columns: Array.from({ length: columns }, () => ({ current })),
    rows: Array.from({ length: rows }),
    crossings: places.slice(0, columns * rows).flatMap((diode, i): Crossing[] =>
      diode === null
        ? []
        : [
            {
              id: `s${i}`,
              itemId: `s${i}`,
              column: i % columns,
              row: Math.floor(i / columns),
              diode,
              columnPointId: "",
              rowPointId: "",
            },
          ],
    ),
  }));

/** Which lines current gets to from which, by Warshall's closure over a matrix of truth values: another way than the one under test. */
function closure(grid: MatrixGrid, closed: readonly Crossing[]): (from: number, to: number) => boolean {
  const n = grid.columns.length + grid.rows.length;
  const joined = Array.from({ length: n }, (_, i) => Array.from({ length: n }, (__, j) => i === j));
  const set = (a: number, b: number): void => {
    const row = joined[a];
    if (row !== undefined) row[b] = true;
  };
  for (const { column, row, diode } of closed) {
    const r = grid.columns.length + row;
    const down = grid.columns[column]?.current === "row-to-column";
    if (diode === "none" || (diode === "with") === down) set(r, column);
    if (diode === "none" || (diode === "against") === down) set(column, r);
  }
  for (let k = 0; k < n; k++)
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) if (joined[i]?.[k] === true && joined[k]?.[j] === true) set(i, j);
  return (from, to) => joined[from]?.[to] === true;
}

function bruteReads(grid: MatrixGrid, closed: readonly Crossing[]): readonly string[] {
  const joined = closure(grid, closed);
  return grid.columns.flatMap(({ current }, column) =>
    grid.rows.flatMap((_, row) => {
      const r = grid.columns.length + row;
      return (current === "row-to-column" ? joined(r, column) : joined(column, r))
        ? [`${column} ${row}`]
        : [];
    }),
  );
}

const subsets = <T>(list: readonly T[]): readonly (readonly T[])[] =>
  Array.from({ length: 2 ** list.length }, (_, bits) => list.filter((__, i) => (bits >> i) % 2 === 1));

describe("ghosts, against every closed set", () => {
  test("readsClosed", () => {
    fc.assert(
      fc.property(grids, (grid) => {
        for (const closed of subsets(grid.crossings)) {
          const reads = readsClosed(grid, new Set(closed.map((c) => c.id)));
          expect(reads.map(({ column, row }) => `${column} ${row}`)).toEqual(bruteReads(grid, closed));
        }
      }),
      { seed: 1, numRuns: 12 },
    );
  });

  test("ghostSets are the smallest sets that make an open place read closed, each once", () => {
    fc.assert(
      fc.property(grids, fc.nat(2), fc.nat(1), (grid, column, row) => {
        if (column >= grid.columns.length) return;
        const others = grid.crossings.filter((c) => c.column !== column || c.row !== row);
        const ghosting = subsets(others).filter((set) => bruteReads(grid, set).includes(`${column} ${row}`));
        const smallest = ghosting.filter(
          (set) => !ghosting.some((less) => less.length < set.length && less.every((c) => set.includes(c))),
        );
        const text = (set: readonly Crossing[]): string =>
          set
            .map((c) => c.id)
            .sort()
            .join(" ");
        const found = ghostSets(grid, { column, row }, 5);
        expect(found.map(text).sort()).toEqual(smallest.map(text).sort());
      }),
      { seed: 2, numRuns: 40 },
    );
  });

  test("with every missing diode put in, no closed set has a ghost on a switch; with one left out, some has", () => {
    fc.assert(
      fc.property(grids, (drawn) => {
        const grid = { ...drawn, crossings: drawn.crossings.filter((c) => c.diode !== "against") };
        const isSwitch = new Set(grid.crossings.map((c) => `${c.column} ${c.row}`));
        const hasGhost = (g: MatrixGrid): boolean =>
          subsets(g.crossings).some((closed) =>
            ghostsOf(g, new Set(closed.map((c) => c.id))).some((p) => isSwitch.has(`${p.column} ${p.row}`)),
          );
        const missing = missingDiodes(grid);
        expect(missing.length > 0).toBe(hasGhost(grid));
        for (const { ghost, closed } of missing) {
          expect(closed).not.toContain(ghost);
          expect(bruteReads(grid, closed)).toContain(`${ghost.column} ${ghost.row}`);
        }
        const mended = new Set(missing.map((m) => m.crossing.id));
        const crossings = grid.crossings.map((c) =>
          mended.has(c.id) ? { ...c, diode: "with" as const } : c,
        );
        expect(hasGhost({ ...grid, crossings })).toBe(false);
      }),
      { seed: 3, numRuns: 25 },
    );
  });
});

describe("missing diodes", () => {
  test("a plain matrix: every switch, three corners of a rectangle; with diodes: none", () => {
    const plain = createMachine(createMatrixTables({ columns: 3, rows: 3, switches: full(3, 3, "none") }));
    const found = checkMatrices(plain);
    expect(found).toHaveLength(9);
    for (const { rule, numbers } of found) {
      expect(rule).toBe("matrix-ghost");
      expect(numbers.closed).toBe(3);
    }
    expect(
      checkMatrices(createMachine(createMatrixTables({ columns: 3, rows: 3, switches: full(3, 3, "with") }))),
    ).toEqual([]);
  });

  test("a ring of six places has no rectangle: five switches make the sixth a ghost", () => {
    const ring = full(3, 3, "none").filter(({ column, row }) => column === row || column === (row % 3) + 1);
    const matrix = matrixOf(3, 3, ring);
    const missing = missingDiodes(matrix);
    expect(missing).toHaveLength(6);
    for (const { closed } of missing) expect(closed).toHaveLength(5);
  });
});

/** Row voltages with one column pulled down: pull-ups of 4.7 kΩ to 5 V, contacts of 0.05 Ω, driver of 1 Ω. */
function ngspiceRows(grid: MatrixGrid, closed: readonly Crossing[], column: number): readonly number[] {
  const deck = [
    "* switch matrix",
    "V1 vcc 0 DC 5",
    ".model d1 D(IS=2.5e-9 N=1.8 RS=0.6)",
    ...grid.rows.map((_, r) => `Rp${r} vcc r${r} 4700`),
    ...grid.columns.map((_, c) => `Rc${c} c${c} 0 ${c === column ? 1 : 1e9}`),
    ...closed.flatMap(({ column: c, row: r, diode }, i) =>
      diode === "none"
        ? [`Rs${i} r${r} c${c} 0.05`]
        : [`D${i} ${diode === "with" ? `r${r} m${i}` : `m${i} r${r}`} d1`, `Rs${i} m${i} c${c} 0.05`],
    ),
    ".op",
    ".control",
    "run",
    ...grid.rows.flatMap((_, r) => [`let row${r} = v(r${r})`, `print row${r}`]),
    ".endc",
    ".end",
  ].join("\n");
  const volts = ngspice(`${deck}\n`);
  return grid.rows.map((_, r) => volts.get(`row${r}`) ?? Number.NaN);
}

describe("ngspice", () => {
  test.each([
    ["none", "s11 s12 s21"],
    ["none", "s11 s22 s33"],
    ["with", "s11 s12 s21"],
    ["mixed", "s11 s12 s21 s33"],
    ["mixed", "s11 s12 s23 s31"],
  ] as const)(
    "diodes %s, closed %s: a row is pulled below 1.5 V exactly where a place reads closed",
    (diodes, names) => {
      const switches = full(3, 3, "none").map((s, i) => ({
        ...s,
        diode: diodes === "mixed" ? (i % 3 === 0 ? "none" : "with") : diodes,
      }));
      const grid = matrixOf(3, 3, switches as readonly TestSwitch[]);
      const closed = grid.crossings.filter((c) => names.split(" ").includes(c.itemId));
      const reads = new Set(
        readsClosed(grid, new Set(closed.map((c) => c.id))).map((p) => `${p.column} ${p.row}`),
      );
      for (const column of grid.columns.keys())
        ngspiceRows(grid, closed, column).forEach((volts, row) => {
          expect(volts < 1.5, `column ${column} row ${row}: ${volts} V`).toBe(reads.has(`${column} ${row}`));
          expect(volts < 1.5 || volts > 4).toBe(true);
        });
    },
  );
});
