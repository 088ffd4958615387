/** A list in pieces: databases take so many values in one statement and no more. */
export function* inChunks<T>(list: readonly T[], size: number): Generator<readonly T[]> {
  for (let start = 0; start < list.length; start += size) yield list.slice(start, start + size);
}
