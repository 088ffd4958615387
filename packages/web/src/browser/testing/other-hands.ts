import { setImmediate } from "node:timers/promises";
import { type CellTables, LiveBook } from "@pinwright/book";
import { bookRowsSchema, type FactBody, ROUTES, SHOP_ID, type UnitGate } from "@pinwright/contract";
import { Line } from "@pinwright/engine";
import { MemoryStore } from "../../floor/outbox/memory-store.ts";
import { Outbox } from "../../floor/outbox/outbox.ts";
import { Sender } from "../../floor/outbox/sender.ts";
import { type Task, tasksOf, type Work } from "../../floor/tasks/tasks.ts";
import type { Model } from "../../worker/model.ts";
import { optionsOf } from "../../worker/options-of.ts";
import { floorWork } from "../../worker/views/floor-work.ts";
import { stepLines } from "../../worker/views/step-lines.ts";
import { asking } from "./floor-hand.ts";

type Kind = "machine" | "board" | "harness";

/** Others of the same works: what they do is recorded through the floor's own outbox, without a page. */
export interface OtherHands {
  /** What a unit of a kind and type takes, as the floor's page has it. */
  readonly work: (what: Kind, type: string) => Work;
  /** The same as the list of tasks that the page goes through. */
  readonly tasks: (what: Kind, type: string, unit: string) => readonly Task[];
  /** Places that a step fills, by the step's name in Chinese. */
  readonly filledBy: (stepName: string) => Work["places"];
  /** Keeps facts in one stream and sends them; resolves when the server has them. */
  readonly record: (bodies: readonly FactBody[]) => Promise<void>;
}

/** Takes a book from the server, and opens a device of its own. */
export async function otherHands(address: string, book: string): Promise<OtherHands> {
  const ask = await asking(address);
  const model = modelOf(await rowsOf(ask, book), await rowsOf(ask, SHOP_ID));
  // Deriving takes seconds: a connection that the server closed meanwhile is noticed before the next question.
  await setImmediate();
  const store = new MemoryStore();
  const now = (): string => new Date().toISOString();
  const outbox = new Outbox(store, now);
  let refused = "";
  const sender = new Sender(store, {
    send: async (facts) => ROUTES.sendFacts.answer.parse(await ask(ROUTES.sendFacts.path, { facts })),
    heads: async () => ROUTES.streams.answer.parse(await ask(ROUTES.streams.path)),
    now,
    later: () => () => undefined,
    told: (state) => {
      refused = state.state === "refused" ? state.message : "";
    },
  });
  const work = (what: Kind, type: string): Work => {
    const found = floorWork.entries(model, { what, type, options: [] }).get("");
    if (found === undefined) throw new Error(`${what} ${type} takes no work.`);
    return found;
  };
  return {
    work,
    tasks: (what, type, unit) => tasksOf({ what, type }, work(what, type), [unit], null),
    filledBy: (stepName) => {
      const steps = [...stepLines.entries(model, null).values()];
      const step = steps.find(({ labelZh }) => labelZh === stepName);
      return work("machine", book).places.filter(({ stepId }) => stepId !== null && stepId === step?.id);
    },
    record: async (bodies) => {
      await outbox.write(bodies, "local");
      await sender.send();
      if (refused !== "") throw new Error(refused);
    },
  };
}

/** A book's cells, as the server has them now. */
async function rowsOf(ask: (path: string) => Promise<unknown>, book: string): Promise<CellTables> {
  const { tables } = bookRowsSchema.parse(await ask(`/api/books/${book}/rows`));
  return new Map(
    Object.entries(tables).map(([name, rows]) => [
      name,
      new Map(Object.entries(rows).map(([row, cells]) => [row, new Map(Object.entries(cells))])),
    ]),
  );
}

/** The book and everything that follows from it, as the page's worker has them. */
function modelOf(tables: CellTables, shopTables: CellTables): Model {
  const { book, shop, faults } = new LiveBook().update(tables, shopTables);
  const line = new Line().run(book, shop, optionsOf(book, null));
  return { tables, shopTables, book, shop, line, base: line, faults, early: false, preview: false };
}

/** A reading that its test passes. */
export const goodValue = ({ nominal, min, max }: Work["tests"][number]): number =>
  nominal ?? (min !== null && max !== null ? (min + max) / 2 : (min ?? max ?? 0));

export const gateOf = async (address: string, unit: string): Promise<UnitGate> =>
  ROUTES.unitGate.answer.parse(await (await asking(address))(`/api/units/${unit}/gate`));
