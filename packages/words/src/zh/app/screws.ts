import type { screws as english } from "../../en/app/screws.ts";
import type { Translated } from "../../language.ts";

const mm = (value: number): string => `${Number(value.toFixed(1))} mm`;
const round2 = (value: number): number => Number(value.toFixed(2));
const plain = (value: number): string => String(Number(value.toPrecision(9))).replace("-", "−");

export const screws: Translated<typeof english> = {
  map: (panel, side) =>
    `${panel}${side}的螺钉。方向键移动图纸，加减号缩放，逗号和句号切换步骤，空格播放装配顺序，T 翻面。`,
  steps: "步骤",
  findStep: "步骤编号或名称",
  noSteps: (text) => `没有名为“${text}”的步骤。`,
  screws: (n) => `${n} 颗螺钉`,
  count: (at, of) => `${at} / ${of}`,
  stepOf: (at, of, title) => `第 ${at} 步，共 ${of} 步：${title}`,
  times: (n) => `${n} ×`,
  play: {
    title: "播放装配顺序",
    start: "播放（空格）",
    pause: "暂停（空格）",
    back: "上一步（,）",
    forward: "下一步（.）",
    slider: "步骤",
    speed: "速度",
    times: (n) => `${n} ×`,
  },
  bar: {
    title: "面板与视图",
    list: "步骤列表",
    fit: "显示整个面板（0）",
    fitStep: "显示本步骤的部位（F）",
    larger: "放大（+）",
    smaller: "缩小（−）",
    bench: "在工位屏幕上显示本步骤",
    fromTop: "从正面看",
    fromTopHint: "关：按装配者看到的背面，左右镜像。开：如同从正面透过面板看。",
  },
  onBench: "本步骤在专用工作台上完成，不涉及任何面板。",
  onNoPanel: "本步骤不涉及任何面板。",
  elsewhere: (panel, side) => `本步骤在${panel}${side}进行。`,
  empty:
    "还没有推导出装配步骤。步骤来自机构、电路板、紧固件和线束；请在面板上放置紧固件，或在机构类型中说明其固定方式。",
  toFasteners: "打开紧固件表",
  toSteps: "在“步骤”中查看",
  timesDone: (n) => `每台机器做 ${n} 次`,
  caution: "注意：",
  screwsHeading: "螺钉",
  types: "螺钉类型",
  allTypes: "整机所有类型",
  typeSize: (thread, diameterMm, lengthMm, drive) =>
    [thread === "" ? `⌀ ${mm(diameterMm)}` : thread, lengthMm > 0 ? mm(lengthMm) : "", drive]
      .filter(Boolean)
      .join(" · "),
  allOfType: (n) => `显示全部 ${n} 颗`,
  sought: (here, all) => `本面有 ${here} 颗此类型，整机 ${all} 颗，图上已圈出。`,
  tools: "工具",
  harness: "线束",
  parts: "零件",
  benchWork: "机构工作台上的工作",
  benchKinds: { build: "组装", adjust: "调整", cycle: "循环测试", retighten: "再次拧紧" },
  gauge: (nominal, min, max, unit) => {
    const limits =
      min !== null && max !== null
        ? `${plain(min)} 至 ${plain(max)}`
        : min !== null
          ? `至少 ${plain(min)}`
          : max !== null
            ? `至多 ${plain(max)}`
            : "";
    const value =
      nominal === null ? limits : limits === "" ? plain(nominal) : `${plain(nominal)}（${limits}）`;
    return `${value}${value.endsWith("）") ? "" : " "}${unit}`.trim();
  },
  closeScrew: "回到步骤",
  purpose: "用途",
  holds: "固定",
  holdsNothing: "面板本身或外购件",
  step: "步骤",
  noStep: "不在任何步骤中",
  turn: (step, turn) => `第 ${step} 步，其中第 ${turn} 颗`,
  moments: "操作",
  momentNames: { start: "先松拧", align: "对正", tighten: "拧紧", recheck: "老化后复查" },
  washer: "垫圈",
  nut: "螺母",
  threadlocker: "螺纹胶",
  threadlockerYes: "要",
  typeTable: "其类型",
  stack: {
    title: "固定情况",
    unknown: "尚未计算固定情况。",
    length: "头下长度",
    flange: "穿过",
    recess: "头部低于表面",
    wood: "该处木厚",
    woodOf: (woodMm, thicknessMm) =>
      Math.abs(woodMm - thicknessMm) < 0.05 ? mm(woodMm) : `${mm(woodMm)}，板厚 ${mm(thicknessMm)}`,
    engaged: "有效咬合",
    engagedOf: (engagedMm, leastMm, where) =>
      leastMm > 0 ? `${where} ${mm(engagedMm)}，至少 ${mm(leastMm)}` : `${where} ${mm(engagedMm)}`,
    holdsIn: { wood: "木中", nut: "螺母中", tapped: "螺孔中", nothing: "无处咬合" },
    margin: "尖端到对面",
    goesThrough: "应当穿透",
    comesOut: (by) => `穿出 ${mm(by)}`,
    hole: "钻孔",
    noHole: "无",
    holeOf: (kind, diameterMm, depthMm, allowedMm) =>
      `${kind === "pilot" ? "导孔" : "过孔"} ⌀ ${round2(diameterMm)} mm，${
        depthMm === null ? "钻通" : `深 ${mm(depthMm)}`
      }${allowedMm === null ? "" : `；表中允许 ${round2(allowedMm[0])} 至 ${round2(allowedMm[1])} mm`}`,
    drawing: (lengthMm, flangeMm, woodMm) =>
      `长 ${mm(lengthMm)} 的螺钉，穿过 ${mm(flangeMm)}，拧入 ${mm(woodMm)} 厚的木板。`,
  },
  reach: {
    title: "如何够到",
    unknown: "尚未计算工具能否够到。",
    driver: "工具",
    noTool: "车间没有合适的工具",
    inWay: "挡住它的",
    free: "无",
    nutDriver: "螺母处",
    nutInWay: "螺母处的阻挡",
    comesOff: "维修时先拆",
    nothingOff: "不必拆任何东西",
    own: "它所固定的东西自己挡住了它：装上之后就再也拧不到。",
  },
  bench: {
    title: "工位",
    leave: "离开工位屏幕",
    place: "工位",
    all: "所有步骤",
    stepOf: (at, of) => `第 ${at} 步，共 ${of} 步`,
    doneOf: (done, of) => `已勾选 ${done} / ${of}`,
    planned: (clock) => `计划 ${clock}`,
    back: "上一步",
    next: "完成，下一步",
    last: "完成",
    done: "完成",
    kept: "勾选和用时只保存在本设备上，关闭标签页即清除，其他人看不到。",
    empty: "还没有步骤：本机册中没有任何安装、螺钉或接线。",
    nothingHere: (place) => `在平常一天的计划中，${place}没有步骤。`,
  },
};
