import { applyChanges, type CellChange, type CellTables, LiveBook, SHOP_TABLES } from "@pinwright/book";
import { type BookRows, type Problem, type ServerEvent, SHOP_ID } from "@pinwright/contract";
import { Line } from "@pinwright/engine";
import { call } from "../api/call.ts";
import { type AnyAsk, ASKS } from "./asks/index.ts";
import { Bases } from "./bases.ts";
import { CraftShop } from "./craft-shop.ts";
import { changesOf, type Edit } from "./edits/index.ts";
import { type Looked, Looking } from "./looking.ts";
import type { Model } from "./model.ts";
import { optionsOf } from "./options-of.ts";
import type { FromWorker, SyncState, ToWorker } from "./protocol.ts";
import { listen } from "./sync/events.ts";
import { lastReversible } from "./sync/last-reversible.ts";
import { fetchRows, ServerBook } from "./sync/server-book.ts";
import type { PendingSet } from "./sync/sync.ts";
import { Trouble, troubleCode } from "./trouble.ts";
import { type AnyView, VIEWS } from "./views/index.ts";
import { Watching } from "./watching.ts";

const isShopTable = (table: string): boolean => Object.hasOwn(SHOP_TABLES, table);
/** What a page needs to draw what it was told and to ask for more. */
const PAGE_MS = 120;
const newId = (): string => crypto.randomUUID();

