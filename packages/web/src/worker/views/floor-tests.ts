import { testWalk } from "@pinwright/engine";
import { type NamedId, namedItem } from "../steps/named.ts";
import { view } from "./view.ts";

/** A step of a test that is a sequence; without a unit it is only looked at. */
export interface FloorTestStep {
  readonly no: number;
  readonly label: string;
  readonly labelZh: string;
  readonly unit: string;
  readonly nominal: number | null;
  readonly min: number | null;
  readonly max: number | null;
}

/** Steps of a test, by their numbers, in their order. */
export const floorTestSteps = view<string, FloorTestStep>({
  early: true,
  uses: ({ book }) => [book.tables.test_steps],
  entries: ({ book }, testId) =>
    new Map(
      book.tables.test_steps
        .filter(({ test }) => test === testId)
        .sort((a, b) => a.no - b.no)
        .map(({ no, label, label_zh, unit, nominal, min, max }) => [
          String(no),
          { no, label, labelZh: label_zh, unit, nominal, min, max },
        ]),
    ),
  restsInPreview: true,
});

/** Devices of one panel that are tried one after the other. */
export interface FloorStretch {
  readonly panelId: string;
  readonly items: readonly (NamedId & { readonly xMm: number; readonly yMm: number })[];
}

/** The way along everything that a test of the machine tries one by one, by its purpose. */
export const floorTestWalk = view<string, FloorStretch>({
  uses: ({ line }) => [line.machine.items],
  entries: (model, purpose) =>
    new Map(
      testWalk(model.line.machine, purpose).map(({ panelId, itemIds }, i) => [
        String(i),
        {
          panelId,
          items: itemIds.map((id) => {
            const place = model.line.machine.items.get(id)?.place;
            return { ...namedItem(model, id), xMm: place?.xMm ?? 0, yMm: place?.yMm ?? 0 };
          }),
        },
      ]),
    ),
  restsInPreview: true,
});
