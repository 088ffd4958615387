import type { BenchLine } from "./mechanism-steps.ts";

export const build = (en: string, zh: string, minutes?: number): BenchLine => ({
  kind: "build",
  en,
  zh,
  ...(minutes === undefined ? {} : { minutes }),
});

export const adjust = (
  en: string,
  zh: string,
  tool: string,
  gauge: NonNullable<BenchLine["gauge"]>,
): BenchLine => ({ kind: "adjust", en, zh, tool, gauge });

const MOVING = ["Keep fingers out: a coil moves it without warning.", "手勿伸入：线圈会突然动作。"] as const;

/** On the cycle box, with its guard shut. */
export const cycle = (en: string, zh: string, minutes: number): BenchLine => ({
  kind: "cycle",
  en,
  zh,
  tool: "cycle box with guard",
  minutes,
  caution: MOVING,
});

/** The last line of every mechanism. */
export const RETIGHTEN: BenchLine = {
  kind: "retighten",
  en: "Check every screw again with the torque driver; mark each with paint.",
  zh: "用扭力起子复紧全部螺钉，并逐一点漆标记。",
  tool: "torque driver",
};

/** A coil on its bracket, with its sleeve and plunger. */
export const coilIn = (minutes = 3): BenchLine =>
  build(
    "Coil with a new sleeve onto its bracket; the plunger falls through by its own weight.",
    "线圈装新套管后固定于支架；铁芯须能自重落下。",
    minutes,
  );

/** End stop and its play. */
export const strokeOf = (mm: number): BenchLine =>
  adjust("Stroke of the plunger", "铁芯行程", "depth gauge", ["mm", mm - 0.5, mm, mm + 0.5]);

/** Gap of a switch at rest. */
export const gapOf = (en: string, zh: string, mm: number, less = 0.3, more = 0.3): BenchLine =>
  adjust(en, zh, "feeler gauge", ["mm", mm - less, mm, mm + more]);
