import { boardMinutes } from "../../boards/index.ts";
import type { HarnessResult, LineResult, Machine } from "../../model/index.ts";
import { derivedId, MACHINE_NODE } from "../bill/nodes.ts";

/**
 * The shop's own work on one of each node in minutes, where the book tells it: harnesses from breakouts, ties, contacts,
 * splices, metres and cuts; boards from stuffing, soldering and testing in one session for so many machines, shared out
 * by joints and boards; panels from routing and sanding; mechanisms from their bench; the machine from all other steps.
 * Saw, paint, test and packing belong to stages of the run.
 */
export function ownMinutes(line: LineResult, machines = 1): ReadonlyMap<string, number> {
  const { machine, harnesses, steps, panels } = line;
  const minutes = new Map<string, number>();
  const add = (id: string, more: number): void => {
    if (more > 0) minutes.set(id, (minutes.get(id) ?? 0) + more);
  };
  for (const [id, result] of harnesses) add(derivedId("harness", id), harnessMinutes(machine, result));
  for (const { panelId, sheetPartId } of panels.cuts)
    if (sheetPartId !== null) add(derivedId("panel", panelId), machine.shop.numbers.panel_finish_min);
  for (const step of steps.steps) {
    const { mechanismTypeId } = step;
    if (mechanismTypeId === null || step.times < 1) add(MACHINE_NODE, step.seconds / 60);
    else add(derivedId("mechanism", mechanismTypeId), step.seconds / 60 / step.times);
  }
  for (const [typeId, each] of minutesOfBoards(line, machines)) add(derivedId("board", typeId), each);
  return minutes;
}

function harnessMinutes({ shop: { numbers } }: Machine, { wires, route }: HarnessResult): number {
  const { minutes, metres } = route.work;
  return minutes + metres * numbers.lay_wire_m_min + wires.length * numbers.cut_min;
}

/** Minutes of one board of each type: tests by board, the rest by joints, as a session is one piece of work. */
function minutesOfBoards({ machine, boards }: LineResult, machines: number): ReadonlyMap<string, number> {
  const stuffed = boards.register.filter(({ joints, boardIds }) => joints > 0 && boardIds.length > 0);
  const joints = stuffed.reduce((sum, row) => sum + row.joints * row.boardIds.length, 0);
  const count = stuffed.reduce((sum, row) => sum + row.boardIds.length, 0);
  if (joints === 0) return new Map();
  const { stuffing, testing } = boardMinutes(machine, machines);
  return new Map(
    stuffed.map((row) => [
      row.typeId,
      (stuffing / machines) * (row.joints / joints) + testing / machines / count,
    ]),
  );
}
