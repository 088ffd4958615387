import type { parts as english } from "../../en/app/parts.ts";
import type { Translated } from "../../language.ts";

export const parts: Translated<typeof english> = {
  empty: "数据本里还没有零件。",
};
