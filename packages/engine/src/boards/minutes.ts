import type { Machine, SolderWay } from "../model/index.ts";
import { sessionOf, solderChoice } from "./solder/choice.ts";
import { testMinutes } from "./tests.ts";

/** Work on the boards of so many machines, in minutes of one person. */
export interface BoardMinutes {
  /** The way that takes fewer minutes when all are soldered in one session. */
  readonly way: SolderWay;
  /** Set-up, stuffing, soldering and what follows it. */
  readonly stuffing: number;
  readonly testing: number;
  readonly perMachine: number;
}

/**
 * The work on all boards of so many machines that are stuffed in the own shop, soldered in one session in the better
 * way and tested. Boards that are bought with their parts on take no time.
 * @param machines a whole number from 1 up
 */
export function boardMinutes(machine: Machine, machines: number): BoardMinutes {
  const session = sessionOf(machine, machines);
  const choice = solderChoice(machine, session);
  const boards = session.boards.reduce((sum, { count }) => sum + count, 0);
  const stuffing = choice[choice.better].total;
  const testing = testMinutes(machine, boards);
  return { way: choice.better, stuffing, testing, perMachine: (stuffing + testing) / machines };
}
