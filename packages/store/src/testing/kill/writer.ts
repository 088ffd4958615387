/** Process that writes to a store until it is killed, and says on its output what was acknowledged. */
import { writeSync } from "node:fs";
import { openStore } from "../../open.ts";
import type { Outcome } from "../../store.ts";
import { done } from "../cells.ts";
import { KILL_BOOK, WRITERS, type WriterTask, writerChanges, writerTexts } from "./book.ts";

const task: WriterTask = JSON.parse(process.argv[2] ?? "");
const say = (line: string) => writeSync(1, `${line}\n`);

const store = await openStore(task.place, {
  now: () => new Date().toISOString(),
  newId: () => {
    throw new Error("a writer makes nothing that needs an id");
  },
});

async function write(writer: number): Promise<never> {
  const actor = { personId: `writer-${writer}`, personName: `Writer ${writer}` };
  const tell = (id: string, outcome: Outcome<{ readonly no: number }>) => say(`${id} ${done(outcome).no}`);
  const { tables } = done(await store.books.rows(KILL_BOOK));
  let [text = ""] = writerTexts(tables, writer);
  for (let n = 0; ; n += 1) {
    const id = `set-${task.round}-${writer}-${n}`;
    const to = `${task.round}.${n}`;
    const set = { id, kind: "edit", note: "", changes: writerChanges(writer, text, to) } as const;
    tell(id, await store.books.change(KILL_BOOK, set, actor));
    text = to;
    if (n % 3 !== 2) continue;
    tell(`${id}-undo`, await store.books.undo(KILL_BOOK, `${id}-undo`, actor));
    tell(`${id}-redo`, await store.books.redo(KILL_BOOK, `${id}-redo`, actor));
  }
}

say("ready");
await Promise.all(Array.from({ length: WRITERS }, (_, writer) => write(writer)));
