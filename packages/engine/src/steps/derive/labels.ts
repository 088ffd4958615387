import type { BookRow } from "@pinwright/book";
import { type Languages, labelsOf, type Machine, type Side } from "../../model/index.ts";

type DeviceClass = BookRow<"device_types">["class"];
type FastenerKind = BookRow<"fastener_types">["kind"];

/** Names of derived steps. They are data of the result, as the names of items are, and so in both languages at once. */
const CLASSES: Readonly<Record<DeviceClass, Languages>> = {
  switch: { en: "Switches", zh: "开关" },
  lamp: { en: "Lamps", zh: "灯" },
  coil: { en: "Coils", zh: "线圈" },
  motor: { en: "Motors", zh: "电机" },
  sensor: { en: "Sensors", zh: "传感器" },
  button: { en: "Buttons", zh: "按钮" },
  speaker: { en: "Speakers", zh: "扬声器" },
  display: { en: "Displays", zh: "显示器" },
  supply: { en: "Supplies", zh: "电源" },
  inlet: { en: "Inlets", zh: "进线座" },
  filter: { en: "Filters", zh: "滤波器" },
  earth: { en: "Earth studs", zh: "接地柱" },
  other: { en: "Parts", zh: "零件" },
};

const FIXINGS: Readonly<Record<FastenerKind, Languages>> = {
  "wood-screw": { en: "Wood screws", zh: "木螺钉" },
  "machine-screw": { en: "Machine screws", zh: "机螺钉" },
  nut: { en: "Nuts", zh: "螺母" },
  "t-nut": { en: "T-nuts", zh: "T 形螺母" },
  washer: { en: "Washers", zh: "垫圈" },
  post: { en: "Posts", zh: "立柱" },
  standoff: { en: "Stand-offs", zh: "支柱" },
  nail: { en: "Nails", zh: "钉子" },
  saddle: { en: "Saddles", zh: "线鞍" },
  other: { en: "Fasteners", zh: "紧固件" },
};

const SIDES: Readonly<Record<Side, Languages>> = {
  top: { en: "upper side", zh: "正面" },
  under: { en: "underside", zh: "背面" },
};

const titled = (title: Languages, of: Languages): Languages => ({
  en: `${title.en}: ${of.en}`,
  zh: `${title.zh}：${of.zh}`,
});

/** `Lamps: Playfield, underside`; without a panel the title alone. */
function atSide(machine: Machine, title: Languages, panelId: string | null, side: Side): Languages {
  if (panelId === null) return title;
  const row = machine.panels.get(panelId);
  const panel = row === undefined ? { en: panelId, zh: panelId } : labelsOf(row, panelId);
  return titled(title, {
    en: `${panel.en}, ${SIDES[side].en}`,
    zh: `${panel.zh}${SIDES[side].zh}`,
  });
}

export const benchLabels = (type: Languages): Languages =>
  titled({ en: "Build and cycle", zh: "装配并循环测试" }, type);

export const mountLabels = (item: Languages): Languages => titled({ en: "Mount", zh: "安装" }, item);

export const harnessLabels = (harness: Languages): Languages =>
  titled({ en: "Lay and connect", zh: "敷设并连接" }, harness);

const OF_GROUPS: Readonly<Record<"boards" | "join" | "recheck", Languages>> = {
  boards: { en: "Boards", zh: "电路板" },
  join: { en: "Join in-line connectors", zh: "插接线间连接器" },
  recheck: { en: "Check again after burn-in", zh: "老化后复查" },
};

/** Name of a group of what is alike on one side of a panel. `family` is a class of devices or a kind of fasteners. */
export function groupLabels(
  machine: Machine,
  kind: "devices" | "fixings" | "boards" | "join" | "recheck",
  family: string,
  panelId: string | null,
  side: Side,
): Languages {
  const title =
    kind === "devices"
      ? (named(CLASSES, family) ?? CLASSES.other)
      : kind === "fixings"
        ? (named(FIXINGS, family) ?? FIXINGS.other)
        : OF_GROUPS[kind];
  return atSide(machine, title, panelId, side);
}

const named = (names: Readonly<Record<string, Languages>>, name: string): Languages | undefined =>
  names[name];
