import type { benchFloor as en } from "../../en/app/bench-floor.ts";
import type { Translated } from "../../language.ts";

/** The live floor page, and what is at which site. */
export const benchFloor: Translated<typeof en> = {
  title: "车间现况",
  empty: "没有在制产品。这里显示每个已开工而未放行的产品：在哪道工序，被什么卡住。",
  emptyHow: "在“产品”页发放编号；此后车间的情况就显示在这里。",
  noRun: "不属于批次",
  screen: "全屏",
  leave: "退出",
  asOf: (time) => `截至 ${time}`,
  live: "实时",
  notCurrent: (time) => `不是最新：截至 ${time}`,
  page: (at, of) => `${at} / ${of}`,
  more: "更多",
  hold: "停在此页",
  turn: "自动翻页",
  stage: "工序",
  atBench: "在工位上",
  kinds: { machine: "整机", board: "电路板", harness: "线束", mechanism: "机构" },
  released: (done, of) => `${of} 台中已放行 ${done} 台`,
  begun: "已开工",
  today: "今天一次通过",
  todayNone: "今天还没有测试",
  todayYield: (first, units) => `${units} 件中 ${first} 件`,
  defectsToday: (count) => `今天 ${count} 条缺陷`,

  stuck: "卡住的",
  noStuck: "没有卡住的。",
  quietAfter: "无记录超过",
  hours: (hours) => `${hours} 小时`,
  why: {
    defect: (what) => `缺陷未修：${what}`,
    test: (test) => `未通过：${test}`,
    way: (site) => `在去${site}的路上`,
    quiet: "没有新记录",
  },
  since: (minutes) =>
    minutes < 60
      ? `${minutes} 分钟`
      : minutes < 48 * 60
        ? `${Math.floor(minutes / 60)} 小时`
        : `${Math.floor(minutes / 1440)} 天`,
  others: (count) => `+${count}`,

  waits: "谁在等什么",
  waitsUnknown: "还不知道：正在打开设计册。",
  noWaits: "没有整机在等电路板或线束。",
  waitsFor: (machines) => `${machines} 台在等`,
  waitLine: (missing, inWork, ready) =>
    [
      `缺 ${missing}`,
      ready > 0 ? `已备好 ${ready}` : "",
      inWork > 0 ? `在制 ${inWork}` : "",
      ready + inWork < missing ? `未开工 ${missing - ready - inWork}` : "",
    ]
      .filter((text) => text !== "")
      .join(","),
  shelf: "货架上已没有",

  sites: {
    title: "厂区",
    about:
      "什么在哪里、什么在厂区之间的路上、每个厂区有什么在等着做。与服务器断开的厂区，显示的是最后一次联系时的情况。",
    noSites: "工坊没有厂区。由设计者在工坊的厂区表中填写。",
    none: "还没有在制产品的位置记录。",
    unknown: "未注明在哪里",
    matrix: "按厂区和工序统计的产品",
    site: "厂区",
    all: "合计",
    way: "在路上",
    noWay: "路上没有东西。",
    transport: (transport) => `运输 ${transport}`,
    to: (site) => `去${site}`,
    sentAt: (when, ago) => `${when} 发出（${ago}）`,
    unitsOn: (out, counted) => (counted === 0 ? `${out} 件` : `车上 ${out} 件，已点收 ${counted} 件`),
    missing: (count) => `缺 ${count} 件：其余已点收。`,
    list: "运输清单",
    unit: "产品",
    type: "种类",
    state: "状态",
    states: { way: "在路上", missing: "缺", in: "已点收" },
    own: (site) => `${site}的工作`,
    noStages: "没有工序的工位在这个厂区。",
    waits: "等着做",
    coming: "将到",
    last: "最后联系",
    never: "从未",
    nothing: "无",
  },
};
