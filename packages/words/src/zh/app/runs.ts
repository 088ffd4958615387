import type { runs as english } from "../../en/app/runs.ts";
import type { Translated } from "../../language.ts";

export const runs: Translated<typeof english> = {
  empty: "还没有计划批次。",
};
