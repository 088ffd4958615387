import type { BookRow } from "@pinwright/book";
import { rows } from "./author.ts";

type Step = Partial<BookRow<"test_steps">>;
type Element = BookRow<"elements">;

/** A regulator may be off by this under load: common practice, no source. */
const LOADED_PCT = 5;
const round = (value: number): number => Number(value.toFixed(2));

/**
 * Steps of the answer of every board on its jig: each voltage that it makes under its load, then its inputs and outputs
 * one by one, as the jig shows them.
 */
export const answerSteps = (
  types: readonly BookRow<"board_types">[],
  elements: readonly Element[],
): readonly BookRow<"test_steps">[] =>
  rows(
    "test_steps",
    types.flatMap((type) => {
      const own = elements.filter((e) => e.board_type === type.id);
      const inputs = own.filter((e) => e.kind === "input" && e.control !== "bus").length;
      const outputs = own.filter((e) => e.kind === "driver").length;
      const steps: Step[] = [
        ...loaded(own),
        ...(inputs === 0 ? [] : [each(inputs, "Input", "输入")]),
        ...(outputs === 0 ? [] : [each(outputs, "Output", "输出")]),
        { label: "The jig shows every answer", label_zh: "夹具显示全部应答" },
      ];
      return steps.map((step, i): Step => ({ ...step, test: `t.${type.id.slice(3)}-answer`, no: i + 1 }));
    }),
  );

const each = (count: number, name: string, nameZh: string): Step =>
  count === 1
    ? { label: `${name}: closed and opened once`, label_zh: `${nameZh}：通断各一次` }
    : {
        label: `${name}s 1 to ${count}, each on and off once`,
        label_zh: `${nameZh} 1 至 ${count}：逐路通断各一次`,
      };

function loaded(own: readonly Element[]): readonly Step[] {
  const volts = [...new Set(own.flatMap((e) => (e.kind === "source" && e.volt !== null ? [e.volt] : [])))];
  return volts.map((nominal) => ({
    label: `${nominal} V with the jig's load on it`,
    label_zh: `接上夹具负载后的 ${nominal} V`,
    unit: "V",
    nominal,
    min: round(nominal * (1 - LOADED_PCT / 100)),
    max: round(nominal * (1 + LOADED_PCT / 100)),
  }));
}
