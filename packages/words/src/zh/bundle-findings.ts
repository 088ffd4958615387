import type { RuleWords } from "../finding.ts";

const overfull = (title: string, place: string, todo: string): RuleWords => ({
  title,
  says: `${place} {0}：{rest} 共 {circles} 根线缆，布成后直径 {laid_mm} mm（目前最紧密排列 {packed_mm} mm，理论上不小于 {lower_bound_mm} mm）；只容 {max_mm} mm。`,
  why: "线束穿不过去，或绝缘层被压伤。",
  todo,
});

/** Wording of the rules of bundles and of what they go through. */
export const bundleFindings: Readonly<Record<string, RuleWords>> = {
  "lane-overfull": overfull("走线通道过满", "通道", "将某一线束改走他路，或加宽通道。"),
  "crossing-overfull": overfull("跨接处过满", "跨接处", "将某一线束改走其他跨接处，或留出更大空间。"),
  "hole-overfull": overfull("过线孔过小", "过线孔", "扩孔，或将某一线束改走其他孔。"),
  "clip-overfull": overfull("线夹过小", "线夹位置", "换用更大的线夹或线座，或再加一个。"),
  "clip-loose": {
    title: "线夹过大",
    says: "线夹位置 {0}：{rest} 共 {circles} 根线缆，布成后直径 {laid_mm} mm；该线夹适用 {min_mm} 至 {max_mm} mm。",
    why: "线束在线夹内晃动会磨损。",
    todo: "换用更小的线夹或线座。",
  },
  "bend-tight": {
    title: "转弯空间不足",
    says: "线束 {1} 在 {0} 转弯 {turn_deg}°，直径 {diameter_mm} mm：半径 {radius_mm} mm 的弯从距拐角 {tangent_mm} mm 处开始，而较短分支的一半只有 {room_mm} mm；可容半径 {radius_possible_mm} mm。",
    why: "弯得过急，线芯会断丝，绝缘会开裂。",
    todo: "移动走线点，另设通道切过拐角，或接受较小的半径。",
  },
};
