import { deepEqual } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Finding } from "../model/index.ts";
import { resolveMachine } from "../model/index.ts";
import { createBook, createMachine, createShop, type SomeTables } from "../testing/book.ts";
import { BoardsSolver } from "./boards-solver.ts";
import { arbitraryParts, boardTables, part, type SomePlacement } from "./testing/boards.ts";
import { boardTests } from "./tests.ts";

const solve = (tables: SomeTables) => new BoardsSolver().solve(createMachine(tables));
const TEST = { id: "t.1", scope: "board" as const, board_type: "bt", order: 1, kind: "visual" as const };
const about = (findings: readonly Finding[], rule: string) =>
  findings.filter((finding) => finding.rule === rule);
const rules = (
  placements: readonly SomePlacement[],
  more: SomeTables = { tests: [TEST] },
): readonly string[] =>
  solve(boardTables(placements, more)).findings.map((f) => `${f.severity} ${f.rule} ${f.subjects.join(" ")}`);

describe("register of boards", () => {
  it("has a line for each type, with its boards, parts and joints", () => {
    const tables = boardTables([part("R1"), part("J1", { joints: 5, x_mm: 60 })], {}, 3);
    const { register } = solve({
      ...tables,
      options: [
        { id: "opt", usual: "yes" },
        { id: "other", usual: "no" },
      ],
      boards: [
        ...(tables.boards ?? []),
        { id: "bd.a", type: "bt", panel: "pl", options: ["opt"] },
        { id: "bd.b", type: "bt", panel: "pl", options: ["other"] },
      ],
      board_types: [
        { id: "bt.z", revision: "B", stuffed_part: "p.ready", width_mm: 10, depth_mm: 10 },
        ...(tables.board_types ?? []),
      ],
      parts: [{ id: "p.ready", kind: "board", source: "have-made" }],
    }).boards;
    expect(register.map((row) => row.typeId)).toEqual(["bt", "bt.z"]);
    expect(register[0]).toMatchObject({
      labels: { en: "Board", zh: "Board" },
      boardIds: ["bd.0", "bd.1", "bd.2", "bd.a"],
      placements: 2,
      joints: 7,
      comes: "stuffed",
    });
    expect(register[1]).toMatchObject({ revision: "B", boardIds: [], placements: 0, comes: "bought" });
  });

  it("has the tests of a type, least risk first, those of other options left out", () => {
    const tests = [
      { ...TEST, id: "t.b", order: 20 },
      { ...TEST, id: "t.a", order: 20 },
      { ...TEST, id: "t.c", order: 10 },
      { ...TEST, id: "t.d", options: ["no"] },
      { ...TEST, id: "t.e", board_type: "other" },
      { ...TEST, id: "t.f", scope: "machine" as const },
    ];
    const machine = createMachine(boardTables([], { tests, options: [{ id: "no", usual: "no" }] }));
    expect(boardTests(machine, "bt").map(({ id }) => id)).toEqual(["t.c", "t.a", "t.b"]);
  });
});

