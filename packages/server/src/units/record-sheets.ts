import { join } from "node:path";
import { type KeptUnit, MOST_LABELS, type QueryOf, SHOP_ID, type StreamHead } from "@pinwright/contract";
import type { Store } from "@pinwright/store";
import type { Shelf } from "../books/shelf.ts";
import { Refused } from "../http/problem.ts";
import { instrumentsOf } from "../instruments/configured.ts";
import type { Standing } from "../records/standing.ts";
import { type Lane, TaskRefused } from "../threads/lane.ts";
import type { RecordSheetOrder, ResultOf } from "../threads/messages.ts";
import type { GateFacts, UnitCase } from "./gate-facts.ts";

/** Sheets that may be made or wait at once. */
const AT_ONCE = 12;
const SERVER_STREAM = "server";

interface RecordSheetsOptions {
  readonly store: Store;
  readonly shelf: Shelf;
  readonly standing: Standing;
  readonly gateFacts: GateFacts;
  /** The lane of the gates: lines that it knows are at hand. */
  readonly lane: Lane;
  /** Folder for files that are on their way. */
  readonly folder: string;
  readonly newId: () => string;
  /** Milliseconds since 1970. */
  readonly now: () => number;
}

/** How a sheet is made out. */
export interface MadeOut {
  readonly language: "en" | "zh" | "both";
  /** Day of issue; absent: today, in UTC. */
  readonly date?: string | undefined;
  /** Who makes it out; blank: the program. */
  readonly creator: string;
}

/** A PDF, a file of its own, which whoever takes it deletes. */
export interface MadeSheet {
  readonly path: string;
  readonly name: string;
}

/** Makes the sheets of the floor's records in another thread. */
export class RecordSheets {
  readonly #options: RecordSheetsOptions;
  #open = 0;

  constructor(options: RecordSheetsOptions) {
    this.#options = options;
  }

  /** The test certificate of a unit and of all that is inside it. */
  async certificate(unit: string, made: MadeOut): Promise<MadeSheet> {
    const { store, shelf, gateFacts } = this.#options;
    const found = await gateFacts.of(unit);
    const shop = await shelf.now(SHOP_ID);
    const instruments = instrumentsOf(shop.tables).map((one): [string, InstrumentText] => [
      one.id,
      { label: one.label, label_zh: one.labelZh, calibratedUntil: one.calibratedUntil },
    ]);
    const heads = concerned(found, await store.records.heads());
    return this.#ofCase(found, made, (given) => ({ sheet: "certificate", given, heads, instruments }));
  }

  /** What goes into the crate with a machine. */
  async crate(unit: string, made: MadeOut): Promise<MadeSheet> {
    const found = await this.#options.gateFacts.of(unit);
    const what = found.given.facts.find(({ body }) => body.kind === "begun" && body.unit === unit)?.body;
    if (what?.kind === "begun" && what.what !== "machine")
      throw new Refused(
        "bad-request",
        `${unit} is no machine: only a machine goes into a crate with its papers.`,
      );
    return this.#ofCase(found, made, (given) => ({ sheet: "crate", given }));
  }

  /** Labels of units of one book. */
  async labels(query: LabelsQuery, made: MadeOut): Promise<MadeSheet> {
    const { store } = this.#options;
    const { book, paper, start, widthMm, heightMm, units: list, run, what, type } = query;
    const all = await store.records.units(list === undefined ? { book, run, what, type } : {});
    const units = list === undefined ? all : wantedOf(list, book, all);
    if (units.length === 0) throw new Refused("not-found", "There is no unit of these to label.");
    if (units.length > MOST_LABELS)
      throw new Refused(
        "too-large",
        `These are ${units.length} labels; at most ${MOST_LABELS} are made at once.`,
      );
    const order = { sheet: "labels" as const, paper, start, widthMm, heightMm };
    return this.#make(made, { ...order, ...(await this.#named(book)), units: [...units] });
  }

  /** What is on the way, by one transport or by all. */
  async transport(book: string, transport: string | null, made: MadeOut): Promise<MadeSheet> {
    const { store, standing } = this.#options;
    const sent = [...(await standing.units()).values()].filter(
      ({ onTheWay }) => onTheWay !== null && (transport === null || onTheWay.transport === transport),
    );
    // What travels inside something is told with it, at any depth.
    const inside = await contentsOf(standing, new Set(sent.map(({ unit }) => unit)));
    const rows = await store.records.standing([...sent.map(({ unit }) => unit), ...inside]);
    const facts = rows.facts.map(({ fact }) => fact);
    return this.#make(made, { sheet: "transport", ...(await this.#named(book)), facts, transport });
  }

