import type { RuleWords } from "../finding.ts";

/** Wording of the rules of what can catch the ball, and of the symbols of screws. */
export const ballFindings: Readonly<Record<string, RuleWords>> = {
  "ball-pocket": {
    title: "钢球会停住",
    says: "{panel}，x {x_mm}、y {y_mm} mm，{lean}：钢球停在 {rest} 之间，凹处深 {depth_mm} mm，允许 {limit_mm} mm；{way}。",
    values: {
      lean: { level: "机器水平", left: "机器向左倾 1°", right: "机器向右倾 1°" },
      way: { over: "必须爬出来", none: "没有出路" },
    },
    why: "游戏会停住，直到有人摇机器或打开机器。",
    todo: "封住凹处，使开口朝下坡，或在那里设孔或弹出机构。",
  },
  "ball-gap": {
    title: "间隙会卡住钢球",
    says: "{0} 与 {1}：在 {panel} 的 x {x_mm}、y {y_mm} mm 处相距 {gap_mm} mm；钢球 {ball_mm} mm；应至少相差 {limit_mm} mm。",
    why: "钢球会卡在那里，或偶然穿过去。",
    todo: "用立柱封住间隙，或把它加宽。",
  },
  "ramp-clearance": {
    title: "钢球上方空间不足",
    says: "{0}：在 {panel} 的 x {x_mm}、y {y_mm} mm 处净高 {room_mm} mm；钢球需要 {need_mm} mm。",
    why: "钢球钻到下面会减速或卡住，并磨损零件。",
    todo: "抬高零件，或用挡墙、立柱把钢球挡在外面。",
  },
  "screw-lookalike": {
    title: "外形相似的螺钉并排",
    says: "{0}（{2}，{length_mm} mm）与 {1}（{3}，{other_length_mm} mm）相距 {distance_mm} mm，手中外形相似度 {alike_pct} %；共 {pairs} 处。若在 {0} 处装错，另一种{harm}。",
    values: {
      harm: {
        through: "会穿出对面",
        bottom: "会顶到螺孔底",
        short: "太短，固定不住",
        askew: "会使电路板或塑料板歪斜",
      },
    },
    why: "装配工会拿错，而后果要很久才看得出来。",
    todo: "两处用同一种，或选用另一种颜色或头型，或指定一个差别最大的符号。",
  },
  "symbol-alike": {
    title: "两个符号太相似",
    says: "{0}（{letter}）与 {1}（{other_letter}）：符号相似度 {alike_pct} %，限值 {limit_pct} %；有 {pairs} 对相邻。",
    why: "在图上会把一种螺钉看成另一种。",
    todo: "取消其中一个选择，或选用形状和填充都不同的符号。",
  },
};
