import { compareText } from "@pinwright/kernel";
import type { FindingNumbers, MachineChange } from "./change.ts";
import type { FactRow, FindingFact, MachineFacts } from "./facts.ts";
import { groupedBy } from "./grouped.ts";
import type { Groups } from "./groups.ts";

const findingKey = ({ rule, subjects }: FindingFact): string => `${rule} ${subjects.join(" ")}`;

const SEVERITIES = ["error", "warning", "note"] as const;

/** Findings that came, went or say other numbers, and those that somebody accepted or no longer accepts. */
export function compareFindings(before: MachineFacts, after: MachineFacts, groups: Groups): void {
  const by = (facts: MachineFacts) => groupedBy(facts.findings, findingKey);
  const [old, now] = [by(before), by(after)];
  const told = new Set<string>();
  for (const key of [...new Set([...old.keys(), ...now.keys()])].sort(compareText)) {
    const [from, to] = [old.get(key) ?? [], now.get(key) ?? []];
    const [one] = to.length > 0 ? to : from;
    if (one === undefined) continue;
    const subject = { table: "findings", id: key };
    for (const change of findingChanges(from, to)) groups.add(subject, change);
    const accepted = acceptanceChange(from, to);
    if (accepted === null) continue;
    groups.add(subject, accepted);
    told.add([one.rule, ...one.subjects].join("|"));
  }
  compareAcceptances(before, after, told, groups);
}

const aboutOf = ({ rule, severity, subjects }: FindingFact) => ({ rule, severity, subjects });

/** An error that is a warning now is no longer the same finding. */
function findingChanges(from: readonly FindingFact[], to: readonly FindingFact[]): readonly MachineChange[] {
  return SEVERITIES.flatMap((severity): readonly MachineChange[] => {
    const [had, has] = [from, to].map((list) => list.filter((finding) => finding.severity === severity));
    const [one] = [...(has ?? []), ...(had ?? [])];
    if (had === undefined || has === undefined || one === undefined) return [];
    if (has.length > had.length) return [{ what: "finding-new", values: aboutOf(one) }];
    if (has.length < had.length) return [{ what: "finding-gone", values: aboutOf(one) }];
    const [lost, won] = [withoutSame(had, has), withoutSame(has, had)];
    return won.map((finding, i) => ({
      what: "finding-numbers",
      values: { ...aboutOf(one), from: [lost[i]?.numbers ?? {}], to: [finding.numbers] },
    }));
  });
}

const numbersText = (numbers: FindingNumbers): string =>
  JSON.stringify(Object.entries(numbers).sort(([p], [q]) => compareText(p, q)));

/** Findings of the one list that have no like in the other; of several alike as many as there are more. */
function withoutSame(p: readonly FindingFact[], q: readonly FindingFact[]): readonly FindingFact[] {
  const left = q.map(({ numbers }) => numbersText(numbers));
  return p.filter(({ numbers }) => {
    const at = left.indexOf(numbersText(numbers));
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

/** What became of the acceptance of a finding that is there: accepted, no longer, or by another or for another reason. */
function acceptanceChange(from: readonly FindingFact[], to: readonly FindingFact[]): MachineChange | null {
  const acceptedOf = (list: readonly FindingFact[]) => list.filter(({ accepted }) => accepted !== null);
  const [was, is] = [acceptedOf(from), acceptedOf(to)];
  const [one] = is.length > 0 ? is : was;
  // What is accepted and gone is told as gone.
  if (one === undefined || to.length === 0) return null;
  const values = { ...aboutOf(one), by: one.accepted?.by ?? "", why: one.accepted?.reason ?? "" };
  if (is.length > was.length) return { what: "accepted", values };
  if (is.length < was.length) return { what: "no-longer-accepted", values: aboutOf(one) };
  const said = (list: readonly FindingFact[]): string =>
    JSON.stringify(list.map(({ accepted }) => [accepted?.by, accepted?.reason]).sort());
  const [old] = was;
  if (old === undefined || said(was) === said(is)) return null;
  return {
    what: "accepted-otherwise",
    values: { ...values, wasBy: old.accepted?.by ?? "", was: old.accepted?.reason ?? "" },
  };
}

/**
 * Tells which acceptances were written down or taken back without any finding being accepted or no longer: what they accept is
 * not there, or is worse than they allow. Other limits of an acceptance are told too.
 */
function compareAcceptances(
  before: MachineFacts,
  after: MachineFacts,
  told: ReadonlySet<string>,
  groups: Groups,
): void {
  const of = ({ rows }: MachineFacts): ReadonlyMap<string, FactRow> =>
    new Map(Object.entries(rows.choices ?? {}).filter(([, { kind }]) => kind === "accept"));
  const [old, now] = [of(before), of(after)];
  for (const key of [...new Set([...old.keys(), ...now.keys()])].sort(compareText)) {
    const [from, to] = [old.get(key), now.get(key)];
    const text = (to ?? from)?.subject ?? "";
    const finding = [...after.findings, ...before.findings].find((one) => accepts(text, one));
    const [rule = "", ...ids] = text.split("|");
    const subjects = finding?.subjects ?? idsOf(ids, before, after);
    const subject = { table: "choices", id: key };
    const isTold = finding !== undefined && told.has([finding.rule, ...finding.subjects].join("|"));
    const isThere = after.findings.some((one) => accepts(text, one)) ? "yes" : "";
    const values = { rule, subjects, by: (to ?? from)?.by ?? "", why: (to ?? from)?.reason ?? "", isThere };
    if (from === undefined || to === undefined) {
      if (!isTold)
        groups.add(subject, { what: to === undefined ? "acceptance-gone" : "acceptance-new", values });
      continue;
    }
    if ((from.basis ?? "") !== (to.basis ?? ""))
      groups.add(subject, {
        what: "accepted-bounds",
        values: { rule, subjects, from: from.basis ?? "", to: to.basis ?? "" },
      });
    const others = ["by", "reason", "value", "held"].filter((column) => from[column] !== to[column]);
    if (others.length > 0 && !isTold)
      groups.add(subject, { what: "acceptance-changed", values: { ...values, was: from.reason ?? "" } });
  }
}

/** Whether a choice of this subject is about a finding: rule and ids, then what tells it apart from its like. */
function accepts(text: string, { rule, subjects }: FindingFact): boolean {
  const own = [rule, ...subjects].join("|");
  return text === own || text.startsWith(`${own}|`);
}

/** Ids of a subject that was joined by bars: four of them may be one wire. */
function idsOf(parts: readonly string[], before: MachineFacts, after: MachineFacts): readonly string[] {
  const ids: string[] = [];
  for (let i = 0; i < parts.length; ) {
    const wire = parts.slice(i, i + 4).join("|");
    const isWire = after.wires[wire] !== undefined || before.wires[wire] !== undefined;
    ids.push(isWire ? wire : (parts[i] ?? ""));
    i += isWire ? 4 : 1;
  }
  return ids;
}
