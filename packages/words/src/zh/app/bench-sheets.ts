import type { benchSheets as english } from "../../en/app/bench-sheets.ts";
import type { Translated } from "../../language.ts";

/** Sheets that are printed of the floor's records, as the app and the floor lead to them. */
export const benchSheets: Translated<typeof english> = {
  title: "打印",
  language: "表单语言",
  languages: { en: "英文", zh: "中文", both: "双语" },
  certificate: "测试证书",
  crate: "装箱清单",
  transport: "运输清单",
  label: "标签",
  labels: (count) => `标签：${count} 件产品`,
  paper: "打印在",
  papers: { a4: "A4 纸，裁开", roll: "标签打印机卷纸" },
  start: "首个空位",
  startHint: "用过一部分的纸张；逐行数，从 1 起",
  width: "宽",
  height: "高",
  mm: "mm",
  tooMany: (most) => `一次最多 ${most} 张标签：请缩小显示范围。`,
  nothing: "没有显示任何产品，无可打印标签。",
  wrongSize: (least, most) => `标签尺寸须在 ${least} 至 ${most} 之间。`,
};
