import type { UnitState } from "@pinwright/engine";

const CHANGE = /^@(\d+)$/u;

/** Number of the change that a unit was begun at, when it is of no release; null: it is of one. */
export const changeOf = (revision: string): string | null => CHANGE.exec(revision)?.[1] ?? null;

/** Name of the release that a unit is of; null: it is of none. */
export const releaseOf = (revision: string): string | null =>
  revision === "" || CHANGE.test(revision) ? null : revision;

/** Revisions that units are built to, each once. */
export const revisionsOf = (states: ReadonlyMap<string, UnitState>): readonly string[] => [
  ...new Set([...states.values()].flatMap(({ begun }) => begun?.revision ?? [])),
];
