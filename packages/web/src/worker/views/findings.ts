import { RANK } from "@pinwright/book";
import {
  type AcceptedBound,
  acceptBounds,
  acceptedBounds,
  acceptSubject,
  brokenBounds,
  type Finding,
} from "@pinwright/engine";
import { type Subject, subjectOf } from "../findings/subject-of.ts";
import type { Model } from "../model.ts";
import { view } from "./view.ts";

/** An acceptance that no longer holds, because the finding is worse than what was accepted. */
interface LapsedAcceptance {
  readonly by: string;
  readonly reason: string;
  readonly broken: readonly AcceptedBound[];
}

/** A finding with what the page needs to show it, to lead to it and to accept it. */
export interface FindingEntry {
  readonly finding: Finding;
  /** The ids that it is about, those that come first; a finding may name hundreds. */
  readonly subjects: readonly Subject[];
  /** Subject and basis of the choice that would accept it as it is now. */
  readonly subject: string;
  readonly basis: string;
  /** The basis taken apart: of the acceptance that holds, or of the one that would be made. */
  readonly bounds: readonly AcceptedBound[];
  readonly lapsed: LapsedAcceptance | null;
}

const SHOWN_SUBJECTS = 6;

function entryOf(model: Model, finding: Finding): FindingEntry {
  const subject = acceptSubject(finding);
  const basis = acceptBounds(finding);
  const choice =
    finding.accepted === null ? model.line.machine.choices.get("accept")?.get(subject) : undefined;
  return {
    finding,
    subjects: finding.subjects.slice(0, SHOWN_SUBJECTS).map((id) => subjectOf(model, id)),
    subject,
    basis,
    bounds: acceptedBounds(finding.accepted?.basis ?? basis),
    lapsed:
      choice === undefined
        ? null
        : { by: choice.by, reason: choice.reason, broken: brokenBounds(finding, choice.basis) },
  };
}

/** What the checks found, by subject of the choice that would accept it. */
export const findings = view<null, FindingEntry>({
  uses: ({ line }) => [line.findings],
  entries: (model) => {
    const entries = new Map<string, FindingEntry>();
    for (const finding of model.line.findings) {
      const entry = entryOf(model, finding);
      let key = entry.subject;
      for (let n = 2; entries.has(key); n++) key = `${entry.subject} ${n}`;
      entries.set(key, entry);
    }
    return entries;
  },
  restsInPreview: true,
});

/** An acceptance in the book that belongs to no finding any more. */
export interface SpareAcceptance {
  readonly subject: string;
  readonly by: string;
  readonly reason: string;
}

/** Acceptances whose finding is gone: whatever they allowed is mended, or was renamed. */
export const spareAcceptances = view<null, SpareAcceptance>({
  uses: ({ line, tables }) => [line.findings, tables.get("choices")],
  entries: ({ line, tables }) => {
    const used = new Set(line.findings.map(acceptSubject));
    const spare = [...(tables.get("choices") ?? [])].flatMap(([row, cells]) => {
      const subject = cells.get("subject") ?? "";
      if (cells.get("kind") !== "accept" || !cells.has(RANK) || used.has(subject)) return [];
      return [[row, { subject, by: cells.get("by") ?? "", reason: cells.get("reason") ?? "" }] as const];
    });
    return new Map(spare);
  },
  restsInPreview: true,
});
