import { rowRule } from "./rule.ts";

export const endsOneNet = rowRule(
  {
    table: "ends",
    about: "A point belongs to one net, in all harnesses, unless the ends belong to different options.",
    reads: ["point", "net"],
  },
  () => {
    const always = new Map<string, string>();
    return (row) => {
      if (row.options.length > 0 || row.net === "") return null;
      const net = always.get(row.point);
      if (net === undefined) always.set(row.point, row.net);
      return net === undefined || net === row.net
        ? null
        : {
            column: "net",
            expected: `\`${net}\`, the net that this point has in another harness`,
            nearest: net,
          };
    };
  },
);
