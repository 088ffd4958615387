import type { benchRecords as en } from "../../en/app/bench-records.ts";
import type { Translated } from "../../language.ts";

const number = (value: number): string => String(Number(value.toPrecision(3)));

/** Records that do not count, the check of the chains, and minutes spent, in Chinese. */
export const benchRecords: Translated<typeof en> = {
  title: "记录",
  check: {
    title: "记录是否与写入时一致？",
    about: "每台设备写一条以哈希相连的记录链。检查会重读全部记录，找出绕过本程序被改动、删除或插入的内容。",
    do: "检查全部记录",
    busy: "正在读取全部记录……",
    good: (streams, records) => `${streams} 台设备的 ${records} 条记录与写入时一致。`,
    bad: (count) => `有 ${count} 处与写入时不一致：`,
    asLead: "检查由组长进行。",
    stream: "设备",
    seq: "记录",
    what: "问题",
    whats: {
      changed: "被改动",
      missing: "缺失",
      inserted: "被插入",
      head: "链的末端不在原处",
      "look-up": "按其内容查不到",
    },
    advice: "在相信这些记录之前，请与备份或设备本身核对。",
  },
  aside: {
    title: "另行保存",
    about: "设备发来但不计入的记录：与其他记录矛盾，或记录者无权这样做。它们仍被保存，没有丢失。",
    none: "所有记录都计入。",
    when: "时间",
    who: "记录者",
    device: "设备",
    record: "记录",
    why: "为何不计入",
    whys: {
      hash: "指纹不符：写入后被改动。",
      fork: "该位置已有另一条记录：设备写了两段历史，例如其存储曾被恢复到以前。",
      link: "与前一条不相连。",
      gap: "前面的记录尚未到达；到达后即计入。",
      revoked: "记录者已被停用。",
      "not-allowed": "记录者无权这样做：须组长本人记录。",
      "server-only": "只能由服务器写入。",
    },
    more: (count) => `再显示 ${count} 条`,
  },
  minutes: {
    title: "工时：计划与实际",
    about:
      "车间实测的各步骤用时与计划的对比。设计人员可将中位数采用为该步骤的工时，计划、成本和工位随之变化。",
    none: "车间尚未记录任何步骤的用时。在平板上完成步骤时会自动记录。",
    step: "步骤",
    of: "属于",
    planned: "计划",
    measured: "实测中位数",
    range: "最少至最多",
    count: "次数",
    difference: "差异",
    take: "采用",
    takeTitle: (step, minutes) => `采用：“${step}”的工时设为 ${number(minutes)} 分钟`,
    taken: "已由人设定",
    few: (count) => `仅 ${count} 次`,
    minutes: (minutes) => `${number(minutes)} 分钟`,
    fromTo: (least, most) => `${number(least)} 至 ${number(most)} 分钟`,
    percent: (share) => `${share > 0 ? "+" : ""}${Math.round(share * 100)} %`,
    notPlanned: "未计划",
    note: (step, minutes, count) =>
      `“${step}”的工时按车间实测：${number(minutes)} 分钟（${count} 次的中位数）`,
    all: "也显示与计划相符的步骤",
    asPlanned: "各步骤用时与计划大致相符。",
    again: "重新读取",
  },
};
