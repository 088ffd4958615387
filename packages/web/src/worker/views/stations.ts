import type { NamedId } from "../steps/named.ts";
import { view } from "./view.ts";

/** A bench of the book. */
export interface Station extends NamedId {
  readonly people: number;
  readonly skills: readonly string[];
  readonly tools: string;
}

/** Every station in the order of the book, which is the order of the line. */
export const stations = view<null, Station>({
  uses: ({ book }) => [book.tables.stations],
  entries: ({ book }) =>
    new Map(
      book.tables.stations.map(({ id, label, label_zh, people, skills, tools }) => [
        id,
        { id, label, labelZh: label_zh, people, skills, tools },
      ]),
    ),
  restsInPreview: true,
});
