import {
  type Affected,
  type Comparison,
  type FactNames,
  type MachineFacts,
  unitRanges,
} from "@pinwright/engine";
import { changeSentence, sheetWords, subjectName } from "@pinwright/words";
import type { Labels } from "./about.ts";
import type { ChangeNote } from "./change-note.ts";

const both = (of: (language: "en" | "zh") => string): Labels => ({ en: of("en"), zh: of("zh") });

/**
 * What a change note says, from a comparison and from what it reaches in the shop.
 * @param names of the two revisions; `to` null: the draft
 * @param affected units of before that the comparison concerns
 * @param revisionOf the revision that each of these was begun to
 * @param why what the designer wrote
 * @param called names of ids of both
 */
export function changeNote(
  after: MachineFacts,
  comparison: Comparison,
  names: { readonly from: string; readonly to: string | null },
  affected: readonly Affected[],
  revisionOf: ReadonlyMap<string, string>,
  why: string,
  called: FactNames,
): ChangeNote {
  const { id, labels, owner, approved } = after.machine;
  const looseOf = (harness: string): number =>
    affected.find(({ what, type }) => what === "harness" && type === harness)?.loose.length ?? 0;
  return {
    machine: { id, labels, owner, approved },
    ...names,
    why,
    subjects: comparison.groups.map(({ subject, changes }) => ({
      subject: both((language) => subjectName(language, subject)),
      sentences: changes.map((change) =>
        both((language) => changeSentence(language, subject, change, called)),
      ),
    })),
    sheets: comparison.sheets.map(({ number, title, kind, what, pages }) => ({
      ...{ number, what },
      // Sheets are compared in English; in Chinese the kind is named, and the number tells which.
      title: { en: title, zh: kindName(kind) ?? title },
      pages: what === "changed" ? pages : [],
    })),
    harnesses: comparison.harnesses.map(({ harness, number, labels: own, does, mostMm }) => ({
      harness: `H${number}`,
      labels: own,
      does: both((language) => {
        const { does: says } = sheetWords(language).change.note;
        return does === "longer-tails" ? says["longer-tails"](String(Math.ceil(mostMm))) : says[does];
      }),
      loose: looseOf(harness),
    })),
    tools: comparison.tools.map(({ kind, title, what }) =>
      both((language) => {
        const { tool, state } = sheetWords(language).change.note;
        const kinds: Readonly<Record<string, (name: string) => string>> = tool;
        return `${kinds[kind]?.(title) ?? title}: ${state[what]}`;
      }),
    ),
    units: keptUnits(affected, revisionOf),
  };
}

/** Name of a kind of sheet in Chinese. */
function kindName(kind: string): string | undefined {
  const kinds: Readonly<Record<string, string>> = sheetWords("zh").kinds;
  return kinds[kind];
}

/** Units that keep what they were built to, by revision. */
export function keptUnits(
  affected: readonly Affected[],
  revisionOf: ReadonlyMap<string, string>,
): ChangeNote["units"] {
  const by = new Map<string, string[]>();
  for (const unit of affected.flatMap(({ keep }) => keep)) {
    const revision = revisionOf.get(unit) ?? "";
    by.set(revision, [...(by.get(revision) ?? []), unit]);
  }
  return [...by].map(([revision, units]) => ({ revision, list: unitRanges(units).join(", ") }));
}
