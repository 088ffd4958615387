import type { RuleWords } from "../finding.ts";

/** Wording of the rules of boards. */
export const boardsFindings: Readonly<Record<string, RuleWords>> = {
  "bath-blocked": {
    title: "该板用浸焊从不合算",
    says: "{0}：浸焊每块 {bath_min} 分钟，手工 {hand_min} 分钟（焊点 {joints} 个，其中隐蔽 {hidden} 个；遮蔽 {masks} 处；清洗后焊点 {after_wash} 个）。",
    why: "遮蔽、隐蔽焊点、浸焊和清洗所花的时间超过手工焊接，数量再多也一样。",
    todo: "手工焊接；或让一个载具多装几块，并调整布局以减少遮蔽。",
  },
  "board-no-parts": {
    title: "电路板没有元件",
    says: "{0}：本机 {boards} 块；资料中既无其元件，也无成品板的零件号。",
    why: "既不能插件也不能订购，整机成本中缺这一项。",
    todo: "在元件位置表中录入其元件，或填写外购或外协的成品板零件（`stuffed_part`）。",
  },
  "board-no-test": {
    title: "电路板没有测试",
    says: "{0}：本机 {boards} 块；没有范围为 `board` 的测试。",
    why: "板的故障要到整机上才发现，查找最费时。",
    todo: "增加：焊点目检、空载电流、每路输出的应答，并给出限值。",
  },
  "placement-hole": {
    title: "元件占了固定螺钉的位置",
    says: "{0} 上的 {1}：距固定孔中心 {gap_mm} mm；螺钉头需要 {least_mm} mm。",
    why: "螺钉拧不进去，或螺钉头压坏元件。",
    todo: "移动元件或固定孔。",
  },
  "placement-off": {
    title: "元件伸出板边",
    says: "{0} 上的 {1}：超出板边 {over_mm} mm。",
    why: "该处无法焊接，或会碰到安装面。",
    todo: "改正位置、尺寸或角度，或改正板的外形。",
  },
  "placement-overlap": {
    title: "板上两个元件占同一位置",
    says: "{0} 上的 {1} 与 {2} 重叠 {area_mm2} mm²。",
    why: "只能装进其中一个。",
    todo: "改正位置、尺寸或角度；若一个确实在另一个下方，请标为焊点隐蔽。",
  },
  "placement-too-high": {
    title: "元件高于板的标称高度",
    says: "{0} 上的 {1}：高 {height_mm} mm；板的高度填为 {board_mm} mm。",
    why: "板上方空间按较低的数值检查，可能有东西挡住该元件。",
    todo: "改正元件或板型的高度，或选用较矮的元件。",
  },
  "polarity-missing": {
    title: "未注明元件方向",
    says: "{0} 上的 {1}（{2}）：没有方向标记。",
    why: "装反会立即损坏，或在用户处损坏；插件指导书也无法标示。",
    todo: "注明正确方向的标记（色环、缺口、平边、条纹）；若两个方向都可，请接受本条。",
  },
  "test-no-limits": {
    title: "测量没有限值",
    says: "{0} 为测量项，但未给下限和上限。",
    why: "测试者写下读数，却无法判断是否合格。",
    todo: "按设计给出最小值或最大值，或两者。",
  },
};
