import { compareText } from "@pinwright/kernel";
import type { Finding } from "../../model/index.ts";

/**
 * Findings of fasteners that are alike but for the fastener (its type is too long for the panel, its nut is wrong, …) as
 * one: the first fastener by its id, what they share, then the other fasteners; `count` says how many they are in all.
 */
export function mergeAlike(findings: readonly Finding[]): readonly Finding[] {
  const alike = new Map<string, Finding[]>();
  for (const finding of findings) {
    const { rule, severity, subjects, numbers } = finding;
    const key = JSON.stringify([rule, severity, subjects.slice(1), Object.entries(numbers)]);
    const group = alike.get(key);
    if (group === undefined) alike.set(key, [finding]);
    else group.push(finding);
  }
  return [...alike.values()].flatMap((group) => {
    const sorted = group.toSorted((a, b) => compareText(a.subjects[0] ?? "", b.subjects[0] ?? ""));
    const first = sorted[0];
    if (first === undefined) return [];
    const [id = "", ...shared] = first.subjects;
    const others = new Set(sorted.flatMap(({ subjects }) => subjects.slice(0, 1)));
    others.delete(id);
    return [
      {
        ...first,
        subjects: [id, ...shared, ...others],
        numbers: { ...first.numbers, count: group.length },
      },
    ];
  });
}
