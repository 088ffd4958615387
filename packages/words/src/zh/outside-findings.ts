import type { RuleWords } from "../finding.ts";

/** 外协加工各规则的措辞：图纸、标注尺寸和样件。 */
export const outsideFindings: Readonly<Record<string, RuleWords>> = {
  "drawing-missing": {
    title: "图纸文件不存在",
    says: "{0} 版本 {revision}：{file} 列在图纸表中，但不在文件夹 `drawings` 里。",
    why: "没有人能加工该零件，外发包也发不出去。",
    todo: "上传该文件，或删除这一行。",
  },
  "drawing-hash": {
    title: "图纸不是原定的文件",
    says: "{0} 版本 {revision}：{file} 的哈希为 {found}…，原定为 {meant}…。",
    why: "附上之后有人改动了文件：外协厂会做出另一种零件。",
    todo: "把正确的文件放回去；或把改动后的文件以新名称附为新版本。",
  },
  "drawing-old": {
    title: "只有其他版本的图纸",
    says: "{0} 现为版本 {revision}；其图纸属于 {revisions}。",
    why: "外协厂会拿不到图纸，或拿到错误的图纸。",
    todo: "附上现行版本的图纸，或更正零件的版本。",
  },
  "drawing-no-revision": {
    title: "有图纸的零件没有版本",
    says: "{0} 有 {revisions} 的图纸，自身却没有版本。",
    why: "没有人能说清哪张图纸是对的。",
    todo: "给零件填上现在加工的版本。",
  },
  "drawing-none": {
    title: "有标注尺寸的零件没有图纸",
    says: "{0} 版本 {revision} 有标注尺寸，却没有图纸。",
    why: "圈号标在图纸上：没有图纸就不知道测什么。",
    todo: "在“零件”的“外协加工”中附上图纸。",
  },
  "drawing-shared": {
    title: "一个文件用于两个版本",
    says: "{0}：{file} 同时用于版本 {revisions}。",
    why: "文件一改，旧版本也跟着变。",
    todo: "每个版本使用自己的文件和名称。",
  },
  "drawing-stray": {
    title: "文件不属于任何零件",
    says: "{0} 在文件夹 `drawings` 中；没有任何一行说明它是什么。",
    why: "它随设计册保存和发送，却无人使用。",
    todo: "把它附到零件上，或删除。",
  },
  "made-unsaid": {
    title: "没有告诉外协厂零件用什么做",
    says: "{0} 由外协加工，却没有给出材料。",
    why: "订单页会空着，外协厂就会自行决定。",
    todo: "在零件中填写材料。",
  },
  "dimension-odd": {
    title: "标注尺寸无法判定",
    says: "{0}，圈号 {mark}：{why}。",
    values: {
      why: { "no-tolerance": "有公称值而无公差", "no-nominal": "有公差而无公称值" },
    },
    why: "没有公差，任何实际读数都不合格；没有公称值，则无法判定。",
    todo: "按配合需要给出公差，或两者都留空：那就只作目视检查。",
  },
  "sample-fails": {
    title: "样件超差却已批准",
    says: "{0}：样件 {1} 已批准，但圈号 {marks} 不合格。",
    why: "批量会照样件生产。",
    todo: "退回样件、更正读数，或在新版本中有意放宽公差。",
  },
  "sample-open": {
    title: "样件未测完就已批准",
    says: "{0}：样件 {1} 已批准；圈号 {marks} 没有读数。",
    why: "设计者标注的尺寸没有检查。",
    todo: "测完其余尺寸并填入读数。",
  },
  "sample-stray": {
    title: "读数不属于任何尺寸",
    says: "{0}：样件 {1} 有圈号 {marks} 的读数，而零件没有这些圈号。",
    why: "该读数什么也判定不了。",
    todo: "更正圈号，或在零件中标注该尺寸。",
  },
  "sample-old": {
    title: "只批准过其他版本",
    says: "{0} 现为版本 {revision}；已批准的是 {revisions} 的样件。",
    why: "已批准的并不是现在要订购的。",
    todo: "订购批量之前，先要一件现行版本的样件。",
  },
};
