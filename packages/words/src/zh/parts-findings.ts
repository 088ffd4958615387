import type { RuleWords } from "../finding.ts";

/** 没有零件编号的东西。 */
const UNNAMED: Readonly<Record<string, string>> = {
  "bare-board": "裸板",
  board: "整块电路板（也没有说明板上有什么）",
  bond: "圆环端子或垫圈",
  cable: "电缆",
  contact: "端子",
  device: "器件",
  fastener: "紧固件",
  fuse: "熔断器",
  holder: "走线上固定线束的零件",
  housing: "胶壳",
  key: "防误插塞",
  mechanism: "整个机构（也没有说明其内容）",
  panel: "所用板材",
  placement: "该位置上的元件",
  sleeve: "套管",
  splice: "接头",
  tie: "扎带",
  wire: "导线",
};

/** Wording of the rules of parts. */
export const partsFindings: Readonly<Record<string, RuleWords>> = {
  "bill-circle": {
    title: "零件互相包含，形成循环",
    says: "{0} 经 {parts} 个零件包含了自己：{0}，{rest}。",
    why: "单台成本和批次所需数量都无法算出这些零件；显示的数字不含它们。",
    todo: "从 bom 中删去造成循环的那一行。",
  },
  "long-lead": {
    title: "零件交期很长",
    says: "{0} 不论怎样取得都要 {lead_days} 天；车间提示超过 {limit_days} 天的零件。",
    why: "用到它的东西不可能更早装好，下单晚了就会推迟发货。",
    todo: "最先下单、保持库存，或另找更快的供应商。",
  },
  "pack-bad": {
    title: "价格或包装数量不可用",
    says: "{0}，供应商 {1}：{from_quantity} 起单价 {price}，每包 {pack}。价格和包装数量必须大于零，每包必须是整数件。",
    why: "单台成本和给这家供应商的订单因这个零件而不确定。",
    todo: "询问供应商，改正 prices 中的这一行。",
  },
  "part-no-price": {
    title: "外购零件没有价格",
    says: "{0} 是外购或外协件，但没有供应商给出可用的价格。它出现在物料清单的 {containers} 处。",
    why: "单台成本、含有它的各部件以及批次的成本都缺这一项，并已注明。",
    todo: "补上价格或带成本的取得方式，或注明为自制。",
  },
  "part-no-source": {
    title: "没有说明零件从哪里来",
    says: "{0} 为自制，但既没有内容也没有制作方式。它出现在物料清单的 {containers} 处。",
    why: "单台成本、含有它的各部件以及批次的成本都缺这一项，并已注明。",
    todo: "在 bom 中写明内容、补上制作方式，或注明为外购。",
  },
  "part-unit": {
    title: "零件的计量单位与用量单位不同",
    says: "{0} 的用量按{wanted}计，零件却按{unit}计。",
    values: {
      wanted: { m: "米", each: "件" },
      unit: { each: "件", m: "米", m2: "平方米", kg: "千克", l: "升" },
    },
    why: "价格与数量对不上：单台成本和每一张订单都会出错。",
    todo: "改正零件的单位，并相应改正价格和包装。",
  },
  "part-unnamed": {
    title: "用到的东西没有零件编号",
    says: "{0}：机器书没有为{kind}指定零件。",
    values: { kind: UNNAMED },
    why: "没有人会订购它，单台成本和批次成本都缺这一项，并已注明。",
    todo: "为它指定零件。",
  },
  "price-currency": {
    title: "缺少供应商货币的汇率",
    says: "{0} 以 {currency} 出售 {parts} 种零件，车间没有该货币的汇率。",
    why: "单台成本和批次的现金流都缺这些零件，并已注明。",
    todo: "补上该货币及其汇率，并注明哪一种是本车间的货币。",
  },
  "price-order": {
    title: "买得多反而更贵",
    says: "{0}，供应商 {1}：{from_quantity} 起单价 {price}，少于此数时却是 {before}。",
    why: "多半是笔误，此数量下的单台成本也随之出错。",
    todo: "询问供应商，改正 prices 中的这一行。",
  },
  "single-source": {
    title: "零件只有一家供应商",
    says: "{0} 只能从 {1} 买到。",
    why: "这家一旦停售，就无法再生产，也无法维修。",
    todo: "另找供应商或替代件，或为在用的机器备足存货。",
  },
  "tool-no-cost": {
    title: "工装的成本未知",
    says: "{0}（用于制作 {1}）没有成本。",
    why: "无法判断这套工装是否划算，用它制作的单台成本也缺其分摊。",
    todo: "询价并写入 tooling。",
  },
};
