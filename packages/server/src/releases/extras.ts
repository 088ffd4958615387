import { canonicalJson } from "@pinwright/contract";
import {
  type BuiltRecords,
  faultFileOf,
  type LineResult,
  machineFacts,
  type SheetFact,
} from "@pinwright/engine";
import { composeServiceBook, MACHINE_SHEETS, type SheetDocument, type SheetOptions } from "@pinwright/sheets";

/** A sheet of a release: what it is about, and which it is. */
interface ExtraSheet {
  readonly id: string;
  readonly of: string;
  readonly kind: string;
  readonly document: SheetDocument;
}

/** What a release is made from. */
interface ReleaseCase {
  readonly line: LineResult;
  /** Its sheets, as they are in English. */
  readonly sheets: readonly SheetFact[];
  readonly revision: string;
  /** What was built and what failed on it up to now. */
  readonly built: BuiltRecords;
}

/** Something that a release holds beside the book and its sheets. */
export interface Extra {
  readonly sheets?: (line: LineResult, options: SheetOptions) => Iterable<ExtraSheet>;
  readonly items?: (given: ReleaseCase) => Iterable<{
    readonly kind: "results" | "file";
    readonly id: string;
    readonly about: Record<string, string>;
    readonly text: string;
  }>;
}

/** What faults are found with, in the app and on the page that is shipped with a machine. */
const FAULT_FILE: Extra = {
  items: function* ({ line, revision, built }) {
    yield {
      kind: "file",
      id: "fault-file.json",
      about: { type: "fault-file" },
      text: JSON.stringify(faultFileOf(line, { revision, built })),
    };
  },
};

/** What a comparison speaks of. */
const FACTS: Extra = {
  items: function* ({ line, sheets, revision }) {
    const facts = machineFacts(line, sheets);
    yield {
      kind: "results",
      id: "facts",
      about: {},
      text: canonicalJson({ ...facts, machine: { ...facts.machine, revision } }),
    };
  },
};

/** The book that goes with every machine of the release, in both languages. */
const SERVICE_BOOK: Extra = {
  sheets: function* (line, options) {
    const { language } = options;
    if (language === "both") return;
    const document = composeServiceBook(line, { ...options, language, unit: null });
    yield { id: document.id, of: MACHINE_SHEETS, kind: "service-book", document };
  },
};

/** All of them, in the order in which they are made. */
export const EXTRAS: readonly Extra[] = [SERVICE_BOOK, FACTS, FAULT_FILE];
