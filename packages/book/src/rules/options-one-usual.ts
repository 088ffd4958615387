import { rowRule } from "./rule.ts";

export const optionsOneUsual = rowRule(
  {
    table: "options",
    about: "Of the options of one kind at most one is the usual one.",
    reads: ["usual", "kind"],
  },
  () => {
    const usual = new Map<string, string>();
    return (row) => {
      if (row.usual === "no" || row.kind === "") return null;
      const before = usual.get(row.kind);
      if (before === undefined) {
        usual.set(row.kind, row.id);
        return null;
      }
      return {
        column: "usual",
        expected: `\`no\`, because \`${before}\` is the usual \`${row.kind}\` already`,
        nearest: "no",
      };
    };
  },
);