describe("checks of boards", () => {
  const many = Array.from({ length: 60 }, (_, i) =>
    part(`R${i}`, { x_mm: 10 + 9 * (i % 18), y_mm: 10 + 4 * Math.floor(i / 18) }),
  );

  it("find nothing in a sound board", () => {
    expect(rules(many)).toEqual([]);
  });

  it("board-no-parts, unless the board is bought with its parts", () => {
    expect(rules([])).toEqual(["warning board-no-parts bt"]);
    expect(solve({ ...boardTables([]), boards: [] }).findings).toEqual([]);
    const made = boardTables([], { parts: [{ id: "p", kind: "board", source: "make" }] });
    const withPart = (made.board_types ?? []).map((row) => ({ ...row, stuffed_part: "p" }));
    expect(solve({ ...made, board_types: withPart }).findings).toHaveLength(1);
    const bought = { ...made, parts: [{ id: "p", kind: "board" as const, source: "buy" as const }] };
    expect(solve({ ...bought, board_types: withPart }).findings).toEqual([]);
  });

  it("board-no-test and test-no-limits", () => {
    expect(rules(many, {})).toEqual(["warning board-no-test bt"]);
    const measure = { ...TEST, kind: "measure" as const };
    expect(rules(many, { tests: [measure] })).toEqual(["warning test-no-limits t.1"]);
    expect(rules(many, { tests: [{ ...measure, max: 3 }] })).toEqual([]);
    expect(rules(many, { tests: [{ ...measure, min: 0 }] })).toEqual([]);
  });

  it("placement-off: a middle outside, or a body over the edge that is no connector", () => {
    const parts = [
      { id: "p.plug", kind: "connector" as const },
      { id: "p.res", kind: "electronic" as const },
    ];
    const off = (cells: SomePlacement) =>
      about(solve(boardTables([part("X1", cells)], { parts })).findings, "placement-off");
    expect(off({ x_mm: -1 })).toMatchObject([{ severity: "error", numbers: { over_mm: 4 } }]);
    expect(off({ x_mm: 198 })).toMatchObject([{ severity: "warning", numbers: { over_mm: 1 } }]);
    expect(off({ x_mm: 197.4 })).toEqual([]);
    expect(off({ x_mm: 198, rotation_deg: 90 })).toEqual([]);
    expect(off({ x_mm: 199, part: "p.plug" })).toEqual([]);
    expect(off({ x_mm: 201, part: "p.plug" })).toMatchObject([{ severity: "error" }]);
  });

  it("placement-overlap: turned bodies, not those that only touch or lie hidden below", () => {
    const lap = (cells: SomePlacement) =>
      about(solve(boardTables([part("R1"), part("R2", cells)])).findings, "placement-overlap");
    expect(lap({ x_mm: 15 })).toMatchObject([{ subjects: ["bt", "R1", "R2"], numbers: { area_mm2: 2 } }]);
    expect(lap({ x_mm: 16 })).toEqual([]);
    expect(lap({ x_mm: 14.5, rotation_deg: 90 })).toEqual([]);
    expect(lap({ x_mm: 13.5, rotation_deg: 90 })).toHaveLength(1);
    expect(lap({ x_mm: 15, hidden: true })).toEqual([]);
  });

  it("placement-hole: a body where the head of a fixing screw goes", () => {
    const tables = boardTables([part("R1")]);
    const near = (holes: string) => {
      const types = (tables.board_types ?? []).map((row) => ({ ...row, holes }));
      return about(solve({ ...tables, board_types: types }).findings, "placement-hole");
    };
    // R1 reaches from x 7 to 13.
    expect(near("16,10 100,100")).toEqual([]);
    expect(near("100,100 15,10")).toMatchObject([
      { severity: "warning", subjects: ["bt", "R1"], numbers: { gap_mm: 2 } },
    ]);
    expect(near("10,10")).toMatchObject([{ numbers: { gap_mm: 0 } }]);
    expect(near("no,pair 5")).toEqual([]);
  });

  it("placement-too-high", () => {
    const high = (mm: number) =>
      about(solve(boardTables([part("R1", { height_mm: mm })])).findings, "placement-too-high");
    expect(high(30)).toEqual([]);
    expect(high(31)).toMatchObject([{ severity: "error", numbers: { height_mm: 31, board_mm: 30 } }]);
  });

  it("polarity-missing: by the letters of the reference, or where the same part is marked elsewhere", () => {
    const missing = (parts: readonly SomePlacement[]) =>
      about(solve(boardTables(parts)).findings, "polarity-missing").map(({ subjects }) => subjects[1]);
    const at = (n: number) => ({ x_mm: 10 + 10 * n });
    expect(missing([part("D1"), part("Q2", at(1)), part("U3", at(2)), part("R4", at(3))])).toEqual([
      "D1",
      "Q2",
      "U3",
    ]);
    expect(missing([part("D1", { polarity: "ring" })])).toEqual([]);
    const cap = { part: "p.cap" };
    expect(missing([part("C1", cap), part("C2", { ...cap, ...at(1), polarity: "stripe" })])).toEqual(["C1"]);
  });

  it("bath-blocked: a board that takes longer in the bath at any quantity", () => {
    const masked = many.map((row) => ({ ...row, masks: 2 }));
    const [found] = about(solve(boardTables(masked, { tests: [TEST] })).findings, "bath-blocked");
    expect(found).toMatchObject({ severity: "note", subjects: ["bt"], numbers: { masks: 120, joints: 120 } });
    const late = many.map((row) => ({ ...row, after_wash: true }));
    expect(rules(late)).toEqual(["note bath-blocked bt"]);
  });
});

describe("memory", () => {
  it("gives what from scratch gives, and keeps what did not change (seed 51)", () => {
    const one = createBook(boardTables([part("R1")]));
    const shop = createShop();
    const solver = new BoardsSolver();
    fc.assert(
      fc.property(arbitraryParts, fc.integer({ min: 0, max: 3 }), (placements, boards) => {
        const fresh = boardTables([...placements, part("R1", { board_type: "bt.other" })], {}, boards);
        const other = { id: "bt.other", revision: "A", width_mm: 50, depth_mm: 50, height_mm: 9 };
        const book = createBook({ ...fresh, board_types: [...(fresh.board_types ?? []), other] });
        const now = resolveMachine({ ...one, tables: book.tables }, shop);
        const before = solver.solve(now);
        solver.sweep();
        expect(before).toEqual(new BoardsSolver().solve(now));
        expect(solver.solve(now)).toBe(before);
        solver.sweep();
      }),
      { seed: 51, numRuns: 40 },
    );
  });

  it("looks anew only at the type whose part was moved, and at none when a board is moved", () => {
    const tables = boardTables([part("R1"), part("R1", { board_type: "bt.other" })], { tests: [TEST] });
    const types = [
      ...(tables.board_types ?? []),
      { id: "bt.other", revision: "A", width_mm: 50, depth_mm: 50 },
    ];
    const book = createBook({ ...tables, board_types: types });
    const shop = createShop();
    const solver = new BoardsSolver();
    const first = solver.solve(resolveMachine(book, shop));
    const count = solver.computed;
    const boards = book.tables.boards.map((row) => ({ ...row, x_mm: row.x_mm + 5 }));
    const moved = solver.solve(resolveMachine({ ...book, tables: { ...book.tables, boards } }, shop));
    expect(moved.boards).toBe(first.boards);
    expect(moved.findings).toBe(first.findings);
    expect(solver.computed).toBe(count);
    const placements = book.tables.placements.map((row) =>
      row.board_type === "bt" ? { ...row, joints: 3 } : row,
    );
    const other = solver.solve(resolveMachine({ ...book, tables: { ...book.tables, placements } }, shop));
    // The line of the type and its three checks of parts; its check as a whole, for its line is another.
    expect(solver.computed - count).toBe(5);
    expect(other.boards.register[1]).toBe(first.boards.register[1]);
    expect(deepEqual(other.boards, first.boards)).toBe(false);
  });
});
