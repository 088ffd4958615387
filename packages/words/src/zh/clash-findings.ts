import type { RuleWords } from "../finding.ts";

/** 物件、电路板、线束、姿态与玻璃相互干涉的规则用语。 */
export const clashFindings: Readonly<Record<string, RuleWords>> = {
  "solids-clash": {
    title: "两件东西占同一位置",
    says: "{0} 与 {1}，板面以上 {from_mm} 至 {to_mm} mm 之间{moves}：重叠 {overlap_mm2} mm²，相距 {gap_mm} mm；应有 {wanted_mm} mm。",
    values: { moves: { true: "（其中之一会动）", false: "" } },
    why: "两者无法同时装上，或一弯就会相碰、短路。",
    todo: "移动其中之一，或按实物画出其各部分。",
  },
  "board-over": {
    title: "电路板下面的东西太高",
    says: "{0} 下面的 {1}：在 {overlap_mm2} mm² 上只留 {gap_mm} mm；应有 {wanted_mm} mm。",
    why: "电路板放不平，或焊接面与下面短路。",
    todo: "改用更高的支柱，或移动电路板或其下的东西。",
  },
  "standoff-height": {
    title: "支柱高度与电路板不符",
    says: "{0} 高 {height_mm} mm；{1} 的板型要求 {wanted_mm} mm。",
    why: "拧紧时电路板会弯，或离下面的东西太近。",
    todo: "换用该高度的支柱，或改正板型中的高度。",
  },
  "standoff-missing": {
    title: "电路板的固定孔没有支柱",
    says: "{0}：第 {hole} 孔处（x {x_mm}，y {y_mm} mm）没有固定它的支柱。",
    why: "电路板在那里悬空，会从旁边的孔处断裂。",
    todo: "在该处放置固定此板的支柱，或从板型中去掉该孔。",
  },
  "bundle-blocked": {
    title: "线束会穿过某个东西",
    says: "{1} 线束的 {0}（粗 {diameter_mm} mm）碰到 {2}{moves}：绕过或越过它要多走 {extra_mm} mm，而余量只有 {spare_mm} mm。",
    values: { moves: { true: "（它在那里会动）", false: "" } },
    why: "线束做好后铺不下去，或被活动件割断。",
    todo: "让线道改走别处、移动该物件，或画出它给导线留的空间。",
  },
  "no-opening": {
    title: "穿板处没有开口",
    says: "{1} 上的 {0}：{opening} {part}；有 {missing_mm2} mm² 顶在木板上。",
    values: { opening: { none: "没有开口供其通过：", small: "开口太小：" } },
    why: "装不进去。",
    todo: "开孔、扩孔，或把物件移到开口处。",
  },
  "off-panel": {
    title: "物件伸出板外",
    says: "{0} 超出 {1} 的边缘 {over_mm} mm{off}。",
    values: { off: { true: "，完全在板外", false: "" } },
    why: "那里没有可拧的木板，还会碰到相邻的板。",
    todo: "移动它，或改正板的外形。",
  },
  "pose-clash": {
    title: "不同板上的东西相碰",
    says: "{0} 与 {1}，姿态 {poses}：相距 {gap_mm} mm，平面重叠 {overlap_mm2} mm²；应有 {wanted_mm} mm。",
    why: "机器到不了该姿态，或在途中损坏。",
    todo: "移动其中之一，在应穿过处开孔，或改正姿态。",
  },
  "glass-clearance": {
    title: "玻璃下的东西太高",
    says: "{1} 下的 {0}，姿态 {poses}：只留 {gap_mm} mm；应有 {wanted_mm} mm。",
    why: "有人倚在玻璃上时会压碎，或产生响声。",
    todo: "降低它、移到玻璃较高的一端，或抬高玻璃。",
  },
};
