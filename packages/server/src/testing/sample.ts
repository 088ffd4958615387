import { z } from "zod";

/** What fields of these names hold, wherever they stand. */
const NAMED: Readonly<Record<string, unknown>> = {
  id: "walk-request-1",
  book: "small",
  name: "A",
  release: "A",
  revision: "A",
  from: "A",
  to: "A",
  table: "devices",
  row: "1",
  column: "x_mm",
  password: "correct horse battery",
  secret: "correct horse battery",
};

/** Texts that patterns take. */
const TEXTS: readonly string[] = [
  "A",
  "walk-request-1",
  "2026-03-31",
  "2026-03-31T09:00:00.000Z",
  "0".repeat(64),
  "small",
  "1",
  "1234",
  "data:image/png;base64,AAAA",
  "b-000001",
  "192.168.7.30:5025",
];

const recordSchema = z.record(z.string(), z.unknown());
const listSchema = z.array(z.unknown());

/** Values that a JSON schema may take, likely ones first. */
function candidates(schema: unknown, name: string, depth: number): readonly unknown[] {
  const of = recordSchema.safeParse(schema).data ?? {};
  if (depth > 8) return [null];
  if ("const" in of) return [of.const];
  const choices = listSchema.safeParse(of.enum ?? of.anyOf ?? of.oneOf).data;
  if (of.enum !== undefined && choices !== undefined) return choices;
  if (choices !== undefined) return choices.flatMap((one) => candidates(one, name, depth + 1));
  switch (of.type) {
    case "object":
      return objects(of, depth);
    case "array":
      return [candidates(of.items, name, depth + 1).slice(0, 1), []];
    case "string":
      return [...(typeof NAMED[name] === "string" ? [NAMED[name]] : []), ...TEXTS];
    case "boolean":
      return [true];
    case "number":
    case "integer":
      return [typeof of.minimum === "number" ? of.minimum : 1];
    default:
      return [null];
  }
}

function objects(of: Readonly<Record<string, unknown>>, depth: number): readonly unknown[] {
  const properties = recordSchema.safeParse(of.properties).data ?? {};
  const required = listSchema.safeParse(of.required).data ?? [];
  const fitting = (key: string): unknown => {
    const all = candidates(properties[key], key, depth + 1);
    const pattern = recordSchema.safeParse(properties[key]).data?.pattern;
    if (typeof pattern !== "string") return all[0];
    return all.find((value) => typeof value === "string" && new RegExp(pattern, "u").test(value)) ?? all[0];
  };
  const made = (keys: readonly string[]) => Object.fromEntries(keys.map((key) => [key, fitting(key)]));
  const all = Object.keys(properties);
  return [made(all), made(all.filter((key) => required.includes(key)))];
}

/** Values that a schema takes, found by looking at its JSON schema; none where that does not tell enough. */
export function samplesOf(schema: z.ZodType): readonly unknown[] {
  const json: unknown = z.toJSONSchema(schema, { io: "input", unrepresentable: "any" });
  return candidates(json, "", 0).filter((value) => schema.safeParse(value).success);
}
