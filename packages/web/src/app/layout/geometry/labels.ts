import { type BoxMm, GridIndex } from "@pinwright/kernel";
import { scaleOfStep } from "./camera.ts";

/** Something that may be written beside what it names. */
export interface LabelWanted {
  readonly id: string;
  readonly text: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly box: BoxMm;
  /** Who comes first gets its place: lower goes first. */
  readonly rank: number;
}

export interface LabelPlaced {
  readonly id: string;
  readonly text: string;
  readonly xMm: number;
  readonly yMm: number;
}

/** Height of the letters on the screen, in pixels. */
const LABEL_PX = 12;
/** Width of a letter over its height, a little generous; signs of Chinese are square. */
const LETTER = 0.56;
const WIDE_LETTER = 1.02;
/** Below this a thing is a dot, and its name would only hide it. */
const LEAST_THING_PX = 9;

const widthEm = (text: string): number => {
  let width = 0;
  for (const letter of text) width += /[\u2e80-\uffef]/u.test(letter) ? WIDE_LETTER : LETTER;
  return width;
};

/** Size of the letters in mm at a step of enlargement. */
export const labelSizeMm = (step: number): number => LABEL_PX / scaleOfStep(step);

/**
 * The labels that find room at a step of enlargement: none lies on another, and none is longer than three times
 * the thing that it names, so that there are few from afar and all from near.
 */
export function placedLabels(wanted: readonly LabelWanted[], step: number): readonly LabelPlaced[] {
  const scale = scaleOfStep(step);
  const heightMm = LABEL_PX / scale;
  const taken = new GridIndex<string>(Math.max(heightMm * 8, 1));
  const sorted = wanted.toSorted((a, b) => a.rank - b.rank || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
  const placed: LabelPlaced[] = [];
  for (const { id, text, box } of sorted) {
    if (text === "") continue;
    const thingMm = Math.max(box.maxXMm - box.minXMm, box.maxYMm - box.minYMm);
    if (thingMm * scale < LEAST_THING_PX) continue;
    const widthMm = widthEm(text) * heightMm;
    if (widthMm > 4 * thingMm && thingMm * scale < 40) continue;
    const xMm = (box.minXMm + box.maxXMm) / 2;
    const yMm = (box.minYMm + box.maxYMm) / 2;
    const own: BoxMm = {
      minXMm: xMm - widthMm / 2,
      maxXMm: xMm + widthMm / 2,
      minYMm: yMm - heightMm * 0.6,
      maxYMm: yMm + heightMm * 0.6,
    };
    if (taken.near(own).length > 0) continue;
    taken.add(own, id);
    placed.push({ id, text, xMm, yMm });
  }
  return placed;
}
