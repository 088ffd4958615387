import type { Book } from "../../packages/book/src/index.ts";

/** Harnesses that end at an item, by the rows of ends. */
export const harnessesAt = (book: Book, item: string): readonly string[] => [
  ...new Set(
    book.tables.ends.flatMap(({ point, harness }) =>
      point.startsWith(`${item}:`) || point.startsWith(`${item}/`) ? [harness] : [],
    ),
  ),
];

/** Harnesses that a net runs in. */
export const harnessesOf = (book: Book, net: string): readonly string[] => [
  ...new Set(book.tables.ends.flatMap((end) => (end.net === net ? [end.harness] : []))),
];

/** Harnesses whose kept trunk goes along a lane or crossing, or that leave it at a waypoint. */
export function harnessesAlong(book: Book, ids: readonly string[], waypoint = ""): readonly string[] {
  const found = book.tables.choices.flatMap(({ kind, subject, value }) =>
    kind === "trunk" && value.split(" ").some((id) => ids.includes(id))
      ? [subject]
      : kind === "attach" && value === waypoint
        ? [subject.split("|")[0] ?? ""]
        : [],
  );
  return [...new Set(found)];
}

/** Lanes and crossings at a waypoint. */
export const waysAt = (book: Book, waypoint: string): readonly string[] =>
  [...book.tables.lanes, ...book.tables.crossings].flatMap(({ id, from, to }) =>
    from === waypoint || to === waypoint ? [id] : [],
  );

/** Harnesses that end at boards of a type; with a connector, those that end at it. */
export const harnessesOfType = (book: Book, boardType: string, connector = ""): readonly string[] => {
  const begins = book.tables.boards.flatMap(({ id, type }) =>
    type === boardType ? [connector === "" ? `${id}:` : `${id}:${connector}.`] : [],
  );
  return [
    ...new Set(
      book.tables.ends.flatMap(({ point, harness }) =>
        begins.some((begin) => point.startsWith(begin)) ? [harness] : [],
      ),
    ),
  ];
};

/** Part of a name of a sheet: `bt.switch16` is `bt-switch16` there. */
export const inName = (id: string): string => id.replaceAll(".", "-");
