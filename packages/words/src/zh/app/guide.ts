import type { guide as en } from "../../en/app/guide.ts";
import type { Translated } from "../../language.ts";

export const guide: Translated<typeof en> = {
  title: "初光十分钟",
  at: (n, of) => `第 ${n} 步，共 ${of} 步`,
  done: "完成",
  go: "带我去",
  leave: "退出引导",
  smaller: "收小",
  larger: "显示步骤",
  again: "重新开始",
  finishedTitle: "全过程到此完成",
  finished: "您移动了一个开关，它的导线、清单和钉板都随之改变。守潮人（Tidewatch）也是如此，只是更大。",
  toTidewatch: "前往所有机器",
  steps: {
    move: {
      title: "移动一个开关",
      text: "在“布局”中，把左道开关（sw.left，在背面）拖动几厘米。拖动时导线随之移动，旁边显示新的长度。",
      seen: "已移动。它的导线在清单、钉板和每张图纸上都按新长度裁切。",
    },
    finding: {
      title: "看一项检查结果",
      text: "打开“检查结果”。每一项都用数字说明问题、为什么重要、怎么处理，并可前往相应位置。",
      seen: "已查看。可以容许的结果可注明理由后接受；变差时会重新出现。",
    },
    pinboard: {
      title: "打开一块钉板",
      text: "打开“线束”并选择一条。钉板按打印的样子以实际尺寸显示，包括每个钉和每个插壳。",
      seen: "线束就在这块板上制作。",
    },
    cell: {
      title: "更改表格中的一个单元格",
      text: "打开“表格”，选择 devices，更改一个名称或数字。机器的每个数据都在这些表格中，也可以从任何电子表格粘贴。",
      seen: "已更改并保存，所有打开此设计册的人立即可见。",
    },
    undo: {
      title: "撤销",
      text: "按 Ctrl+Z，或点上方栏中的箭头。这里所做的一切都可以撤销；“历史”显示每次更改以及原来的内容。",
      seen: "已撤销。",
    },
    sheet: {
      title: "制作一张图纸",
      text: "打开“图纸”，选择一条线束和一种图纸，制作成 PDF。图纸按比例准确，可以直接拿到工作台。",
      seen: "已制作。按实际尺寸打印，就可以制作线束了。",
    },
  },
};
