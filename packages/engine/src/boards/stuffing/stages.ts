import type { StuffingStage } from "../../model/index.ts";
import type { Placement } from "../joints.ts";
import { classEndMm, heightClass } from "./height-class.ts";

/** A card shows at most so many parts and so many kinds of them, so that it stays readable. Common practice, no source. */
const MOST_PARTS = 40;
const MOST_KINDS = 8;

/** A part in its turn, with where it is put in and how long it takes. */
export interface Turn {
  readonly row: Placement;
  readonly bench: number;
  readonly seconds: number;
}

/** The stages of a board: a new one begins with each bench, after the wash, with each height class and when a card is full. */
export function stagesOf(turns: readonly Turn[]): readonly StuffingStage[] {
  const stages: Turn[][] = [];
  for (const turn of turns) {
    const open = stages.at(-1);
    if (open === undefined || !takes(open, turn)) stages.push([turn]);
    else open.push(turn);
  }
  return stages.map((stage, i) => ({
    number: i + 1,
    bench: stage[0]?.bench ?? 1,
    when: stage[0]?.row.after_wash === true ? "after-wash" : "before-bath",
    upToMm: classEndMm(heightClass(stage[0]?.row.height_mm ?? 0)),
    references: stage.map(({ row }) => row.reference),
    seconds: stage.reduce((sum, { seconds }) => sum + seconds, 0),
  }));
}

function takes(stage: readonly Turn[], turn: Turn): boolean {
  const [first] = stage;
  const kinds = new Set([...stage, turn].map(({ row }) => row.part));
  return (
    first !== undefined &&
    stage.length < MOST_PARTS &&
    kinds.size <= MOST_KINDS &&
    first.bench === turn.bench &&
    first.row.after_wash === turn.row.after_wash &&
    heightClass(first.row.height_mm) === heightClass(turn.row.height_mm)
  );
}