  async #named(book: string) {
    const { shelf } = this.#options;
    const [held, shop] = await Promise.all([shelf.now(book), shelf.now(SHOP_ID)]);
    if (held.info.kind === "shop") throw new Refused("bad-request", "The shop is no machine: name a book.");
    return { book, tables: [...shelf.jsonOf(held.tables)], shop: [...shelf.jsonOf(shop.tables)] };
  }

  /** A sheet of a unit that is judged; tables are sent along only when the thread does not know the line. */
  async #ofCase(
    { given }: UnitCase,
    made: MadeOut,
    order: (given: UnitCase["given"]) => RecordSheetOrder,
  ): Promise<MadeSheet> {
    const first = await this.#run(made, order(given));
    if (first.cold.length === 0) return first.made;
    const whole = await this.#options.gateFacts.withTables(given, first.cold);
    return (await this.#run(made, order(whole))).made;
  }

  async #make(made: MadeOut, order: RecordSheetOrder): Promise<MadeSheet> {
    return (await this.#run(made, order)).made;
  }

  async #run(
    { language, date, creator }: MadeOut,
    order: RecordSheetOrder,
  ): Promise<{ readonly cold: readonly string[]; readonly made: MadeSheet }> {
    if (this.#open >= AT_ONCE)
      throw new Refused(
        "busy",
        "Other sheets are being made. Try again in a moment.",
        {},
        { "retry-after": "5" },
      );
    this.#open++;
    try {
      const { store, lane, folder, newId, now } = this.#options;
      const path = join(folder, `${newId()}.part`);
      const people = (await store.people.list()).map(({ id, name }): [string, string] => [id, name]);
      const today = new Date(now()).toISOString().slice(0, 10);
      const result: ResultOf<"record-sheet"> = await lane.run({
        ...{ kind: "record-sheet", path, language, creator, people, order },
        date: date ?? today,
      });
      return { cold: result.cold, made: { path, name: result.name } };
    } catch (error) {
      if (error instanceof TaskRefused) throw new Refused("unreadable", error.message);
      throw error;
    } finally {
      this.#open--;
    }
  }
}

type LabelsQuery = Omit<QueryOf<"unitLabels">, "language" | "date">;
type InstrumentText = Extract<RecordSheetOrder, { sheet: "certificate" }>["instruments"][number][1];

/** Streams in which anything of the unit was recorded, and the server's own: all that the certificate rests on. */
function concerned({ arrived, recalls }: UnitCase, heads: readonly StreamHead[]): StreamHead[] {
  const streams = new Set([SERVER_STREAM, ...[...arrived, ...recalls].map(({ fact }) => fact.stream)]);
  return heads.filter(({ stream, seq }) => seq > 0 && streams.has(stream));
}

/** The units that a list names, in its order; refuses one that is not there or of another book. */
function wantedOf(list: string, book: string, all: readonly KeptUnit[]): readonly KeptUnit[] {
  const byId = new Map(all.map((one) => [one.unit, one]));
  const names = list
    .split(",")
    .map((name) => name.trim())
    .filter((name) => name !== "");
  return [...new Set(names)].map((name) => {
    const found = byId.get(name);
    if (found === undefined) throw new Refused("not-found", `There is no unit ${name}.`);
    if (found.book !== book)
      throw new Refused(
        "bad-request",
        `${name} is a unit of the book ${found.book}: its label is made there.`,
      );
    return found;
  });
}

/** Everything inside some units at any depth, themselves not. */
async function contentsOf(standing: Standing, units: ReadonlySet<string>): Promise<readonly string[]> {
  const children = new Map<string, string[]>();
  for (const { unit, within } of (await standing.units()).values())
    if (within !== null) children.set(within.unit, [...(children.get(within.unit) ?? []), unit]);
  const found = new Set<string>();
  const todo = [...units];
  for (let at = todo.pop(); at !== undefined; at = todo.pop())
    for (const child of children.get(at) ?? [])
      if (!units.has(child) && !found.has(child)) {
        found.add(child);
        todo.push(child);
      }
  return [...found];
}
