import type { RuleWords } from "../finding.ts";

export const routeFindings: Readonly<Record<string, RuleWords>> = {
  "classes-together": {
    title: "不应同行的类别走在一起",
    says: "线道 {0}（{rest}）：{class} 与 {other_class} 并行 {length_mm} mm。",
    why: "线圈脉冲会耦合到传感器和音频。",
    todo: "把其中一个线束改走别的线道，或在此线道禁止该类别。",
  },
  "crossing-bend": {
    title: "过渡处弯得太急",
    says: "姿态 {1} 下的过渡 {0}：半径 {radius_mm} mm，直径 {diameter_mm} mm 的线束需 {least_mm} mm（长 {length_mm} mm，间距 {distance_mm} mm）。",
    why: "开合数百次后会断丝。",
    todo: "加长过渡，或把线束分开。",
  },
  "crossing-pinch": {
    title: "过渡处可能被夹住",
    says: "姿态 {1} 下的过渡 {0}：线环深 {depth_mm} mm（最深 {deepest_mm} mm）；空间只有 {room_mm} mm。",
    why: "合上面板时会夹断线环。",
    todo: "缩短过渡、引导线环或留出空间。",
  },
  "crossing-pull": {
    title: "过渡太短",
    says: "过渡 {0}（{rest}）：长 {length_mm} mm，距离 {distance_mm} mm，短 {short_mm} mm。",
    why: "打开机器时会扯断线束。",
    todo: "加长过渡，或把两侧扎点移近铰链。",
  },
  "hinge-earth": {
    title: "铰链处接地线应最长",
    says: "{0} 经 {1}：比相邻线的 {length_mm} mm 长 {extra_mm} mm。",
    why: "线束被拉扯时接地线必须最后断开。",
    todo: "按表下线即可。",
  },
  "joint-at-hinge": {
    title: "活动段内有接头",
    says: "{3} 中的 {0} 在 {2}，紧挨活动过渡 {1}。",
    why: "弯动的接续或端子会在边缘断裂。",
    todo: "把接头移离过渡。",
  },
  "landing-unreached": {
    title: "没有线道通到此处",
    says: "{1} 中的 {0}：{tail_max_mm} mm 尾线范围内没有线道；缺 {wires_missing} 根线。",
    why: "这些线没有长度，图纸上也没有。",
    todo: "画一条经过此处的线道，或允许更长的尾线。",
  },
  "lane-class-barred": {
    title: "线道禁止该类别",
    says: "线道 {0}（{rest}）不允许 {class} 类；其中该类导线 {wires} 根。",
    why: "该线道禁止此类别是有原因的。",
    todo: "改走别的线道，或放开该线道。",
  },
  "lane-unusable": {
    title: "线道无效",
    says: "{0} 没有两个存在且不同的端点。",
    why: "任何线束都不能使用。",
    todo: "改正其两端的路径点。",
  },
  "mains-together": {
    title: "市电与其他线同行",
    says: "线道 {0}（{rest}）：{class} 与 {other_class} 并行 {length_mm} mm。",
    why: "绝缘受损时市电会窜到低压线上。",
    todo: "市电单独走一条线道。",
  },
  "tail-long": {
    title: "尾线过长",
    says: "{1} 中的 {0}：尾线 {tail_mm} mm，允许 {tail_max_mm} mm。",
    why: "没有固定的长尾线会磨损并使端子疲劳。",
    todo: "把线道移近，或放宽车间的尾线限值。",
  },
};
