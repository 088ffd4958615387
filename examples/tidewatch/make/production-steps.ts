import type { Book, BookRow } from "@pinwright/book";
import { rows } from "./author.ts";

type Step = Partial<BookRow<"steps">>;

export const STATIONS: readonly Partial<BookRow<"stations">>[] = [
  {
    id: "stn.mechanisms",
    label: "Mechanism bench",
    label_zh: "机构台",
    people: 2,
    skills: ["mechanism"],
    tools: "gap gauges, cycle box, torque driver",
  },
  {
    id: "stn.field-top",
    label: "Playfield, upper side",
    label_zh: "台面正面",
    people: 1,
    skills: ["screws"],
    tools: "post driver, rubber hook",
  },
  {
    id: "stn.field-under",
    label: "Playfield, underside",
    label_zh: "台面背面",
    people: 2,
    skills: ["screws"],
    tools: "cradle, clutch drivers 1 and 2",
  },
  {
    id: "stn.wiring",
    label: "Playfield wiring",
    label_zh: "台面布线",
    people: 2,
    skills: ["solder", "wiring"],
    tools: "soldering iron with extractor, tie gun",
  },
  {
    id: "stn.cabinet",
    label: "Cabinet",
    label_zh: "机箱",
    people: 2,
    skills: ["screws", "mains"],
    tools: "driver, earth tester",
  },
  {
    id: "stn.head",
    label: "Backbox",
    label_zh: "背箱",
    people: 1,
    skills: ["screws", "wiring"],
    tools: "driver",
  },
  {
    id: "stn.final",
    label: "Marriage of playfield and cabinet",
    label_zh: "台面合箱",
    people: 2,
    skills: ["screws"],
    tools: "lifting frame",
  },
  {
    id: "stn.test",
    label: "Test",
    label_zh: "测试",
    people: 1,
    skills: ["test"],
    tools: "meter, bond tester, guarded bench",
  },
];

const SOLDER = { caution: "Solder fume: extractor on.", caution_zh: "焊接烟雾：开启抽风。", skill: "solder" };
const CRADLE = { caution: "Latch the cradle before it is turned.", caution_zh: "翻转前锁紧支架。" };
const MAINS = {
  caution: "Mains wiring is checked by a licensed electrician, after local codes.",
  caution_zh: "市电接线须由持证电工依当地法规检查。",
  skill: "mains",
};

/** Ids of what stands on some panels on one side, children of mechanisms left out. */
const standing = (
  rowsOf: readonly { id: string; panel: string; side: string }[],
  panel: RegExp,
  side?: string,
) => rowsOf.filter((r) => panel.test(r.panel) && (side === undefined || r.side === side)).map((r) => r.id);

