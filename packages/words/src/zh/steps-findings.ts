import type { RuleWords } from "../finding.ts";

/** Wording of the rules of steps and stations; those of their order are with the access to screws. */
export const stepsFindings: Readonly<Record<string, RuleWords>> = {
  "fastener-no-step": {
    title: "紧固件不属于任何工步",
    says: "{0} 固定的 {1} 不在本机中；没有工步安装它。",
    why: "无人安装，或装完后料盒里剩下它。",
    todo: "注明它固定什么，或留空，或给它与被固定件相同的选项。",
  },
  "fastener-two-steps": {
    title: "两个工步要装同一件",
    says: "{0} 同时列在 {1} 和 {2} 中；按 {1} 计。",
    why: "会重复安装，螺钉重复计数。",
    todo: "从其中一个工步删去。",
  },
  "step-skill": {
    title: "没有工位具备该工步的技能",
    says: "{0} 需要技能 {skill}；没有工位具备。",
    why: "按技能排工时，该工步无人可做。",
    todo: "给具备该技能的工位补上，或改正工步中的技能。",
  },
  "step-station": {
    title: "工步指定的工位缺少技能",
    says: "{0} 需要技能 {skill}；{1} 不具备。",
    why: "该工位的人不会做，或不允许做。",
    todo: "改指定其他工位，或不指定，或给该工位补上技能。",
  },
  "step-empty": {
    title: "空工步",
    says: "{0} 没有本机的任何零件，也没有工时。",
    why: "平衡时按零工作量计，工步卡为空白。",
    todo: "给它零件或工时，或删去：装配机构、安装、布线和翻面都有各自的工步。",
  },
  "gauge-missing": {
    title: "调整没有限值",
    says: "{0}，台上第 {step} 步：须按量规调整，但未给下限和上限。",
    why: "装配者无法判断机构是否合格。",
    todo: "给出合格的最小值或最大值（或两者）及单位。",
  },
};
