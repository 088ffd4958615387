import type { common as en } from "../../en/app/common.ts";
import type { Translated } from "../../language.ts";

export const common: Translated<typeof en> = {
  ok: "确定",
  cancel: "取消",
  close: "关闭",
  save: "保存",
  delete: "删除",
  undo: "撤销",
  redo: "重做",
  retry: "重试",
  search: "搜索",
  loading: "正在载入…",
  nothing: "无",
  all: "全部",
  more: "显示更多",
  side: { top: "正面", under: "背面" },
  severity: { error: "错误", warning: "警告", note: "提示" },
  count: (n: number) => String(n),
};
