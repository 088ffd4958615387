import type { Book, BookRow } from "@pinwright/book";
import { rows } from "./author.ts";

type Step = Partial<BookRow<"steps">>;
type Station = Partial<BookRow<"stations">>;

/** Benches in the order in which a machine passes them; mechanisms are built beside the line. */
export const STATIONS: readonly Station[] = [
  {
    id: "stn.mechanisms",
    label: "Mechanism bench",
    label_zh: "机构台",
    people: 5,
    skills: ["mechanism"],
    tools: "gap gauges, cycle box, torque driver",
  },
  {
    id: "stn.field-top",
    label: "Playfield, upper side",
    label_zh: "台面正面",
    people: 1,
    skills: ["screws"],
    tools: "cradle, post driver, rubber hook",
  },
  {
    id: "stn.field-under",
    label: "Playfield, underside",
    label_zh: "台面背面",
    people: 1,
    skills: ["screws"],
    tools: "cradle, clutch drivers 1 and 2",
  },
  {
    id: "stn.wiring",
    label: "Playfield wiring",
    label_zh: "台面布线",
    people: 5,
    skills: ["solder", "wiring"],
    tools: "soldering iron with extractor, tie gun",
  },
  {
    id: "stn.field-top-again",
    label: "Playfield, upper side again",
    label_zh: "台面正面（二次）",
    people: 1,
    skills: ["screws", "wiring"],
    tools: "cradle, nut drivers, rubber hook",
  },
  {
    id: "stn.cabinet",
    label: "Cabinet",
    label_zh: "机箱",
    people: 4,
    skills: ["screws", "mains", "wiring"],
    tools: "driver, earth tester",
  },
  {
    id: "stn.head",
    label: "Backbox",
    label_zh: "背箱",
    people: 2,
    skills: ["screws", "wiring"],
    tools: "driver, nut drivers",
  },
  {
    id: "stn.final",
    label: "Marriage of playfield and cabinet",
    label_zh: "台面合箱",
    people: 1,
    skills: ["screws", "lifting"],
    tools: "lifting frame",
  },
  {
    id: "stn.test",
    label: "Test",
    label_zh: "测试",
    people: 1,
    skills: ["test", "glass"],
    tools: "meter, bond tester, guarded bench",
  },
];

/** What the designer adds to what geometry and wiring tell: what is joined, checked, tested, closed and packed. */
export function steps(book: Book): readonly BookRow<"steps">[] {
  const between = book.tables.inlines.filter(({ id }) => /^il\.(pf-|bb-|coin-door)/.test(id));
  const list: Step[] = [
    {
      id: "st.mains-check",
      label: "Check of the mains wiring",
      label_zh: "市电接线检查",
      minutes: 12,
      skill: "mains",
      panel: "cab.bottom",
      side: "top",
      caution: "Mains wiring is checked by a licensed electrician, after local codes.",
      caution_zh: "市电接线须由持证电工依当地法规检查。",
    },
    {
      id: "st.join",
      label: "Playfield and backbox onto the cabinet, in-lines joined",
      label_zh: "台面与背箱装上机箱并插接",
      station: "stn.final",
      after: ["st.mains-check"],
      items: between.map(({ id }) => id),
      panel: "playfield",
      side: "under",
      minutes: 25,
      skill: "lifting",
      caution: "Two people; watch fingers at the pivots and at the backbox hinge.",
      caution_zh: "两人操作；注意转轴与背箱铰链夹手。",
    },
    {
      id: "st.legs",
      label: "Legs, side rails and lock bar",
      label_zh: "机腿、侧边条与锁条",
      station: "stn.final",
      after: ["st.join"],
      minutes: 14,
      skill: "screws",
      caution: "Two people; set the cabinet on its frame before the legs are on.",
      caution_zh: "两人操作；装机腿前先将机箱放上支架。",
    },
    {
      id: "st.safety-test",
      label: "Earth bond, insulation, polarity and interlock",
      label_zh: "接地、绝缘、极性与联锁测试",
      station: "stn.test",
      after: ["st.legs"],
      minutes: 15,
      skill: "test",
      caution: "Guarded bench: nobody touches the machine while it is under the test voltage.",
      caution_zh: "防护台：加试验电压时任何人不得触碰机器。",
    },
    {
      id: "st.test",
      label: "End test and burn-in",
      label_zh: "整机测试与老化",
      station: "stn.test",
      after: ["st.safety-test"],
      minutes: 40,
      skill: "test",
      caution: "Coil fuse out for the logic test; coils one at a time.",
      caution_zh: "逻辑测试时取下线圈保险；线圈逐个测试。",
    },
    {
      id: "st.glass",
      label: "Clean the playing surface, put the balls and the glass in",
      label_zh: "清洁台面，放入钢球，装玻璃",
      station: "stn.test",
      after: ["st.test"],
      minutes: 8,
      skill: "glass",
      caution: "Glass: two hands, gloves and glasses; never rest a corner on a hard floor.",
      caution_zh: "玻璃：双手搬运，戴手套护目镜，勿以角着硬地。",
    },
    {
      id: "st.pack",
      label: "Fold the backbox, strap and pack",
      label_zh: "折叠背箱、捆扎并包装",
      station: "stn.test",
      after: ["st.glass"],
      minutes: 12,
      caution: "Two people fold the backbox; watch the bundle at the hinge.",
      caution_zh: "两人折叠背箱；留意铰链处线束。",
    },
  ];
  return rows("steps", list);
}

/** Harnesses and mechanisms of the cabinet and the backbox, which stand at their own benches. */
const AT: readonly (readonly [station: string, steps: readonly string[]])[] = [
  [
    "stn.cabinet",
    [
      ..."mains earth-supplies dc trunk-power trunk-data cabinet-front coin-door cabinet-loads cabinet-audio earth-cabinet"
        .split(" ")
        .map((name) => `harness:hs.${name}`),
      ..."knocker bell shaker".split(" ").map((name) => `mount:mech.${name}`),
    ],
  ],
  [
    "stn.head",
    [
      ..."backbox-power backbox-data display backbox-lamps backbox-audio backbox-motor earth-backbox"
        .split(" ")
        .map((name) => `harness:hs.${name}`),
      "mount:mech.tide-clock",
    ],
  ],
];

/** Steps that the designer has fixed to a bench. */
export const stationChoices = (): readonly BookRow<"choices">[] =>
  rows(
    "choices",
    AT.flatMap(([station, fixed]) =>
      fixed.map((subject) => ({
        kind: "station" as const,
        subject,
        value: station,
        by: "designer",
        reason: "The cabinet and the backbox do not leave their benches before they are joined.",
      })),
    ),
  );
