import type { BookRow } from "@pinwright/book";
import { compareText, deepEqual, Query, sameMembers } from "@pinwright/kernel";
import {
  appliesTo,
  type BoardRegisterRow,
  type BoardsResult,
  type Finding,
  groupRows,
  type Machine,
  rowsById,
} from "../model/index.ts";
import { checkPlacements } from "./checks/placement-checks.ts";
import { checkBath, checkBoardType, checkPolarity, checkTests } from "./checks/type-checks.ts";
import { type Placement, placementsByType } from "./joints.ts";
import { registerRow } from "./register.ts";

export interface Registered {
  readonly boards: BoardsResult;
  readonly findings: readonly Finding[];
}

/** No boards yet. */
export const NO_BOARDS: BoardsResult = { register: [] };

type Kinds = ReadonlyMap<string, BookRow<"parts">["kind"]>;

/**
 * The register of boards and what is wrong with them, with a memory: a type is looked at anew when its row, its parts,
 * its tests or its boards have changed. Where the boards are does not matter.
 */
export class BoardsSolver {
  readonly #groups = new Query<ReadonlyMap<string, readonly Placement[]>>(Object.is);
  readonly #own = new Query<readonly Placement[]>(sameMembers);
  readonly #ids = new Query<ReadonlyMap<string, readonly string[]>>(deepEqual);
  readonly #parts = new Query<ReadonlyMap<string, BookRow<"parts">>>(Object.is);
  readonly #kinds = new Query<Kinds>(deepEqual);
  readonly #marked = new Query<ReadonlySet<string>>(deepEqual);
  readonly #tested = new Query<ReadonlyMap<string, number>>(deepEqual);
  readonly #rows = new Query<BoardRegisterRow>(deepEqual);
  readonly #result = new Query<BoardsResult>(Object.is);
  readonly #checks = new Query<readonly Finding[]>(deepEqual);
  readonly #findings = new Query<readonly Finding[]>(sameMembers);
  readonly #all = new Query<Registered>(Object.is);

  /** @param machine book and shop; its items are not looked at */
  solve(machine: Machine): Registered {
    const t = machine.book.tables;
    const { numbers } = machine.shop;
    // Nothing else is read, so that an edit elsewhere costs one comparison.
    const inputs = [t.board_types, t.boards, t.placements, t.parts, t.tests, machine.book.outlines, numbers];
    return this.#all.ask("all", [...inputs, ...machine.options], () => this.#solve(machine));
  }

  /** How many lines and checks of types were computed so far, for tests of growth. */
  get computed(): number {
    return this.#rows.computed + this.#checks.computed;
  }

  sweep(): void {
    this.#all.sweep();
  }

  #solve(machine: Machine): Registered {
    const { board_types, placements, parts, tests } = machine.book.tables;
    const groups = this.#groups.ask("all", [placements], () => placementsByType(machine));
    const ids = this.#idsOf(machine);
    const byId = this.#parts.ask("all", [parts], () => rowsById(parts));
    const tested = this.#tested.ask("all", [tests], () => testsByType(tests));
    const types = [...rowsById(board_types).values()].sort((a, b) => compareText(a.id, b.id));
    const register = types.map((type) => {
      const rows = this.#own.ask(type.id, [groups], () => groups.get(type.id) ?? []);
      const own = ids.get(type.id) ?? NONE;
      const stuffed = byId.get(type.stuffed_part ?? "");
      return this.#rows.ask(type.id, [type, rows, stuffed, own], () => registerRow(type, own, rows, stuffed));
    });
    const lists = [
      ...types.flatMap((type) => this.#checkParts(machine, type, groups)),
      ...register.map((row) => {
        const count = tested.get(row.typeId) ?? 0;
        return this.#checks.ask(`type ${row.typeId}`, [row, count], () => checkBoardType(row, count));
      }),
      this.#checks.ask("tests", [tests], () => checkTests(tests)),
    ];
    const result = {
      boards: this.#result.ask("all", register, () => ({ register })),
      findings: this.#findings.ask("all", lists, () => lists.flat()),
    };
    this.#sweepParts();
    return result;
  }

  #checkParts(
    machine: Machine,
    type: BookRow<"board_types">,
    groups: ReadonlyMap<string, readonly Placement[]>,
  ): readonly (readonly Finding[])[] {
    const { placements, parts } = machine.book.tables;
    const { numbers } = machine.shop;
    const rows = this.#own.ask(type.id, [groups], () => groups.get(type.id) ?? []);
    const kinds = this.#kinds.ask("all", [parts], () => new Map(parts.map((part) => [part.id, part.kind])));
    const marked = this.#marked.ask("all", [placements], () => markedParts(placements));
    const outline = type.outline === null ? undefined : machine.book.outlines.get(type.outline);
    return [
      this.#checks.ask(`places ${type.id}`, [type, rows, outline, kinds], () =>
        checkPlacements(type, outline, rows, kinds),
      ),
      this.#checks.ask(`polarity ${type.id}`, [type.id, rows, marked], () =>
        checkPolarity(type.id, rows, marked),
      ),
      this.#checks.ask(`bath ${type.id}`, [type, rows, numbers], () => checkBath(type, rows, numbers)),
    ];
  }

  #idsOf(machine: Machine): ReadonlyMap<string, readonly string[]> {
    const { boards } = machine.book.tables;
    return this.#ids.ask("all", [boards, ...machine.options], () => {
      const own = boards.filter((row) => appliesTo(row, machine.options));
      const groups = groupRows(own, (row) => row.type);
      return new Map([...groups].map(([type, rows]) => [type, rows.map((row) => row.id).sort(compareText)]));
    });
  }

  #sweepParts(): void {
    for (const query of [
      this.#groups,
      this.#own,
      this.#ids,
      this.#parts,
      this.#kinds,
      this.#marked,
      this.#tested,
      this.#rows,
      this.#result,
      this.#checks,
      this.#findings,
    ])
      query.sweep();
  }
}

const NONE: readonly string[] = [];

/** Parts that are marked with their right way round at any place. */
const markedParts = (rows: readonly Placement[]): ReadonlySet<string> =>
  new Set(rows.filter((row) => row.polarity !== "").map((row) => row.part));

/** How many tests each board type has. */
const testsByType = (tests: readonly BookRow<"tests">[]): ReadonlyMap<string, number> =>
  new Map(
    [...groupRows(tests, (row) => (row.scope === "board" ? row.board_type : null))].map(([type, rows]) => [
      type,
      rows.length,
    ]),
  );
