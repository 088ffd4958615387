import type { RuleWords } from "../finding.ts";

/** Wording of the rules of panels. */
export const panelsFindings: Readonly<Record<string, RuleWords>> = {
  "panel-no-sheet": {
    title: "板件没有可裁的板材",
    says: "{0}（厚 {thickness_mm} mm）：车间没有对应的库存板材 {rest}。",
    why: "它不在任何裁板图上，用料也不在物料清单里。",
    todo: "在板件的 part 一栏写明板材，并在车间的库存板材中加入该板材。",
  },
  "panel-too-big": {
    title: "板件大于任何板材",
    says: "{0}：顺纹 {along_mm} mm，横纹 {across_mm} mm；{1} 修边后只有 {sheet_along_mm} × {sheet_across_mm} mm。",
    why: "任何裁板方案都放不下它。",
    todo: "改小板件、拆成几块、改变纹理方向，或备更大的板材。",
  },
  "panel-grain": {
    title: "纹理方向多费板材",
    says: "{0}：顺纹每张出 {pieces_with_grain} 块，转向后每张出 {pieces_turned} 块。",
    why: "看不见的面不必顺这个纹理。",
    todo: "看得见就保持不变；否则把板件的纹理设为“无”。",
  },
  "panel-setting": {
    title: "同一靠尺设定的板件尺寸不同",
    says: "{0}、{rest} 的设定 {setting}：{least_mm} 至 {most_mm} mm。",
    why: "靠尺一次设定只裁一个尺寸：相配的板件会对不上。",
    todo: "改正尺寸，让它们跟随同一块板的厚度，或另取设定名。",
  },
  "thickness-far": {
    title: "板材实测厚度与标称相差太大",
    says: "{0}：实测 {measured_mm} mm，砂光胶合板应为 {least_mm} 至 {most_mm} mm。",
    why: "不是这种板材，或量错了；所有接合都跟随这个数。",
    todo: "用卡尺在离边较远处重量；改正数值或板材。",
  },
  "thickness-mixed": {
    title: "同种板材厚度不一",
    says: "{0}：实测 {measured_mm} mm；{1} 的板件按 {cut_for_mm} ± {tolerance_mm} mm 定尺寸。",
    why: "用这张板裁出的板件配不上另一厚度的接合，所以裁板方案不用它。",
    todo: "留作他用，或整台机器都用同一厚度的板材。",
  },
  "slot-thickness": {
    title: "槽装不下它的板",
    says: "{0} 上的 {2}：为厚 {nominal_mm} mm 的 {1} 画成 {drawn_mm} mm；将铣 {slot_mm} mm，板最厚可达 {most_mm} mm。",
    why: "板插不进去，或插上后松动。",
    todo: "按这块板画槽，或在车间设定中加大槽的间隙。",
  },
  "fit-worst": {
    title: "公差全取最不利时配合可能不合格",
    says: "{0}（{rest}）：最不利时 {from_mm} 至 {to_mm} mm；要求 {asked_min_mm} 至 {asked_max_mm} mm。",
    why: "大多数箱体合格，个别可能不合格。",
    todo: "相配尺寸用同一靠尺设定裁，让尺寸跟随厚度，或放宽要求。",
  },
  "fit-likely": {
    title: "配合常会不合格",
    says: "{0}（{rest}）：很可能为 {from_mm} 至 {to_mm} mm；要求 {asked_min_mm} 至 {asked_max_mm} mm。",
    why: "即使公差部分抵消，箱体仍会做错。",
    todo: "改正尺寸：让它跟随实测厚度，或改变要求。",
  },
};
