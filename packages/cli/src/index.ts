import type { Command } from "./command.ts";
import { billCommand } from "./commands/bill.ts";
import { boardsCommand } from "./commands/boards.ts";
import { checkCommand } from "./commands/check.ts";
import { compareCommand } from "./commands/compare.ts";
import { convertCommand } from "./commands/convert.ts";
import { currentsCommand } from "./commands/currents.ts";
import { faultPageCommand } from "./commands/fault-page.ts";
import { mapCommand } from "./commands/map.ts";
import { matrixCommand } from "./commands/matrix.ts";
import { newCommand } from "./commands/new.ts";
import { panelsCommand } from "./commands/panels.ts";
import { runCommand } from "./commands/run.ts";
import { sendCommand } from "./commands/send.ts";
import { serviceBookCommand } from "./commands/service-book.ts";
import { settleCommand } from "./commands/settle.ts";
import { sheetsCommand } from "./commands/sheets.ts";
import { showCommand } from "./commands/show.ts";
import { stationsCommand } from "./commands/stations.ts";
import { stepsCommand } from "./commands/steps.ts";

/** Everything that the program can be told to do. */
export const COMMANDS: readonly Command[] = [
  checkCommand,
  sheetsCommand,
  serviceBookCommand,
  showCommand,
  settleCommand,
  currentsCommand,
  stepsCommand,
  stationsCommand,
  panelsCommand,
  boardsCommand,
  billCommand,
  runCommand,
  mapCommand,
  faultPageCommand,
  matrixCommand,
  newCommand,
  sendCommand,
  convertCommand,
  compareCommand,
];
