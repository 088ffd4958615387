import type { RuleWords } from "../finding.ts";

/** 游戏程序映射表各规则的措辞。 */
export const programFindings: Readonly<Record<string, RuleWords>> = {
  "address-twice": {
    title: "同一总线上两块板地址相同",
    says: "地址 {address}：{0}、{rest}。",
    why: "两块板同时应答，程序分不清。",
    todo: "改其中一块的地址。",
  },
  "bus-terminated-midway": {
    title: "总线在中间的板上被终接",
    says: "{0} 已设终端电阻；这条线的末端是 {rest}。",
    why: "中间的终端会削弱后面所有板的信号。",
    todo: "取消该处的终端，在末端设置。",
  },
  "bus-unterminated": {
    title: "总线末端没有终端电阻",
    says: "总线末端在 {0} {rest}，该处未设终端。",
    why: "信号从开路端反射，偶尔丢失报文。",
    todo: "在这条线的最后一块板上设置终端。",
  },
  "device-undriven": {
    title: "没有驱动口带动该器件",
    says: "{0}：没有任何板的驱动口通到 {1}。",
    why: "程序无法使用它。",
    todo: "接到一个驱动口，或去掉该器件。",
  },
  "device-unread": {
    title: "没有输入口读取该触点",
    says: "{0}：没有任何板的输入口通到 {1}，它也不控制任何负载。",
    why: "程序永远看不到它闭合。",
    todo: "接到输入口及其公共端，或去掉该器件。",
  },
  "driver-amps": {
    title: "驱动口带不动所接负载",
    says: "{0} 可通断 {rated_a} A；所接 {loads} 个负载共 {load_a} A：{rest}。",
    why: "驱动管会损坏，且多半是短路损坏：负载将一直通电。",
    todo: "换更强的驱动口，或把负载分到更多驱动口。",
  },
  "driver-shared": {
    title: "一个驱动口带多个器件",
    says: "{0} 带 {loads} 个器件：{rest}。",
    why: "它们会同时动作。",
    todo: "各用一个驱动口；若有意如此，请接受此项。",
  },
  "load-on-input": {
    title: "负载接在输入口上",
    says: "{0}（{load_kind}）通到输入口 {1}，没有接驱动口。",
    why: "输入口不能通断它；电源还会经负载到达输入口。",
    todo: "接到驱动口。",
  },
  "pulse-past-timeout": {
    title: "脉冲比板上的超时更长",
    says: "{0}：脉冲 {pulse_ms} ms，超时 {timeout_ms} ms。",
    why: "板会把每个脉冲截短。",
    todo: "缩短脉冲；若线圈承受得了，可加长超时。",
  },
  "switch-on-driver": {
    title: "开关接在驱动口上",
    says: "{0} 通到驱动口 {1}，没有接输入口。",
    why: "没有人读取它，闭合时等于驱动口动作。",
    todo: "接到输入口。",
  },
};
