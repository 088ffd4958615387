import type { BookRow } from "@pinwright/book";
import { rows } from "./author.ts";
import { boardTests } from "./board-tests.ts";
import { COIL_CAUTION, MAINS_CAUTION } from "./test-cautions.ts";

type Test = Partial<BookRow<"tests">>;

function supplyTests(supplies: readonly BookRow<"supplies">[]): Test[] {
  return supplies
    .filter((s) => s.id !== "sup.mains" && s.positive !== null && s.negative !== null)
    .flatMap((s, i): Test[] => {
      const of = { scope: "machine" as const, from: s.positive, to: s.negative, unit: "V", nominal: s.volts };
      const limits = {
        min: Math.round(s.volts * (1 - s.tolerance_pct / 100) * 100) / 100,
        max: Math.round(s.volts * (1 + s.tolerance_pct / 100) * 100) / 100,
      };
      return [
        {
          ...of,
          ...limits,
          id: `t.${s.id.slice(4)}-polarity`,
          order: 60 + i,
          kind: "measure",
          purpose: "polarity",
          label: `${s.label}: polarity and voltage, boards unplugged`,
          label_zh: `${s.label_zh}：极性与电压（板未插）`,
          do: "Boards unplugged, coil fuse out.",
          do_zh: "电路板未插，线圈保险取出。",
        },
      ];
    });
}

/** Mains voltages that the machine is made for; 10 % either way is common practice, no source. */
const MAINS_VOLTS = [
  [230, "mains-230"],
  [115, "mains-115"],
] as const;

/** The machine's end test, least risk first. */
function machineTests(bonds: readonly BookRow<"bonds">[], supplies: readonly BookRow<"supplies">[]): Test[] {
  const machine = { scope: "machine" as const };
  const step = (
    id: string,
    order: number,
    purpose: BookRow<"tests">["purpose"],
    label: string,
    label_zh: string,
    text: string,
    textZh: string,
    more: Test = {},
  ): Test => ({
    ...machine,
    id: `t.m-${id}`,
    order,
    kind: "yes-no",
    purpose,
    label,
    label_zh,
    do: text,
    do_zh: textZh,
    ...more,
  });
  return [
    ...bonds.map(
      (bond): Test => ({
        ...machine,
        id: `t.${bond.id}`,
        order: bond.order,
        kind: "measure",
        purpose: "bond",
        from: "ml.inlet:pe",
        to: bond.at,
        label: `Earth bond: ${bond.metal}`,
        label_zh: `接地连续性：${bond.label_zh.replace(/^接地：/, "")}`,
        unit: "Ω",
        nominal: 0.05,
        min: 0,
        max: 0.1,
        do: "Plug out. Meter from the inlet's earth pin to the metal part.",
        do_zh: "拔下插头。测量输入座接地脚至金属件。",
        ...MAINS_CAUTION,
      }),
    ),
    step(
      "insulation",
      50,
      "insulation",
      "Insulation of the mains side",
      "市电侧绝缘",
      "Mains side to earth, electronics unplugged.",
      "市电侧对地，电子部分拔开。",
      { kind: "measure", unit: "MΩ", min: 2, max: 100000, ...MAINS_CAUTION },
    ),
    step(
      "interlock",
      70,
      "interlock",
      "Coil interlock at the coin door",
      "投币门线圈联锁",
      "Open the door: the coil supply falls within a second.",
      "开门：线圈电源一秒内断开。",
      COIL_CAUTION,
    ),
    ...MAINS_VOLTS.map(([volts, option]) =>
      step(
        option,
        57,
        "supply",
        `Mains ${volts} V at the fuse board`,
        `保险板市电 ${volts} V`,
        "Coil fuse out. Read the guarded meter; compare it with the rating plate.",
        "线圈保险取出。读取带防护的电表，与铭牌核对。",
        {
          kind: "measure",
          unit: "V",
          nominal: volts,
          min: Math.round(volts * 0.9),
          max: Math.round(volts * 1.1),
          options: [option],
          ...MAINS_CAUTION,
        },
      ),
    ),
    ...supplyTests(supplies),
    step(
      "logic",
      100,
      "logic",
      "Every board answers, coil fuse out",
      "各板应答（线圈保险取出）",
      "Start the board list: every address is there, none twice.",
      "运行板卡列表：地址齐全且不重复。",
    ),
    step(
      "switches",
      110,
      "switch",
      "Every switch, one by one",
      "逐个开关",
      "Follow the walk on the display; close each switch once.",
      "按显示屏顺序逐个闭合。",
    ),
    step(
      "lamps",
      120,
      "lamp",
      "Every lamp, one by one",
      "逐个灯",
      "Watch the row light up lamp by lamp.",
      "观察各灯逐个点亮。",
    ),
    step(
      "motors",
      130,
      "motor",
      "Every motor to its home",
      "各电机归位",
      "Each motor runs to its home switch and back.",
      "各电机运行至原位开关再返回。",
    ),
    step(
      "coils",
      140,
      "coil",
      "Coils, one at a time",
      "逐个线圈",
      "Coil fuse in, glass off, hands off: each coil once.",
      "装线圈保险，取下玻璃，手离开：每个线圈一次。",
      COIL_CAUTION,
    ),
    step(
      "ball",
      150,
      "ball",
      "A ball through every shot",
      "逐路走球",
      "Roll a ball into every shot and every lane; none rests.",
      "将球滚入每条路线与球道；不得停滞。",
    ),
    step(
      "burn-in",
      160,
      "burn-in",
      "Four hours of attract and play",
      "老化四小时",
      "Let it play by itself for four hours, glass on.",
      "自动运行四小时，装上玻璃。",
      COIL_CAUTION,
    ),
    step(
      "again",
      170,
      "coil",
      "Retighten, and test again",
      "复紧并复测",
      "Retighten the marked screws, then coils and ball again.",
      "复紧有标记的螺钉，再测线圈与走球。",
      COIL_CAUTION,
    ),
  ];
}

/** Tests of boards and of the machine; a harness is tugged and tried point against point without a row of its own. */
export const tests = (
  types: readonly BookRow<"board_types">[],
  elements: readonly BookRow<"elements">[],
  bonds: readonly BookRow<"bonds">[],
  supplies: readonly BookRow<"supplies">[],
): readonly BookRow<"tests">[] =>
  rows("tests", [...boardTests(types, elements), ...machineTests(bonds, supplies)]);
