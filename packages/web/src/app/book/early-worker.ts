import type { ToWorker } from "../../worker/protocol.ts";

/** The worker that was started for the book in the address, before the app itself was there. */
let early: { readonly bookId: string; readonly worker: Worker } | null = null;

const newWorker = (): Worker =>
  new Worker(new URL("../../worker/engine.worker.ts", import.meta.url), { type: "module" });

/**
 * Starts the worker of the book that the page's address names, and has it fetch the rows: while the page's own
 * script is read and drawn, the book is already being put together. An address of no book starts nothing.
 */
export function startEarlyWorker(path: string): void {
  const bookId = /^\/b\/([^/]+)/.exec(path)?.[1];
  if (bookId === undefined) return;
  early = { bookId, worker: newWorker() };
  const expect: ToWorker = { type: "expect", book: bookId };
  early.worker.postMessage(expect);
}

/** The early worker if it was started for this book and nobody has taken it yet, else a new one. */
export function takeWorker(bookId: string): Worker {
  const taken = early;
  early = null;
  if (taken?.bookId === bookId) return taken.worker;
  taken?.worker.terminate();
  return newWorker();
}
