import type { colours as en } from "../en/colours.ts";
import type { Translated } from "../language.ts";

export const colours: Translated<typeof en> = {
  BK: "黑",
  BN: "棕",
  RD: "红",
  OG: "橙",
  YE: "黄",
  GN: "绿",
  BU: "蓝",
  VT: "紫",
  GY: "灰",
  WH: "白",
  PK: "粉红",
  GD: "金",
  TQ: "青绿",
  SR: "银",
};
