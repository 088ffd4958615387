import type { BookRow } from "../schema/tables/index.ts";
import { NET_CLASSES } from "../schema/tables/places.ts";
import { nearest } from "../text/nearest.ts";
import { type Rule, rowRule } from "./rule.ts";

const about = "Net classes are those of the table `nets`.";
const known: readonly string[] = NET_CLASSES;
const expected = `net classes: ${known.join(", ")}`;

function judge(
  row: Pick<BookRow<"lanes">, "classes">,
): { column: "classes"; expected: string; nearest: string | null } | null {
  const wrong = row.classes.find((name) => !known.includes(name));
  if (wrong === undefined) return null;
  return { column: "classes", expected: `${expected}; \`${wrong}\` is none`, nearest: nearest(wrong, known) };
}

export const lanesClasses: Rule = rowRule({ table: "lanes", about, reads: ["classes"] }, () => judge);
export const crossingsClasses: Rule = rowRule({ table: "crossings", about, reads: ["classes"] }, () => judge);

export const pinsClass: Rule = rowRule(
  { table: "pins", about, reads: ["class"] },
  () => (row) =>
    row.class === "" || known.includes(row.class)
      ? null
      : { column: "class", expected: `one of the ${expected}`, nearest: nearest(row.class, known) },
);
