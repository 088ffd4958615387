import type { UnitState } from "@pinwright/engine";
import type { Block } from "../compose/flow.ts";
import type { TableColumn } from "../compose/table.ts";
import { headed, listed, plain, row } from "./certificate-parts.ts";
import { passedOf, testLines } from "./certificate-tests.ts";
import {
  type GateSheetInput,
  headsOf,
  kindText,
  minutesText,
  SOURCE_MM,
  sourceText,
  typeText,
} from "./texts.ts";

/** Units inside at any depth, each with the place that it has in the one that holds it. */
export function insideBlocks(
  input: GateSheetInput,
  outer: string,
  contents: readonly UnitState[],
  widthMm: number,
): readonly Block[] {
  const heads = headsOf(input.options);
  const columns: readonly TableColumn[] = [
    { header: heads((w) => w.records.serial), weight: "bold", whole: true },
    { header: heads((w) => w.records.what), grow: true, detail: true },
    { header: heads((w) => w.records.certificate.revision) },
    { header: heads((w) => w.records.certificate.place), detail: true },
    { header: heads((w) => w.records.certificate.tests), align: "end" },
    { header: heads((w) => w.records.certificate.minutes), align: "end" },
    { header: heads((w) => w.records.certificate.fitted), detail: true, minMm: SOURCE_MM },
  ];
  const rows = contents.map((state) => {
    const fitting = state.within.find(({ until }) => until === null);
    const { passed, all } = passedOf(testLines(input, state));
    const kind = [kindText(state, input.options), state.begun?.type ?? ""].filter((text) => text !== "");
    return row([
      state.unit,
      `${typeText(input, state)}\n${kind.join(" · ")}`,
      state.begun?.revision ?? "",
      fitting === undefined ? "" : fitting.place + (fitting.unit === outer ? "" : `\n${fitting.unit}`),
      `${passed} / ${all}`,
      minutesText(state.minutes),
      fitting === undefined ? "" : sourceText(input, fitting.from),
    ]);
  });
  return headed(
    input,
    (w) => w.records.certificate.inside,
    widthMm,
    rows.length === 0
      ? [plain(input, (w) => w.records.certificate.nothingInside, widthMm)]
      : listed(input, columns, rows, widthMm),
  );
}
