import type { Work } from "./tasks.ts";

/** Wires that are ticked together: as many as one sees at a glance. Common practice, no source. */
const MOST = 8;

/** A reel that wires are cut from. */
export interface Reel {
  readonly partId: string;
  /** Blank: a cable. */
  readonly colour: string;
}

/** Wires of one screen, reel by reel. */
export interface WireGroup {
  readonly key: string;
  readonly sections: readonly { readonly reel: Reel | null; readonly wireIds: readonly string[] }[];
}

export const wiresOf = ({ sections }: WireGroup): readonly string[] =>
  sections.flatMap(({ wireIds }) => wireIds);

/** Parts of a list that are about equally long, none longer than the most. */
function evenly<T>(list: readonly T[], most: number): readonly (readonly T[])[] {
  const parts = Math.ceil(list.length / most);
  const each = Math.ceil(list.length / Math.max(1, parts));
  return Array.from({ length: parts }, (_, i) => list.slice(i * each, (i + 1) * each));
}

type Section = WireGroup["sections"][number];

/** Sections on screens, in their order: several small ones on one, a large one on several. */
function screens(sections: readonly Section[]): readonly WireGroup[] {
  const groups: Section[][] = [];
  let room = 0;
  for (const { reel, wireIds } of sections)
    for (const ids of evenly(wireIds, MOST)) {
      const last = groups.at(-1);
      if (last !== undefined && ids.length <= room) last.push({ reel, wireIds: ids });
      else {
        groups.push([{ reel, wireIds: ids }]);
        room = MOST;
      }
      room -= ids.length;
    }
  return groups.map((own) => ({ key: own[0]?.wireIds[0] ?? "", sections: own }));
}

/** What is cut, reel by reel. */
export const cutGroups = ({ cut }: Pick<Work, "cut">): readonly WireGroup[] =>
  screens(cut.map(({ wireIds, partId, colour }) => ({ reel: { partId, colour }, wireIds })));

/** What is laid, holder by holder. */
export const layGroups = ({ lay }: Pick<Work, "lay">): readonly WireGroup[] =>
  screens(lay.map((step) => ({ reel: null, wireIds: step.map(({ wireId }) => wireId) })));
