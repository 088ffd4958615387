import type { lists as en } from "../../en/app/lists.ts";
import type { Translated } from "../../language.ts";

export const lists: Translated<typeof en> = {
  copy: "复制表格",
  copied: "已复制",
  filter: "筛选",
  filterHint: "标识或名称的一部分",
  none: "没有匹配的内容。",
  more: (n) => `再显示 ${n} 个`,
  shown: (shown, of) => (shown === of ? `${of}` : `${shown} / ${of}`),
};
