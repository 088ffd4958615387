import type { RuleWords } from "../finding.ts";

/** Wording of the rules of runs. */
export const runsFindings: Readonly<Record<string, RuleWords>> = {
  "run-late": {
    title: "批次不能在发货日完成",
    says: "批次 {0} 应于 {ship} 发货；最早 {ready} 完成，晚 {late_days} 天。原因：{rest}。",
    why: "有的零件或工作本应在今天以前订购或开始。",
    todo: "改发货日，为卡住的零件找更快的供应商，增加人手，或少做几台。",
  },
  "run-past": {
    title: "批次的发货日已过",
    says: "批次 {0} 应于 {ship} 发货；今天是 {today}。",
    why: "它的订单和日期从今天起尽早安排。",
    todo: "定一个新的发货日，或把它设为已完成。",
  },
  "run-mix": {
    title: "批次的配置数多于台数",
    says: "批次 {0} 有 {machines} 台；配置共要 {asked} 台。",
    why: "超出的部分不计划，排在后面的行台数不足。",
    todo: "改正配置的台数或批次的台数。",
  },
  "run-options": {
    title: "批次的配置要了不可能的选项",
    says: "批次 {0}：{rest}。{kind}",
    why: "机器书里没有这个选项，或同类的两个选项互相排斥；计划时略去。",
    todo: "只写机器书里有的选项，每类一个。",
    values: { kind: { unknown: "机器书里没有这个选项。", twice: "它们属于同一类。" } },
  },
  "run-other-book": {
    title: "批次制造的是另一台机器",
    says: "批次 {0} 制造 {1}，那是另一本机器书。",
    why: "这里不计划它：它的用料和在相同工作台上的工时都没有计入。",
    todo: "打开那本机器书来计划，并注意两者共用工作台。",
  },
  "run-not-approved": {
    title: "零件的样件未批准",
    says: "{0} 版本 {revision}：最晚 {day} 要样件；批准后才订整批。",
    why: "按错图或用错模具做出的整批就是白花的钱。",
    todo: "要一件样件，测量标注的尺寸，批准或退回。",
  },
  "stage-capacity": {
    title: "某工段没有人做",
    says: "{0}：工作台上 {people} 人，却有批次的工作。",
    why: "进度按不花时间计算，或根本找不到日子。",
    todo: "给该工段配有人、有工时的工作台，提高每天台数，或注明不需要工时。",
  },
  "stage-circle": {
    title: "工段互相等待成环",
    says: "{0}、{rest}。",
    why: "任何机器都无法开始其中任何一段；进度让其中一段先走。",
    todo: "去掉其中一个等待关系。",
  },
  "calendar-site": {
    title: "一个工段分在假日不同的几个厂区",
    says: "{0} 的工作台在 {rest}。",
    why: "每个工作台按本厂区放假；零件到期日按第一个厂区计算。",
    todo: "如果差别要紧，每个厂区单独设一个工段。",
  },
  "order-least": {
    title: "订单低于供应商的最低金额",
    says: "{day} 的 {1}：{value} {currency}；{0} 的订单从 {least} {currency} 起。",
    why: "供应商可能拒绝，或补收差额。",
    todo: "把以后要用的一起订，换供应商，或与其商定。",
  },
  "stock-negative": {
    title: "出库多于库存",
    says: "{0}：{day} 的变动 {1} 之后为 {balance}。",
    why: "数目有错，而批次的用料按它计算。",
    todo: "清点该零件并录入，或给这次变动写明原因。",
  },
  "need-unsourced": {
    title: "批次需要一个无法得到的零件",
    says: "{0}：{rest} 需要 {quantity}；没有价格、做法或内容。",
    why: "它不在任何订单里，机器成本也缺这一项。",
    todo: "补上价格、做法，或它包含什么。",
  },
};
