import { useSyncExternalStore } from "react";
import { type GuideState, guideIn } from "./guide-state.ts";

const KEY = "pinwright.guide";
const listeners = new Set<() => void>();
let read: { readonly text: string | null; readonly state: GuideState | null } | null = null;

function kept(): GuideState | null {
  const text = localStorage.getItem(KEY);
  if (read?.text !== text) read = { text, state: guideIn(text) };
  return read.state;
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  // Another window of this browser may do the guide.
  addEventListener("storage", listener);
  return () => {
    listeners.delete(listener);
    removeEventListener("storage", listener);
  };
}

/** How far this browser is with the guide; null when it was never begun. */
export const useGuide = (): GuideState | null => useSyncExternalStore(subscribe, kept);

export function keepGuide(state: GuideState): void {
  localStorage.setItem(KEY, JSON.stringify(state));
  for (const listener of listeners) listener();
}

/** Lets the guide take a step from where it is now. */
export function changeGuide(change: (state: GuideState) => GuideState): void {
  const state = kept();
  if (state === null) return;
  const next = change(state);
  if (next !== state) keepGuide(next);
}
