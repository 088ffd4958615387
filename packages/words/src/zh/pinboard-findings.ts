import type { RuleWords } from "../finding.ts";

export const pinboardFindings: Readonly<Record<string, RuleWords>> = {
  "pinboard-too-large": {
    title: "钉板大于工作台",
    says: "{0}：钉板 {width_mm} × {height_mm} mm；工作台只容 {bench_width_mm} × {bench_height_mm} mm。",
    why: "线束无法整条铺开。",
    todo: "用线间连接器把线束分成两段，或换更大的工作台。",
  },
  "pinboard-crossing": {
    title: "钉板上分支交叉",
    says: "{0}：分支 {1} 与 {2} 交叉。",
    why: "上面的线束会绕住下面的，做好后取不下来。",
    todo: "撤回造成交叉的钉位，或移动其中一条分支。",
  },
  "pinboard-overlap": {
    title: "钉板上有重叠",
    says: "{0}：{1} 的夹座压在 {2} 上。",
    why: "这样的钉板无法钻孔。",
    todo: "减少同一分叉处的分支，加长尾线，或移动钉位。",
  },
  "pinboard-hand-room": {
    title: "夹座太近，手伸不进",
    says: "{0}：最窄处 {1} 距 {2} 仅 {room_mm} mm，手需要 {wanted_mm} mm。涉及夹座 {holders} 个。",
    why: "隔着旁边的夹座插线，又慢又容易插错。",
    todo: "减少同一分叉处的分支，加长尾线，或移动钉位。",
  },
  "pinboard-tail-short": {
    title: "尾线太短，胶壳难插线",
    says: "{2} 的 {0}：尾线 {tail_mm} mm，手需要 {wanted_mm} mm。",
    why: "胶壳在分叉旁转不到进线面。",
    todo: "改接到更远的路径点。",
  },
  "pinboard-peg-moved": {
    title: "钉子不在指定位置",
    says: "{1} 的 {0}：偏离 {asked_x_mm}, {asked_y_mm} 共 {off_mm} mm，分支够不到。",
    why: "以前钻好的钉板不再适用于这条线束。",
    todo: "重新钻板，或恢复分支原来的长度。",
  },
  "pinboard-direction-lost": {
    title: "分支没有沿指定方向",
    says: "{1} 的 {0}：因钉位已固定，偏离指定的 {asked_deg}° 共 {off_deg}°。",
    why: "做出来的与人所决定的不同。",
    todo: "撤回方向，或撤回钉位。",
  },
  "pinboard-peg-unreadable": {
    title: "钉位的选择读不懂",
    says: "{1} 的 {0}：应写钉板上的 x,y（mm），或一个方向角度。",
    why: "钉位改由程序决定。",
    todo: "写成 420,310 或 90 这样的形式。",
  },
  "pinboard-peg-unknown": {
    title: "钉位的选择无所属",
    says: "{0}：{1} 中没有这个节点或分支。",
    why: "线束可能已经改过。",
    todo: "删除该选择，或改正其对象。",
  },
};
