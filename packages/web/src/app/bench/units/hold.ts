import type { UnitSummary } from "@pinwright/contract";

export const STATES = ["in-work", "on-hold", "released"] as const;
export type UnitListState = (typeof STATES)[number];

/** Whether a unit is in work, held by something, or released. What holds it counts, whenever it was released. */
export const stateOf = ({
  openDefects,
  failedTests,
  recalls,
  releasedAt,
}: Pick<UnitSummary, "openDefects" | "failedTests" | "recalls" | "releasedAt">): UnitListState =>
  openDefects > 0 || failedTests.length > 0 || recalls.length > 0
    ? "on-hold"
    : releasedAt === null
      ? "in-work"
      : "released";
