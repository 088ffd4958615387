import { FACTS_FORMAT, type MachineFacts } from "./facts.ts";

const PARTS = ["machine", "rows", "items", "wires", "parts", "steps", "symbols"] as const;
const LISTS = ["findings", "sheets"] as const;

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Whether something has the shape of facts, as `machineFacts` writes them. */
function isFacts(value: unknown): value is MachineFacts {
  return (
    isRecord(value) &&
    PARTS.every((part) => isRecord(value[part])) &&
    LISTS.every((list) => Array.isArray(value[list]))
  );
}

/**
 * Facts that were kept as JSON. They were written by this program and are looked up by their hash, so only their form is
 * looked at.
 * @throws Error that says what is missing, or that a later program wrote them
 */
export function readMachineFacts(json: unknown): MachineFacts {
  if (isRecord(json) && json.format !== FACTS_FORMAT)
    throw new Error(
      `These facts of a machine have form ${String(json.format)}; this program reads form ${FACTS_FORMAT}. Start the program that wrote them, or a later one.`,
    );
  if (isFacts(json)) return json;
  const missing = [...PARTS, ...LISTS].filter((part) => !isRecord(json) || json[part] === undefined);
  throw new Error(`These are no facts of a machine: ${missing.join(", ") || "a part"} is missing.`);
}
