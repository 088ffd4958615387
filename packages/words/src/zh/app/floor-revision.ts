import type { floorRevision as english } from "../../en/app/floor-revision.ts";
import type { Translated } from "../../language.ts";

export const floorRevision: Translated<typeof english> = {
  rev: (name) => `版本 ${name}`,
  change: (no) => `草稿，始于变更 ${no}`,
  draft: "草稿",
  fetching: (name) => `正在取得版本 ${name} …`,
  away: (name) => `此件按版本 ${name} 制造。平板上没有该版本，服务器又无应答。不以草稿代替。`,
  again: "再试一次",
  none: (name) => `没有名为 ${name} 的发布：所示为当前的机器数据。`,
  mixed: (list) => `这些件的版本不同：${list}。请分开制造。`,
  sheets: (name) => `版本 ${name} 的图纸`,
  stepSheet: (name) => `版本 ${name} 的工步图纸`,
  about: "与发布时所制完全相同。",
  noSheet: "该发布中没有这种图纸。",
  failed: "未能取得图纸：",
  page: (n, all) => `第 ${n} 页，共 ${all} 页`,
  before: "上一页",
  after: "下一页",
};
