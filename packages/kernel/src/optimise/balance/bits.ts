/** True when bit i is set in the set that begins at word `at`. */
export const has = (sets: Int32Array, at: number, i: number): boolean =>
  ((sets[at + (i >> 5)] ?? 0) & (1 << (i & 31))) !== 0;

/** Puts bit i into the set that begins at word `at`. */
export const put = (sets: Int32Array, at: number, i: number): void => {
  sets[at + (i >> 5)] = (sets[at + (i >> 5)] ?? 0) | (1 << (i & 31));
};
