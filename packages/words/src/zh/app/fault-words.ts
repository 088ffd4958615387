import { faultDetails } from "./fault-details.ts";

/** What each kind of fault of a cell means. Numbers and names follow where they say more. */
const FAULTS: Readonly<Record<string, string>> = {
  "column-missing": "缺少必填的列",
  "column-unknown": "此表没有这一列",
  "column-duplicate": "该列出现两次，以第一个为准",
  "row-ragged": "该行的单元格数与表头不符",
  "rows-too-many": "行数超过上限",
  "cell-too-long": "单元格字符过多",
  "cell-control-character": "文字中只能有换行和制表符，不能有其他控制字符",
  "id-form": "标识：小写字母和数字组成的单词，用 `.`、`-` 或 `_` 连接，例如 `sw.lane-left`",
  "id-duplicate": "标识不得重复；前面已有相同标识的行，本行不被读取",
  "number-form": "普通十进制数，以 `.` 为小数点",
  "number-unit": "只写数字；单位已在列名中",
  "number-range": "数值超出该列的范围",
  "choice-unknown": "该列所列的词之一",
  "flag-form": "`yes` 或空白",
  "colour-form": "IEC 60757 的一个或两个不同颜色代码",
  "point-form": "点写作 `元件:连接器.针号` 或 `元件:端子`",
  "ref-dangling": "所指的行必须存在",
  "point-dangling": "该元件必须有此点",
  "outline-missing": "`outlines` 文件夹中必须有此文件",
  "outline-unreadable": "图形须能读取并闭合成环",
  "row-rule": "本行各单元格组合须符合规则",
  "machine-json": "`machine.json` 的该项须符合格式",
  "format-unknown": "本程序认识的格式",
};

/** Codes whose English sentence says more than the Chinese one: numbers, names and rules. */
const DETAILED: ReadonlySet<string> = new Set([
  "row-rule",
  "number-range",
  "choice-unknown",
  "column-unknown",
  "ref-dangling",
  "point-dangling",
  "machine-json",
  "outline-unreadable",
]);

/** A fault in Chinese; blank when its code says it all. */
export function faultWords(code: string, expected: string): string {
  const text = FAULTS[code] ?? "";
  if (code === "cell-blank" || text === "") return "";
  const details = DETAILED.has(code) ? faultDetails(expected.replace(/\.$/, "")) : "";
  return `${text}${details === "" ? "" : `（${details}）`}。`.replace(/`([^`]*)`/g, "“$1”");
}
