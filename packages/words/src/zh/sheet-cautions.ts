import type { cautions as english } from "../en/sheet-cautions.ts";
import type { Translated } from "../language.ts";

export const cautions: Translated<typeof english> = {
  heading: "注意",
  crimp: "压接钳和剪线机会夹伤手指，线头会飞出。请戴护目镜，并使用本表注明的压接模。",
  mains: "本线束带有市电电压。其设计、检查和连接必须由持证电工按当地规范进行，本表不能代替规范。",
  energised: "只有在线束已从所有电源、电路板和线圈上拔下、并且所有电源关闭后才可测试。",
  mainsMachine: "机内有市电。打开或触碰前先拔下电源插头；只允许持证电工按当地规范作业，本表不能代替规范。",
  coilSupply: (supplies) =>
    `${supplies}：超过直流 42.4 V，可能触电。应加盖、联锁并标示；伸手前先关断；遵守当地规范，由持证电工负责。`,
  stored: (supplies) =>
    `断电后仍有储能：${supplies}。等待，经电阻放电，测量确认后才可触碰；遵守当地规范，由持证电工负责。`,
  filter: "市电滤波器的电容",
  earth:
    "保护接地：只用黄绿线，不得漏接。凡动过接地，通电前必须测试接地连续性；遵守当地规范，由持证电工负责。",
  pull: "拉力试验时端子和线头会弹出：请戴护目镜，受力方向不得站人。",
  solder: "烙铁高温，焊剂有烟：请开启排烟，事后洗手。",
};
