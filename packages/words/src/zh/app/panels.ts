import type { panels as english } from "../../en/app/panels.ts";
import type { Translated } from "../../language.ts";

export const panels: Translated<typeof english> = {
  empty: "数据本里还没有板件。",
};
