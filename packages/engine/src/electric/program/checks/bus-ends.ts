import { type Finding, makeFinding } from "../../../model/index.ts";
import { busSegments } from "./buses.ts";
import type { ProgramFacts } from "./facts.ts";

/**
 * A bus is a line with a terminator at each end and none between. Its head, which has no address, ends it by itself; a
 * board that has one wire of the bus is the other end and must end it, a board where the bus goes on must not. A board
 * whose contacts take two wires may be either; when all are such, at least one of them must end the bus.
 */
export function busEnds({ machine }: ProgramFacts): readonly Finding[] {
  const ended = new Set(machine.book.tables.boards.flatMap((board) => (board.terminated ? [board.id] : [])));
  return busSegments(machine).flatMap(({ nodes, headId, wires }) => {
    if (nodes.length + (headId === null ? 0 : 1) < 2) return [];
    const ids = nodes.map(({ id }) => id);
    const lastIds = ids.filter((id) => wires.get(id) === 1);
    const open = lastIds.filter((id) => !ended.has(id));
    const unended =
      lastIds.length === 0 && !ids.some((id) => ended.has(id))
        ? [makeFinding("bus-unterminated", "error", ids)]
        : open.map((id) => makeFinding("bus-unterminated", "error", [id]));
    const midway =
      lastIds.length === 0
        ? []
        : ids
            .filter((id) => ended.has(id) && !lastIds.includes(id))
            .map((id) => makeFinding("bus-terminated-midway", "error", [id, ...lastIds]));
    return [...unended, ...midway];
  });
}
