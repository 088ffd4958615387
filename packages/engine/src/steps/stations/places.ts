import { type Languages, labelsOf, type Machine } from "../../model/index.ts";

/** Skill of those who build mechanisms. */
export const MECHANISM_SKILL = "mechanism";

/** Where one person works. */
export interface WorkPlace {
  readonly id: string;
  readonly stationId: string | null;
  readonly labels: Languages;
  readonly skills: readonly string[];
  /** It stands beside the line: a bench where mechanisms are built and nothing else. */
  readonly beside: boolean;
}

/** The places of the book's stations in the order of their table, without those whose person is missing. */
export function bookPlaces(machine: Machine, absent: readonly string[]): readonly WorkPlace[] {
  const missing = new Set(absent);
  return machine.book.tables.stations
    .flatMap((row) => {
      const { en, zh } = labelsOf(row, row.id);
      return Array.from({ length: row.people }, (_, i): WorkPlace => {
        const number = row.people > 1 ? ` ${i + 1}` : "";
        return {
          id: `${row.id}:${i + 1}`,
          stationId: row.id,
          labels: { en: `${en}${number}`, zh: `${zh}${number}` },
          skills: row.skills,
          beside: row.skills.length === 1 && row.skills[0] === MECHANISM_SKILL,
        };
      });
    })
    .filter((place) => !missing.has(place.id));
}

/** Places that no station of the book stands for: those beside the line first. */
export function plainPlaces(beside: number, along: number): readonly WorkPlace[] {
  return Array.from({ length: beside + along }, (_, i) => ({
    id: `place:${i + 1}`,
    stationId: null,
    labels: { en: `Place ${i + 1}`, zh: `工位 ${i + 1}` },
    skills: [],
    beside: i < beside,
  }));
}
