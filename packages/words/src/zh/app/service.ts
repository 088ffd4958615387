import type { service as en } from "../../en/app/service.ts";
import type { Translated } from "../../language.ts";

export const service: Translated<typeof en> = {
  tabs: { faults: "查找故障", thing: "查一件东西", problems: "问题", book: "维修手册" },
};
