import { useSyncExternalStore } from "react";

const query = matchMedia("(pointer: coarse)");

const subscribe = (changed: () => void): (() => void) => {
  query.addEventListener("change", changed);
  return () => query.removeEventListener("change", changed);
};

/** Whether a finger is what points, so that targets must be larger. */
export const useCoarsePointer = (): boolean => useSyncExternalStore(subscribe, () => query.matches);
