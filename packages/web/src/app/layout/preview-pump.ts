import type { Edit } from "../../worker/protocol.ts";

/** If the worker does not answer for this long, the next move is shown to it all the same. */
const PATIENCE_MS = 1_000;

/**
 * Sends the newest state of a drag to the worker, never more than one at a time: while one is worked on, of all
 * moves that come in only the last is kept. Each move is measured until its figures are on the screen.
 */
export class PreviewPump {
  readonly #send: (at: number, edit: Edit | null) => void;
  #at = 0;
  #sent: { readonly at: number; readonly moves: readonly number[]; readonly when: number } | null = null;
  #next: Edit | null = null;
  #moves: number[] = [];

  constructor(send: (at: number, edit: Edit | null) => void) {
    this.#send = send;
  }

  /** @param movedAt time of the pointer's move, on the clock of the page */
  show(edit: Edit, movedAt: number): void {
    this.#next = edit;
    this.#moves.push(movedAt);
    this.#pump();
  }

  /** A preview is through the line and on the page. */
  heard(at: number): void {
    const sent = this.#sent;
    if (sent === null || sent.at !== at) return;
    this.#sent = null;
    // The next frame is the first that can show it.
    requestAnimationFrame(() => {
      for (const start of sent.moves)
        performance.measure("pinwright: move to figures", { start, end: performance.now() });
    });
    this.#pump();
  }

  /** Nothing more is shown: the drag was dropped or given up. */
  end(giveUp: boolean): void {
    this.#next = null;
    this.#moves = [];
    this.#sent = null;
    if (giveUp) this.#send(++this.#at, null);
  }

  #pump(): void {
    const edit = this.#next;
    if (edit === null) return;
    const now = performance.now();
    if (this.#sent !== null && now - this.#sent.when < PATIENCE_MS) return;
    this.#next = null;
    this.#sent = { at: ++this.#at, moves: this.#moves, when: now };
    this.#moves = [];
    this.#send(this.#at, edit);
  }
}
