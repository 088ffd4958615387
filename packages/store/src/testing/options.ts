import type { Actor, StoreOptions } from "../store.ts";

/** A clock that goes on by a second each time it is asked, and ids in order. */
export function testOptions(): StoreOptions {
  let ticks = 0;
  let ids = 0;
  return {
    now: () => {
      ticks += 1;
      return new Date(Date.UTC(2026, 2, 31, 9, 0, ticks)).toISOString();
    },
    newId: () => {
      ids += 1;
      return `made-${ids}`;
    },
  };
}

export const ANN: Actor = { personId: "ann", personName: "Ann" };
export const BEN: Actor = { personId: "ben", personName: "Ben" };
export const CHO: Actor = { personId: "cho", personName: "Cho" };
