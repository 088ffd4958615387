import type { session as en } from "../../en/app/session.ts";
import type { Translated } from "../../language.ts";

export const session: Translated<typeof en> = {
  signIn: {
    title: "登录",
    name: "姓名",
    secret: "密码，或车间代码",
    go: "登录",
    wrong: "姓名与密码不符。请注意大小写。",
    wait: "尝试次数过多。请等一分钟再试。",
  },
  setUp: {
    title: "设置账户",
    why: "目前只服务这台电脑，坐在它前面的人可以做任何操作。设置账户后，平板和其他电脑可以通过网络加密登录。",
    name: "您的姓名",
    password: "密码（至少 10 个字符）",
    again: "再次输入密码",
    differ: "两次输入的密码不同。",
    go: "创建我的账户",
  },
};
