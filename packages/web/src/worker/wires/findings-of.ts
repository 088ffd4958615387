import type { Finding, HarnessResult } from "@pinwright/engine";

/** Ids that stand for a harness in findings: its own, its landings, wires and splices. */
function ownIds(harness: HarnessResult): ReadonlySet<string> {
  return new Set([
    harness.harness.id,
    ...harness.landingIds,
    ...harness.wires.map((wire) => wire.id),
    ...harness.splices.map((splice) => splice.id),
  ]);
}

/** Findings that are about a harness or about something of it alone. */
export function findingsOf(findings: readonly Finding[], harness: HarnessResult): readonly Finding[] {
  const own = ownIds(harness);
  const start = `${harness.harness.id}|`;
  return findings.filter(({ subjects }) => subjects.some((id) => own.has(id) || id.startsWith(start)));
}
