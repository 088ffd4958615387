import type { partsSheets as en } from "../en/parts-sheets.ts";
import type { Translated } from "../language.ts";

/** Words of the lists of parts. */
export const partsSheets: Translated<typeof en> = {
  all: "单台机器的全部零件",
  allShort: "全部零件",
  allHint:
    "各层合计：线束、电路板、机构和面板中的零件都计入，部件本身也计入。导线按裁切长度，板材按裁切尺寸（不含余料）；不含备件和损耗。",
  byAssembly: "按部件",
  byAssemblyHint: "每个部件直接包含的内容；其中的部件另有清单。",
  part: "零件",
  name: "名称",
  inOne: "单台数量",
  forMachines: (machines) => `${machines} 台数量`,
  quantity: "数量",
  unit: "单位",
  comes: "来源",
  made: "版本、材料、表面",
  at: "位置",
  kinds: {
    harness: "线束",
    board: "电路板",
    panel: "面板",
    mechanism: "机构",
    part: "零件",
    unnamed: "用到但没有零件编号",
  },
  sources: { buy: "外购", make: "自制", "have-made": "外协" },
  units: { each: "", m: "m", m2: "m²", kg: "kg", l: "L" },
  timesInOne: (times) => `单台 ${times} 个`,
  missing: (count) => `${count} 样东西没有零件编号：没有人会订购。`,
  kindsOfParts: (count) => `${count} 种零件`,
};
