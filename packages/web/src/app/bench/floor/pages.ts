import type { RunBoard, Stuck, Wait } from "./floor-board.ts";

/** What stands on the screen at one time: a run with as much of its lists as can be read from afar. */
export interface ScreenPage {
  readonly board: RunBoard;
  readonly stuck: readonly Stuck[];
  /** Null: not known yet. */
  readonly waits: readonly Wait[] | null;
}

/** Lines that fit a screen beside and below the stages. */
const [STUCK_LINES, WAIT_LINES] = [6, 4];

const piece = <T>(list: readonly T[], size: number, at: number): readonly T[] =>
  list.slice(at * size, (at + 1) * size);

/** Pages of all runs, one after another: each run as many as its longest list needs. */
export const screenPages = (boards: readonly RunBoard[]): readonly ScreenPage[] =>
  boards.flatMap((board) => {
    const waits = (board.waits ?? []).filter(({ missing, ready }) => missing > ready);
    const count = Math.max(
      1,
      Math.ceil(board.stuck.length / STUCK_LINES),
      Math.ceil(waits.length / WAIT_LINES),
    );
    const from = <T>(list: readonly T[], size: number, at: number): readonly T[] =>
      // A list that is through begins again, so that no page says that there is nothing.
      piece(list, size, list.length === 0 ? 0 : at % Math.ceil(list.length / size));
    return Array.from({ length: count }, (_, at) => ({
      board,
      stuck: from(board.stuck, STUCK_LINES, at),
      waits: board.waits === null ? null : from(waits, WAIT_LINES, at),
    }));
  });
