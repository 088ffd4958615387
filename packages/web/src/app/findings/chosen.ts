import type { FindingEntry } from "../../worker/views/findings.ts";

type Severity = FindingEntry["finding"]["severity"];

export const SEVERITIES: readonly Severity[] = ["error", "warning", "note"];
export const SHOWN = ["open", "accepted", "all"] as const;
type Shown = (typeof SHOWN)[number];

/** Which findings a person wants to see. It stands in the address, so that a list can be sent to others. */
export interface Chosen {
  readonly shown: Shown;
  readonly severity: Severity | null;
  readonly rule: string | null;
  readonly text: string;
  /** Only findings that name this id. */
  readonly about: string | null;
}

const oneOf = <T extends string>(all: readonly T[], text: string | null): T | null =>
  all.find((one) => one === text) ?? null;

export const chosenIn = (params: URLSearchParams): Chosen => ({
  shown: oneOf(SHOWN, params.get("show")) ?? "open",
  severity: oneOf(SEVERITIES, params.get("severity")),
  rule: params.get("rule"),
  text: params.get("text") ?? "",
  about: params.get("id"),
});

/** The same as part of an address; what everyone sees at first is left out. */
export const paramsOf = ({ shown, severity, rule, text, about }: Chosen): Record<string, string> => ({
  ...(shown === "open" ? {} : { show: shown }),
  ...(severity === null ? {} : { severity }),
  ...(rule === null ? {} : { rule }),
  ...(text === "" ? {} : { text }),
  ...(about === null ? {} : { id: about }),
});

/** A finding with its key and its sentence in the reader's language. */
export interface Said {
  readonly key: string;
  readonly entry: FindingEntry;
  readonly sentence: string;
}

/** Findings of one rule and severity. */
export interface FindingGroup {
  readonly rule: string;
  readonly severity: Severity;
  readonly said: readonly Said[];
}

const isShown = (shown: Shown, { finding }: FindingEntry): boolean =>
  shown === "all" || (finding.accepted === null) === (shown === "open");

function fits({ shown, severity, rule, text, about }: Chosen, { entry, sentence }: Said): boolean {
  const { finding, subjects } = entry;
  if (!isShown(shown, entry)) return false;
  if (severity !== null && finding.severity !== severity) return false;
  if (rule !== null && finding.rule !== rule) return false;
  if (about !== null && !finding.subjects.includes(about)) return false;
  const words = text.trim().toLowerCase().split(/\s+/u);
  const labels = subjects.flatMap((subject) => [subject.label, subject.labelZh]);
  const where = [sentence, finding.rule, ...finding.subjects, ...labels].join("\n").toLowerCase();
  return words.every((word) => where.includes(word));
}

/** The findings that are wanted, the most serious rules first, then in the order of the rules' names. */
export function groupsOf(all: Iterable<Said>, chosen: Chosen): readonly FindingGroup[] {
  const groups = new Map<string, { rule: string; severity: Severity; said: Said[] }>();
  for (const said of all) {
    if (!fits(chosen, said)) continue;
    const { rule, severity } = said.entry.finding;
    const key = `${SEVERITIES.indexOf(severity)} ${rule}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { rule, severity, said: [said] });
    else group.said.push(said);
  }
  return [...groups].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)).map(([, group]) => group);
}
