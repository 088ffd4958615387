import type { FactBody } from "@pinwright/contract";
import type { Task } from "../../floor/tasks/tasks.ts";
import type { Lead } from "./floor-hand.ts";
import { goodValue, type OtherHands } from "./other-hands.ts";

/** Serial numbers of the boards and harnesses that go into a machine, by place. */
export type Given = ReadonlyMap<string, string>;

/** Gives numbers out to everything that stands in the machine of a book. */
export async function giveParts(office: Lead, others: OtherHands, book: string): Promise<Given> {
  const { places } = others.work("machine", book);
  const kinds = new Map(places.map(({ what, type }) => [`${what} ${type}`, { what, type }] as const));
  const given = new Map<string, string>();
  for (const { what, type } of kinds.values()) {
    const own = places.filter((place) => place.what === what && place.type === type);
    const units = await office.units({ book, what, type, count: own.length });
    own.forEach(({ id }, i) => {
      given.set(id, units[i] ?? "");
    });
  }
  return given;
}

/** What is recorded when a task is done well. */
export function bodiesOf(task: Task, unit: string, given: Given): readonly FactBody[] {
  switch (task.kind) {
    case "step":
    case "own":
    case "stage":
    case "tug":
      return [{ kind: "step-done", unit, step: task.step }];
    case "fit":
      return task.places.map(({ id }) => ({
        ...{ kind: "fitted", unit: given.get(id) ?? "", into: unit, place: id },
      }));
    case "continuity":
      return [{ kind: "reading", unit, test: task.test, good: true }];
    case "test":
      return [
        {
          ...{ kind: "reading", unit, test: task.test.id, good: true },
          ...(task.test.kind === "measure" ? { value: goodValue(task.test) } : {}),
        },
      ];
  }
}

/** Builds and tests everything that goes into the machine, by its own list of tasks. */
export async function buildParts(others: OtherHands, book: string, given: Given): Promise<void> {
  for (const { id, what, type } of others.work("machine", book).places) {
    const unit = given.get(id) ?? "";
    await others.record(others.tasks(what, type, unit).flatMap((task) => bodiesOf(task, unit, given)));
  }
}
