import type { printPage as en } from "../../en/app/print-page.ts";
import type { Translated } from "../../language.ts";

export const printPage: Translated<typeof en> = {
  title: "这份打印件还有效吗？",
  is: { current: "有效", superseded: "已被取代", draft: "未发布", unknown: "未知" },
  says: {
    current: (newest) => `本打印件与版本 ${newest} 一致，可以照此作业。`,
    change: (newest) => `本图表说明一次更改。版本 ${newest} 为最新版本，其后没有发布。`,
    superseded: (newest) =>
      `版本 ${newest} 的这份图表内容已不同。制造 ${newest} 的机台时不得使用本打印件；请丢弃，或只用于其本身版本的机台。`,
    withdrawn: (newest) => `版本 ${newest} 已没有这份图表。制造 ${newest} 的机台时不得使用本打印件。`,
    draft:
      "本打印件不属于任何已发布版本。如果它出自草稿，草稿此后可能已有更改。除非工作负责人同意，否则不要照此作业。",
    unknown:
      "这台机器的任何发布版本和草稿都没有这份图表。批次、订单和单台机器的单据不随版本发布：请重新生成以确认。",
    nowhere: "本服务器上没有这台机器。",
  },
  same: (printed, newest) => `按${printed}打印；版本 ${newest} 的这份图表内容相同。`,
  facts: {
    machine: "机器",
    sheet: "图表",
    revision: "打印件的版本",
    newest: "最新版本",
    none: "还没有",
    releases: "内容相同的版本",
    draftSince: (count) => (count === 0 ? "草稿此后没有更改。" : `草稿此后有 ${count} 次更改。`),
  },
  current: "打开有效的图表",
  asPrinted: (revision) => `打开 ${revision} 中的图表`,
  since: "此后这份图表的更改",
  pages: (pages) => `有改动的页：${pages}`,
  notesOf: (name) => `版本 ${name} 的说明`,
  noSentences: "图表内容不同，但机器的更改中没有写明原因。请把新旧两份叠在一起看。",
  overlay: "把新旧叠在一起",
  all: "全部更改",
  working: "正在查找更改…",
  enter: "打印件的编码",
  enterHint: "扫描图表角上的编码，或输入其中的文字。",
  look: "查询",
  wrong: "这不是图表的编码。",
  toBooks: "到机器列表",
};
