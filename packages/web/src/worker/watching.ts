import { deepEqual } from "@pinwright/kernel";
import type { Model } from "./model.ts";
import type { FromWorker } from "./protocol.ts";
import type { AnyView } from "./views/index.ts";

interface Watched {
  readonly view: AnyView;
  readonly param: unknown;
  uses: readonly unknown[] | null;
  sent: ReadonlyMap<string, unknown>;
}

/** The views that the page has open, and what it was last told of each. */
export class Watching {
  readonly #watched = new Map<string, Watched>();
  readonly #post: (message: FromWorker) => void;

  constructor(post: (message: FromWorker) => void) {
    this.#post = post;
  }

  watch(key: string, view: AnyView, param: unknown, model: Model | null): void {
    const watched: Watched = { view, param, uses: null, sent: new Map() };
    this.#watched.set(key, watched);
    if (model !== null) this.#tell(key, watched, model, null);
  }

  unwatch(key: string): void {
    this.#watched.delete(key);
  }

  /** Tells the page whatever is different in the views that it has open. */
  tell(model: Model, at: number | null): void {
    for (const [key, watched] of this.#watched) this.#tell(key, watched, model, at);
  }

  #tell(key: string, watched: Watched, model: Model, at: number | null): void {
    if (model.early && watched.view.early !== true) return;
    if (model.preview && watched.view.restsInPreview && watched.uses !== null) return;
    const uses = watched.view.uses(model, watched.param);
    if (watched.uses?.every((used, i) => used === uses[i]) && watched.uses.length === uses.length) return;
    const first = watched.uses === null;
    const entries = watched.view.entries(model, watched.param);
    const before = watched.sent;
    const set = [...entries].filter(
      ([name, entry]) => !before.has(name) || !deepEqual(before.get(name), entry),
    );
    const gone = [...before.keys()].filter((name) => !entries.has(name));
    watched.uses = uses;
    watched.sent = entries;
    if (!first && set.length === 0 && gone.length === 0 && sameOrder(before, entries)) return;
    const order = first || !sameOrder(before, entries) ? [...entries.keys()] : null;
    this.#post({ type: "view", key, set, gone, order, at });
  }
}

function sameOrder(a: ReadonlyMap<string, unknown>, b: ReadonlyMap<string, unknown>): boolean {
  if (a.size !== b.size) return false;
  const keys = b.keys();
  for (const key of a.keys()) if (keys.next().value !== key) return false;
  return true;
}
