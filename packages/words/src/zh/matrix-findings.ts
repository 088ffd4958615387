import type { RuleWords } from "../finding.ts";

/** 开关矩阵各规则的措辞。 */
export const matrixFindings: Readonly<Record<string, RuleWords>> = {
  "matrix-crossing-shared": {
    title: "同一交叉点上有多个开关",
    says: "{0}、{rest}：都在列 {column}、行 {row}。",
    why: "程序分不清是哪一个闭合。",
    todo: "只留一个，其余移到空交叉点；若有意并用，请接受此项。",
  },
  "matrix-diode-reversed": {
    title: "开关的二极管接反",
    says: "{0} 在列 {column}、行 {row}：其二极管挡住了本列的电流。",
    why: "该开关永远读不到闭合。",
    todo: "把二极管反过来。",
  },
  "matrix-ghost": {
    title: "没有二极管的开关使别的开关误读为闭合",
    says: "{0} 没有二极管：{set} 闭合时，断开的 {1} 也读为闭合。",
    why: "多球进行时，机器会给没有碰到的目标计分。",
    todo: "给该开关加二极管，或把其中一个开关移到别的交叉点。",
  },
};
