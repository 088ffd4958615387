import { decimal } from "@pinwright/kernel";
import { boardMinutes } from "../boards/index.ts";
import type { HarnessResult, LineResult, Machine } from "../model/index.ts";
import { cuttingPlan } from "../panels/index.ts";
import type { MachineVariant, StageMinutes } from "./input.ts";
import { optionsKey } from "./mixes.ts";

/** Numbers of machines whose boards are made together at which their minutes are found. */
const BOARD_POINTS: readonly number[] = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/** Cabinets whose panels are cut together when their saw time and waste are found: common practice, no source. */
const CUT_TOGETHER = 10;

/** What plans of runs need of a machine that the line has computed with its options. */
export function variantOf(line: LineResult): MachineVariant {
  const { machine } = line;
  const cutting = cuttingPlan(line, { machines: CUT_TOGETHER });
  const hasBoards = machine.book.tables.placements.length > 0;
  return {
    optionIds: optionsKey(machine.options)
      .split(" ")
      .filter((id) => id !== ""),
    bill: line.parts.bill,
    minutes: stageMinutes(line, cutting.reduce((sum, own) => sum + own.sawMinutes, 0) / CUT_TOGETHER),
    boardMinutes: hasBoards
      ? BOARD_POINTS.map((machines) => ({ machines, minutes: boardMinutes(machine, machines).perMachine }))
      : [],
    sheetUse: new Map(
      cutting
        .filter(({ newSheets, usedAreaM2 }) => newSheets > 0 && usedAreaM2 > 0)
        .map((own) => [own.sheetPartId, decimal((own.sheetAreaM2 / CUT_TOGETHER).toFixed(6))]),
    ),
  };
}

/**
 * Minutes of work on one machine by kind of stage, from the shop's times: harnesses from their breakouts, ties,
 * contacts, cuts and metres; panels as sawn in batches, finished and boxed; mechanisms and assembly from the steps. What
 * the book cannot tell is null: a stage then has to give its own.
 */
function stageMinutes(line: LineResult, sawMinutes: number): StageMinutes {
  const { machine, steps } = line;
  const minutes = (isBench: boolean): number =>
    steps.steps.reduce((sum, step) => sum + ((step.kind === "bench") === isBench ? step.seconds : 0), 0) / 60;
  const coats = machine.shop.tables.coats;
  return {
    panels: panelMinutes(line, sawMinutes),
    paint: coats.length === 0 ? null : coats.reduce((sum, coat) => sum + coat.minutes, 0),
    boards: 0,
    mechanisms: minutes(true),
    harness: [...line.harnesses.values()].reduce((sum, own) => sum + harnessMinutes(machine, own), 0),
    assembly: minutes(false),
    test: null,
    pack: null,
    transport: 0,
  };
}

function harnessMinutes({ shop: { numbers } }: Machine, { wires, route }: HarnessResult): number {
  const { minutes, metres } = route.work;
  return minutes + metres * numbers.lay_wire_m_min + wires.length * numbers.cut_min;
}

/** Sawn, routed, drilled and sanded, and glued to a box. */
function panelMinutes({ machine, panels }: LineResult, sawMinutes: number): number {
  const { panel_finish_min, box_min } = machine.shop.numbers;
  const count = panels.cuts.filter((cut) => cut.sheetPartId !== null).length;
  return count === 0 ? 0 : sawMinutes + count * panel_finish_min + box_min;
}
