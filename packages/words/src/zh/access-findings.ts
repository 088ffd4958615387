import type { RuleWords } from "../finding.ts";

/** Why a tool can never be set on. */
const BECAUSE: Readonly<Record<string, string>> = {
  "own-tip": "它自己固定的零件挡在钉头上方",
  "own-grip": "它自己固定的零件挡住手",
  beneath: "挡路的零件必须先装好",
};
const CLEAR: Readonly<Record<string, string>> = { "-": "无" };
const TOOL: Readonly<Record<string, string>> = { "-": "常用工具" };

/** Wording of the rules of what tool and hand reach, and what comes off for service. */
export const accessFindings: Readonly<Record<string, RuleWords>> = {
  "driver-missing": {
    title: "车间没有合适的工具",
    says: "{0}（{drive}）：机器中共 {fasteners} 个，第一个是 {1}；工具表中没有适合此槽型的工具。",
    why: "无法判断工具是否有空间，步骤卡上也写不出工具。",
    todo: "在车间工具表中添加该工具，或更正紧固件类型的槽型。",
  },
  "driver-blocked": {
    title: "紧固件永远拧不到",
    says: "{0} 用 {tool}（刀头长 {tip_mm} mm）：{because}：{rest}。够用的刀头长度：{clear_tip_mm} mm。",
    values: { because: BECAUSE, clear_tip_mm: CLEAR, tool: TOOL },
    why: "需要拧它的时候，工具套不上钉头。",
    todo: "若整个外形并没有那么高，请给该类型填写实体；否则移动紧固件、移开挡路的零件，或添加刀头更长的工具。",
  },
  "nut-blocked": {
    title: "螺母永远扳不住",
    says: "{0} 用 {tool}：{because}：{rest}。",
    values: { because: BECAUSE, tool: TOOL },
    why: "没有可供扳手摆动的空扇区，螺母会跟着螺钉转。",
    todo: "改用自锁的螺母（如爪形螺母），移动紧固件，或移开螺母旁的零件。",
  },
  "service-deep": {
    title: "要拆下很多东西才能够到紧固件",
    says: "{0} 的 {1}：要先拆下 {off} 件，最多希望 {most} 件：{rest}。",
    why: "要拆半台机器的修理没人会做，或者会带来新的毛病。",
    todo: "转动或移开压在上面的零件；若几乎不会磨损，可接受此项。",
  },
  "order-loop": {
    title: "工序互相等待成环",
    says: "{rest}：每一个都要在下一个之前完成，最后一个又要在第一个之前。已放弃：{0} 先于 {1}（{why}，{at}）。",
    values: {
      why: {
        rule: "设计者的规则",
        wired: "封盖之前先布线",
        covers: "下面的先于压在上面的",
        "hides-nut": "螺母会被挡住",
        hides: "紧固件会被挡住",
        stands: "线束在其端点零件之后",
        built: "先装配再安装",
      },
    },
    why: "没有任何顺序能全部满足；所示顺序只没有遵守被放弃的那一条。",
    todo: "修改链条中代价最小的一环：撤回规则、移动走线或紧固件，或把零件分成两件拆装。",
  },
  "rule-idle": {
    title: "不起作用的顺序规则",
    says: "{0}：{missing}。",
    values: {
      missing: {
        first: "这台机器里没有先做的东西",
        after: "这台机器里没有后做的东西",
        both: "这台机器里两者都没有",
        same: "两者是一起装上的",
      },
    },
    why: "写这条规则时想要的顺序没有被遵守。",
    todo: "更正规则，或删除它。",
  },
};
