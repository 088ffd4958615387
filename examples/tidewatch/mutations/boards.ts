import type { BookRow } from "@pinwright/book";
import type { BoardRegisterRow } from "@pinwright/engine";
import { ids, isFreeOf, least, most, some } from "./about.ts";
import type { Mutation, Sound } from "./mutation.ts";

type Placement = BookRow<"placements">;

const placements = ({ machine }: Sound): readonly Placement[] => machine.book.tables.placements;
const partsOn = (sound: Sound, typeId: string): readonly Placement[] =>
  placements(sound).filter((row) => row.board_type === typeId);
const at = ({ board_type, reference }: Placement) => ({ board_type, reference });

const stuffed = ({ boards }: Sound): readonly BoardRegisterRow[] =>
  boards.register.filter((row) => row.comes === "stuffed" && row.boardIds.length > 0);

/** Types stuffed here that a session would put into the bath. */
const bathTypes = (sound: Sound): readonly BoardRegisterRow[] => {
  const isFree = isFreeOf(sound, "bath-blocked");
  return stuffed(sound).filter((row) => isFree(row.typeId));
};

/** The board with fewest parts, each of which is on another type of board, too: none of them is wanted no more. */
const replaceable = (sound: Sound): BoardRegisterRow =>
  least(
    bathTypes(sound).filter((row) =>
      partsOn(sound, row.typeId).every(({ part }) =>
        placements(sound).some((other) => other.part === part && other.board_type !== row.typeId),
      ),
    ),
    (row) => row.placements,
  );

const sizeOf = (sound: Sound, { board_type }: Placement) => {
  const type = sound.machine.book.tables.board_types.find((row) => row.id === board_type);
  if (type === undefined) throw new Error(`No type ${board_type}.`);
  return type;
};

/** Two alike parts of one board that lie nearest to one another. */
function nearestPair(sound: Sound): readonly [Placement, Placement] {
  const pairs = placements(sound).flatMap((a) =>
    placements(sound)
      .filter((b) => b.board_type === a.board_type && b.part === a.part && b.reference > a.reference)
      .map((b) => [a, b] as const),
  );
  return least(pairs, ([a, b]) => Math.hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm));
}

export const boards: readonly Mutation[] = [
  {
    name: "the board with fewest parts, all of them on other boards too, without its parts",
    rule: "board-no-parts",
    plan: (sound) => {
      const { typeId } = replaceable(sound);
      return {
        victim: [typeId],
        change: (edit) => edit.remove("placements", { board_type: typeId }),
      };
    },
  },
  {
    name: "the board with most joints, without its tests",
    rule: "board-no-test",
    plan: (sound) => {
      const { typeId } = most(stuffed(sound), (row) => row.joints);
      const { tests, test_steps } = sound.machine.book.tables;
      const own = new Set(
        tests.filter((row) => row.scope === "board" && row.board_type === typeId).map(({ id }) => id),
      );
      return {
        victim: [typeId],
        change: (edit) => {
          edit.remove("tests", { scope: "board", board_type: typeId });
          for (const test of new Set(test_steps.map((row) => row.test)))
            if (own.has(test)) edit.remove("test_steps", { test });
        },
      };
    },
  },
  {
    name: "the smallest part, pushed off the right edge of its board",
    rule: "placement-off",
    plan: (sound) => {
      const row = least(placements(sound), (p) => p.width_mm * p.depth_mm);
      const { width_mm } = sizeOf(sound, row);
      return {
        victim: [row.board_type, row.reference],
        change: (edit) => edit.set("placements", at(row), { x_mm: width_mm + row.width_mm }),
      };
    },
  },
  {
    name: "the part nearest to the right edge that is no header, a third of it over the edge",
    rule: "placement-off",
    plan: (sound) => {
      const row = least(
        placements(sound).filter((p) => p.reference.startsWith("R")),
        (p) => sizeOf(sound, p).width_mm - p.x_mm,
      );
      const { width_mm } = sizeOf(sound, row);
      return {
        victim: [row.board_type, row.reference],
        change: (edit) => edit.set("placements", at(row), { x_mm: width_mm - row.width_mm / 6 }),
        follows: [some("placement-overlap", ids(row.reference))],
      };
    },
  },
  {
    name: "the nearer of the two alike parts that lie nearest, moved onto the other",
    rule: "placement-overlap",
    plan: (sound) => {
      const [a, b] = nearestPair(sound);
      return {
        victim: [a.board_type, a.reference, b.reference],
        change: (edit) =>
          edit.set("placements", at(b), { x_mm: a.x_mm + a.width_mm / 2, y_mm: a.y_mm + a.depth_mm / 2 }),
        follows: [some("placement-overlap", ids(b.reference))],
      };
    },
  },
  {
    name: "the smallest part of the board with most joints, moved onto its last fixing hole",
    rule: "placement-hole",
    plan: (sound) => {
      const { typeId } = most(stuffed(sound), (row) => row.joints);
      const row = least(partsOn(sound, typeId), (p) => p.width_mm * p.depth_mm);
      const [x_mm = "", y_mm = ""] = (sizeOf(sound, row).holes.split(" ").at(-1) ?? "").split(",");
      return {
        victim: [typeId, row.reference],
        change: (edit) => edit.set("placements", at(row), { x_mm, y_mm }),
        follows: [some("placement-overlap", ids(row.reference))],
      };
    },
  },
  {
    name: "the part that leaves least room under the height of its board, twice as high",
    rule: "placement-too-high",
    plan: (sound) => {
      const row = least(placements(sound), (p) => sizeOf(sound, p).height_mm - p.height_mm);
      return {
        victim: [row.board_type, row.reference],
        change: (edit) => edit.set("placements", at(row), { height_mm: row.height_mm * 2 }),
      };
    },
  },
  {
    name: "the highest part with a mark on the board that has most of them, without its mark",
    rule: "polarity-missing",
    plan: (sound) => {
      const marked = (typeId: string) => partsOn(sound, typeId).filter((p) => p.polarity !== "");
      const { typeId } = most(stuffed(sound), (row) => marked(row.typeId).length);
      const row = most(marked(typeId), (p) => p.height_mm);
      return {
        victim: [row.board_type, row.reference, row.part],
        change: (edit) => edit.set("placements", at(row), { polarity: "" }),
      };
    },
  },
  {
    name: "the measurement of a board with the narrowest limits, without limits",
    rule: "test-no-limits",
    plan: (sound) => {
      const measured = sound.machine.book.tables.tests.filter(
        (row) => row.scope === "board" && row.kind === "measure" && row.min !== null && row.max !== null,
      );
      const row = least(measured, ({ min, max }) => ((max ?? 0) - (min ?? 0)) / (max ?? 1));
      return {
        victim: [row.id],
        change: (edit) => edit.set("tests", { id: row.id }, { min: "", max: "" }),
      };
    },
  },
  {
    name: "the board that gains most in the bath, with three masks at every part",
    rule: "bath-blocked",
    plan: (sound) => {
      const { typeId } = most(bathTypes(sound), (row) => row.joints);
      return {
        victim: [typeId],
        change: (edit) => edit.set("placements", { board_type: typeId }, { masks: 3 }),
      };
    },
  },
];
