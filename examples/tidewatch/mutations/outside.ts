import type { BookRow } from "@pinwright/book";
import { most } from "./about.ts";
import type { Mutation, Sound } from "./mutation.ts";

/** Drawings of the present revision of each part that has some. */
function drawn({ machine }: Sound): readonly (readonly [BookRow<"parts">, readonly BookRow<"drawings">[]])[] {
  const { parts, drawings } = machine.book.tables;
  return parts.flatMap((part) => {
    const own = drawings.filter((row) => row.part === part.id && row.revision === part.revision);
    return own.length === 0 ? [] : [[part, own] as const];
  });
}

/** The part with the most drawings. */
const mostDrawn = (sound: Sound) => most(drawn(sound), ([, own]) => own.length);

/** The marked dimension with the tightest tolerance. */
const tightest = ({ machine }: Sound): BookRow<"dimensions"> =>
  most(
    machine.book.tables.dimensions.filter(({ nominal }) => nominal !== null),
    ({ minus, plus }) => -(minus + plus),
  );

/** Mistakes in what shops are told of the parts that they make. */
export const outside: readonly Mutation[] = [
  {
    name: "the part with the most drawings goes to a revision that nobody has drawn",
    rule: "drawing-old",
    plan: (sound) => {
      const [{ id }] = mostDrawn(sound);
      return { victim: [id], change: (edit) => edit.set("parts", { id }, { revision: "Z" }) };
    },
  },
  {
    name: "the part with the most drawings loses its revision",
    rule: "drawing-no-revision",
    plan: (sound) => {
      const [{ id }] = mostDrawn(sound);
      return { victim: [id], change: (edit) => edit.set("parts", { id }, { revision: "" }) };
    },
  },
  {
    name: "a drawing of the part with the most of them is named for another revision, too",
    rule: "drawing-shared",
    plan: (sound) => {
      const [{ id }, [row]] = mostDrawn(sound);
      const file = row?.file ?? "";
      return {
        victim: [id],
        change: (edit) => edit.addLike("drawings", { part: id, file }, { revision: "Z" }),
      };
    },
  },
  {
    name: "the drawings of the part with the tightest dimension are taken out",
    rule: "drawing-none",
    plan: (sound) => {
      const id = tightest(sound).part;
      return { victim: [id], change: (edit) => edit.remove("drawings", { part: id }) };
    },
  },
  {
    name: "the tightest dimension loses its tolerance",
    rule: "dimension-odd",
    plan: (sound) => {
      const { part, mark } = tightest(sound);
      return {
        victim: [part],
        change: (edit) => edit.set("dimensions", { part, mark }, { minus: "", plus: "" }),
      };
    },
  },
  {
    name: "nobody says any more what the part with the most drawings is made of",
    rule: "made-unsaid",
    plan: (sound) => {
      const [{ id }] = mostDrawn(sound);
      return {
        victim: [id],
        change: (edit) => edit.set("parts", { id }, { material: "" }),
      };
    },
  },
];
