import { applies, maybeText, ref } from "../column.ts";
import { table } from "../table.ts";

export const alternates = table(
  "alternates",
  "parts",
  "A part that may be taken instead of another, without asking anybody; the unit records it.",
  ["part", "instead"],
  {
    part: ref("parts", "Part that the book has."),
    instead: ref("parts", "Part that may be taken instead."),
    remark: maybeText("Why it may, or what to mind."),
    remark_zh: maybeText("The same in Simplified Chinese."),
    ...applies(),
  },
);