/** The order in which Tidewatch is put together, as its designer gives it; the rest follows from geometry. */
export function steps(book: Book): readonly BookRow<"steps">[] {
  const t = book.tables;
  const field = /^playfield$/;
  const mechanisms = t.mechanisms.filter((m) => m.panel === "playfield");
  const lamps = t.devices.filter((d) => d.panel === "playfield" && d.id.startsWith("lp."));
  const switches = t.devices.filter((d) => d.panel === "playfield" && /^s[wn]\./.test(d.id));
  const playfield = (side: "top" | "under"): Step => ({ panel: "playfield", side });
  const top = standing(
    t.devices.filter((d) => d.id.startsWith("tp.")),
    field,
    "top",
  );
  const list: Step[] = [
    ...t.mechanism_types.map(
      (type): Step => ({
        id: `st.build-${type.id.slice(3)}`,
        label: `Build and cycle: ${type.label}`,
        label_zh: `装配并循环测试：${type.label_zh}`,
        station: "stn.mechanisms",
        skill: "mechanism",
      }),
    ),
    {
      id: "st.top-guides",
      label: "Rails, guides and posts",
      label_zh: "木条、导轨与立柱",
      station: "stn.field-top",
      items: top.filter((id) => !/plastic|ramp|wireform/.test(id)),
      ...playfield("top"),
    },
    {
      id: "st.turn-1",
      label: "Turn the playfield over",
      label_zh: "翻转台面",
      station: "stn.field-under",
      after: ["st.top-guides"],
      ...playfield("under"),
      ...CRADLE,
    },
    {
      id: "st.lamps-under",
      label: "Lamp sockets under the inserts",
      label_zh: "嵌件灯座",
      station: "stn.field-under",
      after: ["st.turn-1"],
      items: lamps.filter((d) => d.side === "under").map((d) => d.id),
      ...playfield("under"),
    },
    {
      id: "st.switches-under",
      label: "Switches from below",
      label_zh: "背面开关",
      station: "stn.field-under",
      after: ["st.turn-1"],
      items: switches.filter((d) => d.side === "under").map((d) => d.id),
      ...playfield("under"),
    },
    ...mechanisms
      .filter((m) => m.side === "under")
      .map(
        (m): Step => ({
          id: `st.mount-${m.id.slice(5)}`,
          label: `Mount: ${m.label}`,
          label_zh: `安装：${m.label_zh}`,
          station: "stn.field-under",
          after: ["st.turn-1", `st.build-${m.type.slice(3)}`],
          items: [m.id],
          ...playfield("under"),
        }),
      ),
    {
      id: "st.boards-under",
      label: "Boards on their stand-offs",
      label_zh: "安装电路板",
      station: "stn.field-under",
      after: ["st.lamps-under", "st.switches-under"],
      items: standing(t.boards, field, "under"),
      ...playfield("under"),
    },
    ...t.harnesses
      .filter((h) => t.ends.some((e) => e.harness === h.id && isOnField(book, e.point)))
      .map(
        (h): Step => ({
          id: `st.lay-${h.id.slice(3)}`,
          label: `Lay and connect: ${h.label}`,
          label_zh: `敷设并连接：${h.label_zh}`,
          station: "stn.wiring",
          after: ["st.boards-under"],
          ...playfield("under"),
          ...SOLDER,
        }),
      ),
    {
      id: "st.turn-2",
      label: "Turn the playfield back",
      label_zh: "翻回台面",
      station: "stn.field-top",
      after: ["st.boards-under"],
      ...playfield("top"),
      ...CRADLE,
    },
    {
      id: "st.ramps",
      label: "Ramps, wireforms and plastics",
      label_zh: "坡道、线轨与塑料板",
      station: "stn.field-top",
      after: ["st.turn-2"],
      items: top.filter((id) => /plastic|ramp|wireform/.test(id)),
      ...playfield("top"),
    },
    {
      id: "st.mechs-top",
      label: "Mechanisms on the upper side",
      label_zh: "正面机构",
      station: "stn.field-top",
      after: ["st.ramps"],
      items: mechanisms.filter((m) => m.side === "top").map((m) => m.id),
      ...playfield("top"),
    },
    {
      id: "st.cabinet-loads",
      label: "Supplies, boards and devices in the cabinet",
      label_zh: "机箱内电源、电路板与器件",
      station: "stn.cabinet",
      items: [...standing(t.boards, /^cab\./), ...standing(t.mechanisms, /^cab\./)],
      panel: "cab.bottom",
      side: "top",
      skill: "screws",
    },
    {
      id: "st.cabinet-mains",
      label: "Mains wiring of the cabinet",
      label_zh: "机箱市电布线",
      station: "stn.cabinet",
      after: ["st.cabinet-loads"],
      panel: "cab.bottom",
      side: "top",
      ...MAINS,
    },
    {
      id: "st.head",
      label: "Boards, lamps and speakers of the backbox",
      label_zh: "背箱电路板、灯与扬声器",
      station: "stn.head",
      items: standing(t.boards, /^bb\./),
      panel: "bb.back",
      side: "top",
    },
    {
      id: "st.join",
      label: "Playfield into the cabinet, in-lines joined",
      label_zh: "台面装入机箱并插接",
      station: "stn.final",
      after: ["st.mechs-top", "st.cabinet-mains", "st.head"],
      items: t.inlines.map((i) => i.id),
      panel: "playfield",
      side: "top",
      caution: "Two people; watch fingers at the pivots.",
      caution_zh: "两人操作；注意转轴夹手。",
    },
    {
      id: "st.test",
      label: "End test",
      label_zh: "整机测试",
      station: "stn.test",
      after: ["st.join"],
      ...MAINS,
      skill: "test",
    },
    {
      id: "st.glass",
      label: "Glass, and pack",
      label_zh: "装玻璃并包装",
      station: "stn.test",
      after: ["st.test"],
      caution: "Glass: two hands, gloves and glasses; never rest a corner on a hard floor.",
      caution_zh: "玻璃：双手搬运，戴手套护目镜，勿以角着硬地。",
    },
  ];
  return rows("steps", list);
}

function isOnField(book: Book, point: string): boolean {
  const item = point.split(":")[0]?.split("/")[0];
  return [...book.tables.devices, ...book.tables.boards, ...book.tables.mechanisms].some(
    (row) => row.id === item && row.panel === "playfield",
  );
}
