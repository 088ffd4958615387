import type { panels as english } from "../../en/app/panels.ts";
import type { Translated } from "../../language.ts";

const number = (value: number, digits: number): string => String(Number(value.toFixed(digits)));
const mm = (value: number): string => `${number(value, 1)} mm`;
const signed = (value: number): string =>
  `${value > 0 ? "+" : value < 0 ? "−" : "±"}${number(Math.abs(value), 2)}`;

export const panels: Translated<typeof english> = {
  tabs: { sizes: "尺寸", cutting: "下料", fits: "配合", paint: "油漆" },
  empty: "还没有从板材裁切的板件。请在板件表的“part”列填写所用板材，并把板材写入车间的库存板材表：",
  mm,
  mm2: (value) => `${number(value, 2)} mm`,
  exact: (value) => number(value, 2),
  machines: "台数",
  ofRun: (run, count) => `${run}：${count}`,
  print: "可打印的图纸：",
  findings: "存在的问题",
  noFindings: "没有发现问题。",
  accepted: "已接受",

  sizesTitle: "板件尺寸",
  sizesAbout: "每块板件在铣外形和开孔之前裁成的尺寸。随厚度变化的尺寸按库存板材的实测厚度计算。",
  panel: "板件",
  sheet: "板材",
  noSheet: "不从板材裁切",
  drawn: "图纸尺寸",
  cut: "裁切尺寸",
  by: (width, height) => `${number(width, 1)} × ${number(height, 1)} mm`,
  differs: (dx, dy) =>
    [dx === 0 ? "" : `x ${signed(dx)}`, dy === 0 ? "" : `y ${signed(dy)}`]
      .filter((text) => text !== "")
      .join("，"),
  thickness: "厚度",
  measured: "实测",
  nominal: "标称",
  nominally: (value) => `标称 ${mm(value)}`,
  notMeasured: "未测量",
  setting: "靠尺设定",
  settingOf: (direction, name) => `${direction}：${name}`,
  together: (count) => `另有 ${count} 个同设定`,
  tolerance: "公差",
  toleranceOf: (direction, minus, plus) =>
    minus === plus
      ? `${direction} ±${number(plus, 2)} mm`
      : `${direction} +${number(plus, 2)} −${number(minus, 2)} mm`,
  grain: "纹理",
  grains: { x: "沿 x", y: "沿 y", none: "不限" },
  follows: (names) => `随 ${names} 的厚度变化`,
  inLayout: "看图",
  inTable: "看表",
  showAll: "显示全部板件",
  noSuchPanel: (id) => `没有要裁切的板件“${id}”。`,

  cuttingTitle: "板材下料",
  cuttingAbout: (kerf) => `适用于台锯：每一刀都从边到边。锯路宽 ${mm(kerf)}；锯路和裁切级数在此修改：`,
  shopSettings: "车间设置",
  looking: (done, of) => `正在寻找方案：第 ${done + 1} 种板材，共 ${of} 种 …`,
  stopped: "已停止：下列板材已排好，其余未排。",
  again: "继续排其余板材",
  sheets: "板材张数",
  sheetCount: (fresh, offcuts) => (offcuts === 0 ? String(fresh) : `${fresh} + ${offcuts} 块余料`),
  forMates: (sheets) => `比最少张数多取 ${sheets} 张，使相配的板件在整批中用同一靠尺设定裁出。`,
  split: (names) => `需多次设定，因此相配的板件不能全部用同一设定裁出：${names}。`,
  differentSettings: "不同的靠尺设定",
  setups: "设定靠尺的次数",
  leastSetups: (least) => `这些排样至少需要 ${least} 次`,
  leastSetupsMet: "这些排样必须这么多次",
  sawTime: "锯台时间",
  minutes: (minutes) => (minutes < 120 ? `${number(minutes, 0)} 分钟` : `${number(minutes / 60, 1)} 小时`),
  cutCount: (count) => `${count} 刀`,
  setupWork: (pattern, copies, cuts) =>
    `排样 ${pattern}${copies > 1 ? `（${copies} 张）` : ""}：第 ${cuts.join("、")} 刀`,
  settingsHint: "按工作顺序，跨所有板材：相配的尺寸在同一设定下裁出，不移动靠尺。点按可看该设定的各刀。",
  atSetup: (setup) => `设定 ${setup}`,
  unplaced: (names) => `没有剩余板材可裁：${names}。车间库存不足。`,
  proven: (least) => `任何方案都不少于 ${least} 张`,
  gap: (least) => `理论下限 ${least} 张，尚未找到这样的方案`,
  leastSettings: (least) => `这些尺寸至少需要 ${least} 次`,
  leastSettingsMet: "这些尺寸必须这么多次",
  used: "板材利用",
  usedPct: (pct) => `${number(pct, 0)} %`,
  usedSays: "成为板件；其余是锯末、余料和废料",
  offcuts: "可留用的余料",
  noOffcuts: "无",
  offcutOf: (count, width, length) => `${count} × ${number(width, 0)} × ${number(length, 0)} mm`,
  allSettings: "全部靠尺设定",
  cutKinds: { trim: "修边", rip: "纵切", cross: "横切" },
  cutHelp: {
    trim: "修边：先切掉原厂边，得到直边",
    rip: "纵切：沿板材长度方向",
    cross: "横切：垂直于板材长度方向",
  },
  fenceAt: (value) => number(value, 1),
  pattern: (index, copies) => `排样 ${index}：${copies} 张`,
  patternTab: (index, copies) => `${index}（${copies} 张）`,
  patterns: "排样",
  ofStock: (id, width, length) => `${id}，${number(width, 0)} × ${number(length, 0)} mm`,
  offcutStock: "库存余料",
  drawingOf: (index, panels, cuts) => `排样 ${index}：${panels} 块板件，${cuts} 刀；裁切顺序见旁边的列表`,
  order: "裁切顺序",
  orderHint: "指向或点按一刀，即可在图中看到它。方向键可依次查看。",
  done: (names) => `完成：${names}`,
  cutWord: "刀",
  panelSays: (name, width, height, copy) =>
    `${name}，${number(width, 1)} × ${number(height, 1)} mm，第 ${copy} 块`,
  offcut: "余料",
  legend: {
    "panel later": "板件",
    "panel now": "此刀完成",
    "panel done": "之前已完成",
    offcut: "留用余料",
    waste: "废料和修边",
    cut: "当前这一刀",
    grain: "面板纹理",
  },
  tooLarge: (names) => `大于任何板材：${names}。没有更大的板材就无法排样。`,
  notPlanned: "未排样。",
  keepTitle: "这些板材裁完之后",
  keepDo: (count) => `把 ${count} 块余料放回库存`,
  takeDo: "从库存扣除板材",
  keepAbout:
    "各种板材的余料成为车间库存板材表的行，用掉的已计数板材和余料从库存扣除。一次撤销可全部恢复。此后这里的方案会先用这些余料。",
  keepNote: (count, sheets) => `板材已裁：用掉 ${sheets} 张，放回余料 ${count} 块`,
  kept: (count) => `${count} 块余料已在库存中。上面的方案是下一次下料的。`,

  fitsTitle: "箱体配合",
  fitsAbout:
    "箱体必须达到的每个间隙或尺寸，由相加的板件算出。最坏情况是所有板件同时处于极限；可能范围取平方和的根，即各误差相互独立时的结果。",
  noFits: "还没有要求的配合。配合是装配后箱体的间隙或尺寸，有其极限和相加的板件：",
  fit: "配合",
  fitVerdicts: {
    good: "合格，最坏情况也合格",
    likely: "多半合格；最坏情况超出",
    bad: "多半超出",
    open: "没有要求极限",
  },
  asked: "要求",
  limits: (min, max) =>
    min === null
      ? max === null
        ? "无极限"
        : `不大于 ${number(max, 2)} mm`
      : max === null
        ? `不小于 ${number(min, 2)} mm`
        : `${number(min, 2)} 至 ${number(max, 2)} mm`,
  middle: "按裁切尺寸",
  worst: "最坏情况",
  rss: "可能范围（RSS）",
  range: (min, max) => `${number(min, 2)} 至 ${number(max, 2)} mm`,
  fitChart: (name, worst, rss, limits) => `${name}：最坏情况 ${worst}，可能 ${rss}，要求 ${limits}`,
  terms: "由什么相加",
  term: "项",
  dimension: "尺寸",
  dimensions: { width: "宽", height: "高", thickness: "厚", other: "外购或实测" },
  times: "倍数",
  timesOf: (times) => `${times < 0 ? "−" : "+"}${number(Math.abs(times), 3)}`,
  value: "数值",
  tolOf: (minus, plus) =>
    minus === plus ? `±${number(plus, 2)}` : `+${number(plus, 2)} −${number(minus, 2)}`,
  share: "占偏差的份额",
  sharePct: (pct) => `${number(pct, 0)} %`,
  total: "合计",

  paintTitle: "机箱油漆",
  paintAbout: (rack, hours) =>
    `晾架可放 ${rack} 台机箱；每个工作日 ${number(hours, 1)} 小时。一批晾干时（夜间也晾），只要晾架有空就做下一批。`,
  noCoats: "车间还没有涂层。每道涂层有作业分钟数和干燥小时数：",
  batch: "批",
  batchOf: (index, cabinets) => `第 ${index} 批：${cabinets} 台`,
  cabinets: "机箱",
  batches: "批数",
  batchSize: (size, several) => `每批 ${size} 台${several ? "，最后一批可能较少" : ""}`,
  coat: "涂层",
  worked: "作业",
  drying: "干燥",
  night: "夜间无人作业",
  dayAxis: "工作日",
  clock: (hour) => {
    const day = Math.floor(hour / 24 + 1e-9);
    return `第 ${day + 1} 天 ${number(hour - 24 * day, 1)} 小时`;
  },
  clockHelp: "小时从当天上班起算。",
  lastDry: "最后一批干透",
  earliest: (time) => `无论如何安排都不早于${time}`,
  earliestMet: "没有更早的方案",
  paintChart: (batches, end) => `${batches} 批，至${end}：每道涂层的作业和干燥；数字见下表。`,
  coatSays: (coat, start, end, dry) => `${coat}：作业自${start}至${end}，${dry}干`,
  begins: "作业开始",
  ends: "作业结束",
  dry: "干燥完成",
  allBatches: (count) => `显示全部 ${count} 批`,
  caution: "溶剂、喷雾和粉尘：请遵守厂家的安全数据表以及当地关于通风、防火和呼吸防护的规定。",
  sawCaution: "台锯：装好护罩和分料刀，使用推杆，佩戴护目镜和耳罩，开启吸尘；长料在锯后要有支承。",
};