/** The worker's work: one book with its shop, everything that is derived from them, and whoever looks at it. */
export class Desk {
  readonly #post: (message: FromWorker) => void;
  readonly #watching: Watching;
  readonly #live = new LiveBook();
  readonly #line = new Line();
  readonly #bases = new Bases();
  readonly #craftShop = new CraftShop();
  readonly #looking = new Looking(() => this.#plan());
  /** Rows that are on their way before anyone has opened their book. */
  readonly #expected = new Map<string, Promise<BookRows>>();
  #book: ServerBook | null = null;
  #shop: ServerBook | null = null;
  #token: string | null = null;
  #person = "";
  #model: Model | null = null;
  #preview: { readonly at: number; readonly edit: Edit } | null = null;
  #options: readonly string[] | null = null;
  #planned = false;
  /** Done when the line was run for the first time, or will not be. */
  #whole: Promise<void> = Promise.resolve();
  #shown: number | null = null;
  /** What the page was last told that it looks at. */
  #looked: Looked = { release: null, is: "shown" };
  /** What the page was last told of the book. */
  #said: { readonly sync: SyncState; readonly changeNo: number; readonly shopChangeNo: number } = {
    sync: { state: "loading" },
    changeNo: 0,
    shopChangeNo: 0,
  };

  constructor(post: (message: FromWorker) => void) {
    this.#post = post;
    this.#watching = new Watching(post);
  }

  handle(message: ToWorker): void {
    switch (message.type) {
      case "expect":
        this.#expect(message.book);
        break;
      case "open":
        this.#person = message.person;
        void this.#open(message.book, message.token);
        break;
      case "watch":
        // Names and parameters come from our own page, which is compiled against the same list.
        this.#work(() =>
          this.#watching.watch(message.key, VIEWS[message.view] as AnyView, message.param, this.#model),
        );
        break;
      case "unwatch":
        this.#watching.unwatch(message.key);
        break;
      case "ask":
        this.#answer(message.id, async () => {
          // Before the line is there the machine has no wires: an answer would say that all are gone.
          if (this.#model?.early === true) await this.#whole;
          return this.#work(() => this.#ask(ASKS[message.ask] as AnyAsk, message.param));
        });
        break;
      case "edit":
        this.#answer(message.id, () => this.#edit(message.note, message.edit));
        break;
      case "preview":
        this.#preview = message.edit === null ? null : { at: message.at, edit: message.edit };
        this.#plan();
        break;
      case "options":
        this.#options = message.options;
        this.#looking.look(message.release);
        break;
      case "undo":
      case "redo":
        this.#answer(message.id, () => this.#reverse(message.type));
        break;
      case "retry":
        this.#book?.send();
        this.#shop?.send();
        break;
    }
  }

  #expect(book: string): void {
    for (const id of [book, SHOP_ID]) {
      const rows = fetchRows(id);
      // A refusal shows when the book is opened: whoever has to sign in first gets none of the rows.
      rows.catch(() => undefined);
      this.#expected.set(id, rows);
    }
  }

  async #open(id: string, token: string | null): Promise<void> {
    this.#token = token;
    this.#sync({ state: "loading" });
    try {
      const events = {
        changed: () => this.#plan(),
        sync: (state: SyncState) => this.#sync(state),
        refused: (set: PendingSet, problem: Problem) => this.#refused(set, problem),
      };
      [this.#book, this.#shop] = await Promise.all([
        ServerBook.open(id, token, events, this.#expected.get(id)),
        ServerBook.open(SHOP_ID, token, events, this.#expected.get(SHOP_ID)),
      ]);
      this.#expected.clear();
      let whole = (): void => undefined;
      this.#whole = new Promise((done) => {
        whole = done;
      });
      try {
        this.#work(() => this.#compute(true));
        // The page learns of the panels, and asks for the drawing of one, before the line takes its second.
        await new Promise((done) => setTimeout(done, PAGE_MS));
        this.#work(() => this.#compute());
      } finally {
        whole();
      }
      this.#sync({ state: "saved" });
      this.#looking.opened(id);
      listen(
        (event) => this.#heard(event),
        () => this.#catchUp(),
        () => this.#sync({ state: "offline" }),
      );
      // What happened between reading the rows and listening.
      this.#catchUp();
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error);
      this.#sync({ state: "failed", code: troubleCode(error), message });
    }
  }

  #catchUp(): void {
    for (const book of [this.#book, this.#shop]) void book?.catchUp().then(() => book.send());
  }

  #heard(event: ServerEvent): void {
    if (event.type !== "change") this.#post({ type: "server", event });
    else
      for (const book of [this.#book, this.#shop])
        if (book?.id === event.book) book.heard(event.no, event.set);
  }

  #sync(sync: SyncState): void {
    const changeNo = this.#book?.changeNo ?? 0;
    const shopChangeNo = this.#shop?.changeNo ?? 0;
    this.#said = { sync, changeNo, shopChangeNo };
    this.#post({ type: "sync", sync, changeNo, shopChangeNo });
  }

  #refused(set: PendingSet, problem: Problem): void {
    this.#post({
      type: "refused",
      edit: {
        note: set.note,
        code: problem.code,
        message: problem.message,
        conflicts: problem.conflicts ?? [],
      },
    });
  }

  #answer(id: number, work: () => unknown): void {
    const failed = (error: unknown): void => {
      const message = error instanceof Error ? error.message : String(error);
      this.#post({ type: "failed", id, message, code: troubleCode(error) });
    };
    try {
      Promise.resolve(work()).then((value) => this.#post({ type: "answer", id, value }), failed);
    } catch (error) {
      failed(error);
    }
  }

  /** Does something that may take long; the page can tell the person, for nobody is heard here meanwhile. */
  #work<T>(work: () => T): T {
    this.#post({ type: "working", working: true });
    try {
      return work();
    } finally {
      this.#post({ type: "working", working: false });
    }
  }

  #ask(ask: AnyAsk, param: unknown): unknown {
    if (this.#model === null) throw new Trouble("not-loaded", "The book is not loaded yet.");
    return ask(this.#model, param);
  }

  #edit(note: string, edit: Edit): number {
    const { book, shop } = this.#opened();
    this.#preview = null;
    const changes = changesOf(bothTables(book.tables, shop.tables), edit);
    const ofShop = changes.filter((change) => isShopTable(change.table));
    const ofBook = changes.filter((change) => !isShopTable(change.table));
    for (const [at, part] of [
      [book, ofBook],
      [shop, ofShop],
    ] as const) {
      if (part.length === 0) continue;
      if (!at.edit({ id: newId(), note, changes: part }))
        throw new Trouble("overtaken", "Someone changed this just before.");
    }
    if (changes.length === 0) this.#plan();
    return changes.length;
  }

  async #reverse(what: "undo" | "redo"): Promise<string> {
    const { book, shop } = this.#opened();
    const sent = await Promise.all([book.settled(), shop.settled()]);
    if (sent.includes(false)) throw new Trouble("unsent", "There are changes that could not be sent yet.");
    const at = (await lastReversible(what, this.#person, [book.id, shop.id])) === shop.id ? shop : book;
    const set = await call(what, { parts: { book: at.id }, body: { id: newId() }, token: this.#token });
    at.heard(set.no, set);
    return set.note;
  }

  #opened(): { readonly book: ServerBook; readonly shop: ServerBook } {
    if (this.#book === null || this.#shop === null)
      throw new Trouble("not-loaded", "The book is not loaded yet.");
    return { book: this.#book, shop: this.#shop };
  }

  /** Computes once after all messages that are already here: of many moves only the last counts. */
  #plan(): void {
    if (this.#planned) return;
    this.#planned = true;
    setTimeout(() => {
      this.#planned = false;
      this.#work(() => this.#compute());
    }, 0);
  }

  /** @param early whether to stop at what is known without the line */
  #compute(early = false): void {
    if (this.#book === null || this.#shop === null) return;
    const began = performance.now();
    const preview = this.#preview;
    const { past } = this.#looking;
    const [tables, shopTables] = withPreview(
      past?.tables ?? this.#book.tables,
      past === null ? this.#shop.tables : new Map([...this.#shop.tables, ...past.shop]),
      preview?.edit ?? null,
    );
    const live = this.#live.update(tables, shopTables);
    const craft = this.#craftShop.of(live.shop);
    const options = optionsOf(live.book, this.#options);
    const line = early
      ? this.#line.places(live.book, craft, options)
      : this.#line.run(live.book, craft, options);
    this.#model = {
      tables,
      shopTables,
      book: live.book,
      shop: live.shop,
      line,
      base: early ? line : this.#bases.baseOf(line, preview !== null),
      faults: live.faults,
      early,
      preview: preview !== null,
    };
    const at = preview?.at ?? null;
    this.#watching.tell(this.#model, at);
    if (at !== null && at !== this.#shown)
      this.#post({ type: "previewed", at, tookMs: performance.now() - began });
    this.#shown = at;
    this.#tellLooked();
    // A change of someone else leaves the state as it is, but the book or the shop has another number.
    const { changeNo, shopChangeNo } = this.#said;
    if (changeNo !== this.#book.changeNo || shopChangeNo !== this.#shop.changeNo) this.#sync(this.#said.sync);
  }

  /** What the views show is told after them. */
  #tellLooked(): void {
    const { looked } = this.#looking;
    if (looked === null || (looked.release === this.#looked.release && looked.is === this.#looked.is)) return;
    this.#looked = looked;
    this.#post({ type: "looked", looked });
  }
}

const bothTables = (tables: CellTables, shopTables: CellTables): CellTables =>
  new Map([...tables, ...[...shopTables].filter(([name]) => isShopTable(name))]);

/** Tables with an edit that is only shown. One that does not fit is not shown. */
function withPreview(
  tables: CellTables,
  shopTables: CellTables,
  edit: Edit | null,
): readonly [CellTables, CellTables] {
  if (edit === null) return [tables, shopTables];
  const changes = changesOf(bothTables(tables, shopTables), edit);
  const applied = (to: CellTables, own: readonly CellChange[]): CellTables =>
    own.length === 0 ? to : (applyChanges(to, own).tables ?? to);
  return [
    applied(
      tables,
      changes.filter((change) => !isShopTable(change.table)),
    ),
    applied(
      shopTables,
      changes.filter((change) => isShopTable(change.table)),
    ),
  ];
}
