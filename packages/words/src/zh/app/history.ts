import type { history as en } from "../../en/app/history.ts";
import type { Translated } from "../../language.ts";

export const history: Translated<typeof en> = {
  of: "历史对象",
  ofBook: "这台机器",
  ofShop: "车间",
  kinds: { edit: "更改", undo: "撤销", redo: "重做", import: "导入", restore: "恢复" },
  noNote: "更改",
  cells: (n) => `${n} 个单元格`,
  number: (no) => `第 ${no} 号`,
  undoneBy: (no) => `已由第 ${no} 号撤销`,
  reverses: (no) => `撤销第 ${no} 号`,
  redoes: (no) => `重做第 ${no} 号`,
  older: "显示更早的更改",
  none: "还没有任何更改。每次更改都会记录在这里：由谁所改，以及每个单元格原来的内容。",
  undoMine: "撤销我的上一次更改",
  undone: (note) => `已撤销：${note}`,
  nothingToUndo: "没有可以撤销的您的更改。",
  undoConflict: "此后有人更改了相同的单元格，未撤销任何内容。",
  manyCells: (n) => `显示全部 ${n} 个单元格`,
  row: {
    added: "新增行",
    removed: "删除行",
    changed: "已更改",
    moved: "移到表中其他位置",
    more: (n) => `……另有 ${n} 行`,
  },
  blank: "空白",
  openRow: "在表格中打开",
  drawing: (chars) => `图形，${chars} 个字符`,
  snapshots: {
    title: "命名状态",
    about: "命名状态不再改变。可以导出，也可以让设计册恢复到该状态。",
    none: "还没有命名状态。请在较大的改动之前，或机器进入车间时，为当前状态命名。",
    name: "当前状态的名称",
    make: "命名",
    taken: "已有同名状态。",
    at: (no, who, when) => `第 ${no} 号更改之后，${who}，${when}`,
    restore: "恢复",
    restored: (name, cells) =>
      cells === 0
        ? `设计册已与“${name}”相同。`
        : `设计册已恢复到“${name}”；更改了 ${cells} 个单元格。可以撤销。`,
  },
  export: {
    title: "导出",
    now: "设计册的当前状态",
    zip: "CSV 表格的 ZIP",
    xlsx: "Excel 工作簿",
  },
  failed: (why) => `无法读取历史：${why}`,
};
