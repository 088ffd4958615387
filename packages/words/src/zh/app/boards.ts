import type { boards as english } from "../../en/app/boards.ts";
import type { Translated } from "../../language.ts";

export const boards: Translated<typeof english> = {
  empty: "机器里还没有电路板。",
};
