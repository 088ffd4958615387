import type { prints as en } from "../../en/app/prints.ts";
import type { Translated } from "../../language.ts";

export const prints: Translated<typeof en> = {
  title: "图纸",
  intro: "选择车间需要的图纸。图纸在办公室电脑上生成，期间您可以继续工作。",
  noHarnesses: "还没有线束，因此没有可生成的图纸。",
  machine: "整机",
  assembly: "整机装配",
  machines: "一起制造的台数",
  making: "板件、电路板和零件",
  harnesses: "线束",
  kinds: "图纸种类，每个线束各一份",
  formats: "文件",
  language: "语言",
  languages: { en: "English", zh: "中文", both: "双语" },
  formatNames: {
    pdf: "PDF，用于打印",
    svg: "SVG，图样",
    dxf: "DXF，用于钻孔",
    xlsx: "XLSX，表格",
    csv: "CSV，表格",
  },
  all: "全选",
  none: "全不选",
  chosen: (n, of) => `${n} / ${of}`,
  make: "生成图纸",
  makeSays: (machine, assembly, harnesses, kinds) =>
    [
      machine === 0 ? "" : `${machine} 种整机图纸`,
      assembly === 0 ? "" : `${assembly} 种制作与装配图纸`,
      harnesses === 0 ? "" : `${harnesses} 个线束各 ${kinds} 种图纸`,
    ]
      .filter((text) => text !== "")
      .join("，"),
  chooseFirst: "请至少选择一种图纸（线束图纸须选线束）和一种文件。",
  failed: (why) => `未能提交生成：${why}`,
  made: "最近生成",
  noJobs: "最近没有生成图纸。请选择所需内容并点“生成图纸”，文件会出现在这里。",
  states: {
    waiting: "等待中",
    running: "正在生成",
    done: "完成",
    cancelled: "已停止",
    failed: "失败",
  },
  progress: (done, total) => `${done} / ${total}`,
  preparing: "正在读取设计册并计算导线…",
  cancel: "停止",
  from: (changeNo) => `依据第 ${changeNo} 次更改`,
  current: "设计册没有变化。",
  changedSince: (n) => `此后设计册又更改了 ${n} 次。`,
  files: (n) => `${n} 个文件`,
  allFiles: "全部打包为 .zip",
  filesOf: (harness, n) => `${harness}：${n} 个文件`,
  other: "其他文件",
  size: (kilobytes) => `${kilobytes} kB`,
};
