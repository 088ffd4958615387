import type { HarnessResult, LineResult, Machine } from "../model/index.ts";
import type { MachineVariant, StageMinutes } from "./input.ts";
import { optionsKey } from "./mixes.ts";

/** Cuts of the saw for one panel, both ways and its share of the trims: common practice, no source. */
const CUTS_PER_PANEL = 4;

/** What plans of runs need of a machine that the line has computed with its options. */
export function variantOf(line: LineResult): MachineVariant {
  const { machine } = line;
  return {
    optionIds: optionsKey(machine.options)
      .split(" ")
      .filter((id) => id !== ""),
    bill: line.parts.bill,
    minutes: stageMinutes(line),
    sheetUse: new Map(),
  };
}

/**
 * Minutes of work on one machine by kind of stage, from the shop's times: harnesses from their breakouts, ties,
 * contacts, cuts and metres; boards as stuffed and soldered by hand and tested; panels as sawn and finished; mechanisms
 * and assembly from the steps. What the book cannot tell is null: a stage then has to give its own.
 */
function stageMinutes(line: LineResult): StageMinutes {
  const { machine, steps } = line;
  const seconds = (isBench: boolean): number =>
    steps.steps.reduce((sum, step) => sum + ((step.kind === "bench") === isBench ? step.seconds : 0), 0);
  return {
    panels: panelMinutes(line),
    paint: sum(machine.shop.tables.coats.map((coat) => coat.minutes)) ?? null,
    boards: boardMinutes(machine),
    mechanisms: seconds(true) / 60,
    harness: sum([...line.harnesses.values()].map((harness) => harnessMinutes(machine, harness))) ?? 0,
    assembly: seconds(false) / 60,
    test: null,
    pack: null,
    transport: 0,
  };
}

/** Sum of a list; null when there is nothing in it. */
const sum = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((a, b) => a + b, 0);

function harnessMinutes({ shop: { numbers } }: Machine, { wires, route }: HarnessResult): number {
  const { minutes, metres } = route.work;
  return minutes + metres * numbers.lay_wire_m_min + wires.length * numbers.cut_min;
}

function panelMinutes({ machine, panels }: LineResult): number {
  const { saw_cut_s, panel_finish_min, box_min } = machine.shop.numbers;
  const count = panels.cuts.filter((cut) => cut.sheetPartId !== null).length;
  return count === 0 ? 0 : count * ((CUTS_PER_PANEL * saw_cut_s) / 60 + panel_finish_min) + box_min;
}

/** Boards stuffed and soldered by hand, then tested. */
function boardMinutes({ book, items, shop: { numbers } }: Machine): number {
  const ofType = new Map<string, number>();
  for (const { board_type, joints } of book.tables.placements) {
    const seconds =
      numbers.pick_part_s + numbers.form_part_s + joints * (numbers.hand_joint_s + numbers.clip_joint_s);
    ofType.set(board_type, (ofType.get(board_type) ?? 0) + seconds / 60);
  }
  let minutes = 0;
  for (const item of items.values())
    if (item.kind === "board") minutes += numbers.board_test_min + (ofType.get(item.type.id) ?? 0);
  return minutes;
}
