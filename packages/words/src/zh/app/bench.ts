import type { bench as en } from "../../en/app/bench.ts";
import type { Translated } from "../../language.ts";

/** Bench, in Chinese. */
export const bench: Translated<typeof en> = {
  tabs: {
    units: "产品",
    trace: "追溯与召回",
    defects: "缺陷",
    charts: "图表",
    floor: "车间现况",
    sites: "厂区",
    minutes: "工时",
    records: "记录",
  },
  notYet: "此页暂无内容。",
  noMemory: "此浏览器无法在设备上保存数据，因此无法记录：",
  continuityOf: (harness) => `导通：${harness}`,
  thisComputer: "本机",
};
