import {
  type Comparison,
  compareFacts,
  factNames,
  type MachineFacts,
  machineFacts,
  readMachineFacts,
  type Subject,
} from "@pinwright/engine";
import { changeSentence, type Language, subjectName } from "@pinwright/words";
import type { Model } from "../model.ts";

/** A comparison with its changes in sentences. */
export interface Told extends Omit<Comparison, "groups"> {
  readonly groups: Comparison["groups"];
  readonly told: readonly {
    readonly subject: Subject;
    readonly title: string;
    readonly sentences: readonly string[];
  }[];
}

/**
 * What differs between two revisions, in the reader's language.
 * @param before facts that a release keeps, as JSON
 * @param after facts of another release, or of the draft with its sheets; null: the book as it is now, without sheets
 */
export function comparison(
  { line }: Model,
  {
    before,
    after,
    language,
  }: { readonly before: string; readonly after: string | null; readonly language: Language },
): Told {
  const kept = readMachineFacts(JSON.parse(before));
  // The draft's sheets are not composed here: none are compared.
  const was: MachineFacts = after === null ? { ...kept, sheets: [] } : kept;
  const is = after === null ? machineFacts(line, []) : readMachineFacts(JSON.parse(after));
  const compared = compareFacts(was, is);
  const names = factNames(was, is);
  return {
    ...compared,
    told: compared.groups.map(({ subject, changes }) => ({
      subject,
      title: subjectName(language, subject),
      sentences: [...new Set(changes.map((change) => changeSentence(language, subject, change, names)))],
    })),
  };
}
