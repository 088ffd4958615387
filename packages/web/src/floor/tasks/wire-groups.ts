import type { Work } from "./tasks.ts";

/** Wires that are ticked together: as many as one sees at a glance. Common practice, no source. */
const MOST = 8;

/** Wires of one screen. */
export interface WireGroup {
  readonly key: string;
  readonly wireIds: readonly string[];
  /** Reel that they are cut from; null: they are laid. */
  readonly reel: { readonly partId: string; readonly colour: string } | null;
}

/** Parts of a list that are about equally long, none longer than the most. */
function evenly<T>(list: readonly T[], most: number): readonly (readonly T[])[] {
  const parts = Math.ceil(list.length / most);
  const each = Math.ceil(list.length / Math.max(1, parts));
  return Array.from({ length: parts }, (_, i) => list.slice(i * each, (i + 1) * each));
}

/** What is cut, a screen a reel; of a reel with many wires several. */
export const cutGroups = ({ cut }: Pick<Work, "cut">): readonly WireGroup[] =>
  cut.flatMap(({ wireIds, partId, colour }) =>
    evenly(wireIds, MOST).map((ids) => ({
      key: `${partId} ${colour} ${ids[0] ?? ""}`,
      wireIds: ids,
      reel: { partId, colour },
    })),
  );

/** What is laid, in its order: a screen for each holder with many wires, one for several with few. */
export function layGroups({ lay }: Pick<Work, "lay">): readonly WireGroup[] {
  const groups: string[][] = [];
  for (const step of lay) {
    const ids = step.map(({ wireId }) => wireId);
    const last = groups.at(-1);
    if (last !== undefined && last.length + ids.length <= MOST) last.push(...ids);
    else for (const part of evenly(ids, MOST)) groups.push([...part]);
  }
  return groups.map((wireIds) => ({ key: wireIds[0] ?? "", wireIds, reel: null }));
}
