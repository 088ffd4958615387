import type { BookTableName, BookTables } from "@pinwright/book";
import { BOOK_TABLES } from "@pinwright/book";
import { TOPICS } from "./topics.ts";

/** All tables of the machine, in the order of the topics, and its outline drawings as SVG text. */
export const assemble = (): { tables: BookTables; outlines: ReadonlyMap<string, string> } => {
  const merged: Record<string, unknown[]> = {};
  const outlines = new Map<string, string>();
  for (const name of Object.keys(BOOK_TABLES)) merged[name] = [];
  for (const topic of TOPICS) {
    for (const [name, added] of Object.entries(topic.tables)) merged[name]?.push(...added);
    for (const [file, svg] of Object.entries(topic.outlines ?? {})) {
      if (outlines.has(file)) throw new Error(`Two topics draw the outline ${file}.`);
      outlines.set(file, svg);
    }
  }
  // Every name of BOOK_TABLES has been given its list, and only a topic's typed rows went in.
  return { tables: merged as { [N in BookTableName]: [] }, outlines };
};
