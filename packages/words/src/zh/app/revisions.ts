import type { revisions as en } from "../../en/app/revisions.ts";
import type { Translated } from "../../language.ts";

export const revisions: Translated<typeof en> = {
  tabs: { releases: "已发布版本", compare: "比较" },
};
