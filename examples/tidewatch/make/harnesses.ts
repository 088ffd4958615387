import { rows, type Topic } from "./author.ts";

const LIST: readonly (readonly [name: string, label: string, labelZh: string])[] = [
  ["mains", "Mains", "市电"],
  ["earth-supplies", "Earth of the supplies", "电源接地"],
  ["dc", "Supplies to fuse boards", "电源至保险板"],
  ["trunk-power", "Power trunk", "电源干线"],
  ["trunk-data", "Data trunk", "数据干线"],
  ["cabinet-front", "Cabinet front", "机柜前部"],
  ["coin-door", "Coin door", "投币门"],
  ["cabinet-loads", "Knocker, bell and shaker", "敲击器、钟与振动电机"],
  ["cabinet-audio", "Cabinet audio", "机柜音频"],
  ["earth-cabinet", "Cabinet earth", "机柜接地"],
  ["backbox-power", "Backbox power", "背箱电源"],
  ["backbox-data", "Backbox data", "背箱数据"],
  ["display", "Display ribbons", "显示排线"],
  ["backbox-lamps", "Backglass lamps", "背玻璃灯"],
  ["backbox-audio", "Backbox audio", "背箱音频"],
  ["backbox-motor", "Tide clock", "潮汐钟"],
  ["earth-backbox", "Backbox earth", "背箱接地"],
  ["bus-lower", "Playfield bus, lower", "台面下总线"],
  ["bus-upper", "Playfield bus, upper", "台面上总线"],
  ["coil-lower", "Playfield coils, lower", "台面下线圈"],
  ["coil-upper", "Playfield coils, upper", "台面上线圈"],
  ["lamp-front", "Playfield lamps, front", "台面前灯"],
  ["lamp-centre", "Playfield lamps, compass", "台面罗盘灯"],
  ["lamp-word", "Playfield lamps, letters", "台面字母灯"],
  ["lamp-mid", "Playfield lamps, middle", "台面中部灯"],
  ["lamp-rear", "Playfield lamps, rear", "台面后灯"],
  ["switch-front", "Playfield switches, front", "台面前开关"],
  ["switch-mid", "Playfield switches, middle", "台面中部开关"],
  ["switch-rear", "Playfield switches, rear", "台面后开关"],
  ["motor-playfield", "Playfield motors", "台面电机"],
  ["ramp-left", "Left ramp", "左坡道"],
  ["ramp-right", "Right ramp", "右坡道"],
  ["light-sling-left", "Lights on the left slingshot", "左弹弓照明"],
  ["light-sling-right", "Lights on the right slingshot", "右弹弓照明"],
  ["light-left", "Lights on top, left", "台面上左照明"],
  ["light-right", "Lights on top, right", "台面上右照明"],
  ["light-front", "Lights on the apron", "挡板照明"],
  ["light-rear", "Lights on top, rear", "台面上后照明"],
  ["earth-playfield", "Playfield earth", "台面接地"],
];

/** The harnesses that have wires, in the order in which the bench numbers them. */
export const harnessesTopic = (used: ReadonlySet<string>): Topic => ({
  tables: {
    harnesses: rows(
      "harnesses",
      LIST.filter(([name]) => used.has(`hs.${name}`)).map(([name, label, label_zh], i) => ({
        id: `hs.${name}`,
        label,
        label_zh,
        number: i + 1,
      })),
    ),
  },
});
