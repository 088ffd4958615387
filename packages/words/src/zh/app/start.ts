import type { start as en } from "../../en/app/start.ts";
import type { Translated } from "../../language.ts";

export const start: Translated<typeof en> = {
  lines: [
    "Pinwright 保存机器的唯一定义，并由此推导车间制造和测试所需的一切。",
    "改动一处，处处跟随：导线、长度、线束、钉板、清单和检查结果。",
    "试一试：打开 Tidewatch，在布局中拖动一个开关，观察长度和检查结果的变化。",
  ],
  open: "打开",
  machines: "机器",
  archived: "已收起",
  changed: (when) => `更改于 ${when}`,
  newBook: "新设计册",
  newHint: "从空白开始，或从小示例开始。",
  id: "短名（小写，如 storm-2）",
  label: "名称",
  labelZh: "中文名称",
  from: "起点",
  fromBlank: "空白",
  fromFirstLight: "First light（小示例）",
  fromTidewatch: "Tidewatch（完整示例）",
  make: "创建",
  taken: "已有同名设计册。",
  importTitle: "导入设计册",
  importHint: "由 Pinwright 写出或符合设计册格式的 `.zip` 或 `.xlsx`。",
  choose: "选择文件…",
  guideTitle: "First light 十分钟",
  guideHint: "一块面板、三块电路板、十几个元件：从一个开关到纸上线束的全过程。",
  guideGo: "开始",
};
