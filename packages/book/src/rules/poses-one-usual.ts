import { rowRule } from "./rule.ts";

export const posesOneUsual = rowRule(
  { table: "poses", about: "Exactly one pose is the usual one.", reads: ["usual"] },
  (tables) => {
    const usual = tables.poses.filter((pose) => pose.usual === "yes");
    return (row, at) => {
      if (usual.length === 0 && at === 0) {
        return {
          column: "usual",
          expected: "`yes` for exactly one pose: the one in which the machine is played",
        };
      }
      const [first] = usual;
      if (row.usual === "no" || first === undefined || row.id === first.id) return null;
      return {
        column: "usual",
        expected: `\`no\`, because \`${first.id}\` is the usual pose already`,
        nearest: "no",
      };
    };
  },
);
