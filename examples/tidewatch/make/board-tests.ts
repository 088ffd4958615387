import type { BookRow } from "@pinwright/book";
import { MAINS_CAUTION } from "./test-cautions.ts";

type Test = Partial<BookRow<"tests">>;
type Element = BookRow<"elements">;

const round = (value: number, places: number): number => Number(value.toFixed(places));

/** Most that copper, clips and solder of one path may have: common practice, no source. */
const PATH_OHM = 0.05;
/** A regulator may be off by this: common practice, no source. */
const REGULATED_PCT = 5;

/**
 * Tests of every board on its bench, least risk first: a look; the paths through fuses and shunts, and the insulation
 * where there is mains, without power; then the current without load and the voltage that it makes, with the supply
 * limited; its answer on the jig last.
 */
export function boardTests(
  types: readonly BookRow<"board_types">[],
  elements: readonly Element[],
): readonly Test[] {
  return types.flatMap((type): readonly Test[] => {
    const own = elements.filter((e) => e.board_type === type.id);
    return [
      test(type, "look", 10, {
        kind: "visual",
        purpose: "other",
        label: "look",
        label_zh: "目检",
        do: "Look at every joint and at each part with a polarity mark.",
        do_zh: "检查每个焊点及有极性的元件。",
      }),
      ...paths(type, own),
      ...insulation(type),
      ...current(type, own),
      ...voltage(type, own),
      test(type, "answer", 30, {
        kind: "sequence",
        purpose: "logic",
        label: "answer on the jig",
        label_zh: "夹具应答",
        do: "Run the jig's sequence; every input and output answers.",
        do_zh: "运行夹具程序；每路输入输出均应答。",
      }),
    ];
  });
}

function test(type: BookRow<"board_types">, name: string, order: number, cells: Test): Test {
  return {
    ...cells,
    scope: "board",
    board_type: type.id,
    id: `t.${type.id.slice(3)}-${name}`,
    order,
    label: `${type.label}: ${cells.label ?? ""}`,
    label_zh: `${type.label_zh}：${cells.label_zh ?? ""}`,
  };
}

/** Fuses in clips and shunts: what they and the joints beside them have together. */
function paths(type: BookRow<"board_types">, own: readonly Element[]): readonly Test[] {
  const clips = own.filter((e) => e.kind === "fuse" && e.control.startsWith("F"));
  if (clips.length === 0 || own.some((e) => e.kind === "driver")) return [];
  return [
    test(type, "paths", 14, {
      kind: "measure",
      purpose: "supply",
      label: "each path through its fuse",
      label_zh: "各保险回路电阻",
      unit: "Ω",
      max: PATH_OHM,
      do: `No power. Copper slugs in the clips; four-wire meter from the input to each of the ${clips.length} outputs; write the largest.`,
      do_zh: `不通电。保险夹装铜棒；四线测量输入至 ${clips.length} 路输出，填最大值。`,
    }),
  ];
}

function insulation(type: BookRow<"board_types">): readonly Test[] {
  if (type.id !== "bt.mains") return [];
  return [
    test(type, "insulation", 16, {
      kind: "measure",
      purpose: "insulation",
      label: "insulation, lines to earth",
      label_zh: "绝缘：各线对地",
      unit: "MΩ",
      min: 10,
      do: "Insulation tester at 500 V DC, all lines together to the fixing holes, under the guard.",
      do_zh: "绝缘测试仪 500 V 直流，各线并联对固定孔，在防护罩内。",
      ...MAINS_CAUTION,
    }),
  ];
}

function current(type: BookRow<"board_types">, own: readonly Element[]): readonly Test[] {
  const loads = own.filter((e) => e.kind === "load");
  const nominal = Math.round(loads.reduce((sum, e) => sum + (e.amp ?? 0) * 1000, 0));
  if (nominal === 0) return [];
  return [
    test(type, "current", 20, {
      kind: "measure",
      purpose: "supply",
      label: "current without load",
      label_zh: "空载电流",
      unit: "mA",
      nominal,
      min: Math.round(nominal * 0.6),
      max: Math.round(nominal * 1.4),
      do: "Supply limited to twice the nominal current.",
      do_zh: "电源限流为标称电流的两倍。",
    }),
  ];
}

/** The voltages that regulators of the board make, each once. */
function voltage(type: BookRow<"board_types">, own: readonly Element[]): readonly Test[] {
  const volts = [...new Set(own.flatMap((e) => (e.kind === "source" && e.volt !== null ? [e.volt] : [])))];
  return volts.map((nominal, i) =>
    test(type, `volts-${String(nominal).replace(".", "v")}`, 24 + i, {
      kind: "measure",
      purpose: "supply",
      label: `${nominal} V that it makes`,
      label_zh: `输出 ${nominal} V`,
      unit: "V",
      nominal,
      min: round(nominal * (1 - REGULATED_PCT / 100), 2),
      max: round(nominal * (1 + REGULATED_PCT / 100), 2),
      do: "Supply still limited. Meter at each output of this voltage; write the one farthest off.",
      do_zh: "电源仍限流。测量该电压的各路输出，填偏差最大者。",
    }),
  );
}
