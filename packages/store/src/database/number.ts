/** The largest number that an integer column holds, in PostgreSQL. */
const LAST = 2 ** 31 - 1;

/** A number of a set or an entry, as it can be compared with a column; beyond the largest there are none. */
export const comparable = (no: number): number => Math.max(0, Math.min(no, LAST));
