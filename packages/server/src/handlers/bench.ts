import type { Recall, StepMinutes, UnitSummary } from "@pinwright/contract";
import { compareText } from "@pinwright/kernel";
import type { Handlers } from "../http/bind.ts";
import { concernedUnits, recallsOf } from "../records/recalls.ts";
import type { UnitStanding } from "../records/standing.ts";
import { minutesOfSteps } from "../records/step-minutes.ts";
import { typesWith } from "../units/types-with.ts";
import type { ServerParts } from "./parts.ts";

type Names = "unitSummaries" | "recalls" | "stepMinutes" | "personNames";

const summaryOf = (standing: UnitStanding, recalls: readonly string[]): UnitSummary => {
  const { unit, what, type, book, revision, run, stage, site, onTheWay, within, releasedAt, lastAt } =
    standing;
  return {
    ...{ unit, what, type, book, revision, run, stage, site, within, releasedAt, lastAt },
    onTheWay: onTheWay === null ? null : { transport: onTheWay.transport, to: onTheWay.to },
    openDefects: standing.open.length,
    failedTests: standing.failed.map(({ test }) => test),
    recalls: [...recalls],
  };
};

/** What the office looks at of everything that was recorded. */
export function benchHandlers({ deps, shelf, standing }: ServerParts): Pick<Handlers, Names> {
  const { records, people } = deps.store;
  const concerned = (
    units: ReadonlyMap<string, UnitStanding>,
    recall: Parameters<typeof concernedUnits>[2],
    unlessLifted = "",
  ) => {
    const types = (part: string): Promise<readonly string[]> => typesWith(deps.store, shelf, part);
    return concernedUnits(records, units, recall, types, unlessLifted);
  };
  const called = async () => recallsOf(await records.recallFacts());

  return {
    unitSummaries: async ({ query: { book } }) => {
      const units = await standing.units();
      const recalled = new Map<string, string[]>();
      for (const recall of await called())
        if (recall.ended === null)
          for (const unit of await concerned(units, recall, recall.recall))
            recalled.set(unit, [...(recalled.get(unit) ?? []), recall.recall]);
      return [...units.values()]
        .filter((unit) => unit.book === book)
        .sort((a, b) => compareText(a.unit, b.unit))
        .map((unit) => summaryOf(unit, recalled.get(unit.unit) ?? []));
    },
    recalls: async () => {
      const units = await standing.units();
      const answer: Recall[] = [];
      for (const recall of await called()) {
        const found = await concerned(units, recall);
        const released = [...found].filter((unit) => units.get(unit)?.releasedAt != null).length;
        answer.push({ ...recall, units: found.size, released });
      }
      return answer;
    },
    personNames: async () => (await people.list()).map(({ id, name }) => ({ id, name })),
    stepMinutes: async ({ query: { book } }): Promise<StepMinutes[]> => {
      const units = await records.units({ book });
      return minutesOfSteps(units, records.minutes());
    },
  };
}
