import { createHash } from "node:crypto";
import { type OpenedFaultFile, Says } from "../../packages/engine/src/index.ts";

/** Above this no volts are measured. */
const MOST_MEASURED_V = 60;
const PARTS: ReadonlySet<string> = new Set(["coil", "motor", "speaker", "led", "contact", "diode"]);

/**
 * What every look that is allowed at all would say of a suspect, as one text: suspects with the same text cannot be told
 * apart by any. Nothing is looked at or measured at the mains.
 */
export function whatLooksSay({ file, model, table }: OpenedFaultFile): (suspect: number) => string {
  const { network } = model;
  const { meter } = new Says(model, table);
  const mains = new Set(file.mains);
  const nodes = network.nodes.flatMap((_, node) => (mains.has(node) ? [] : [node]));
  const live = network.sources.flatMap((_, source) =>
    (file.sources[source]?.volts ?? Number.POSITIVE_INFINITY) > MOST_MEASURED_V
      ? []
      : nodes.flatMap((node) => (meter.isLive(-1, node, source) ? [[node, source] as const] : [])),
  );
  const known = new Map<number, string>();
  return (s) => {
    const before = known.get(s);
    if (before !== undefined) return before;
    const sets = meter.joined(s);
    const numbers = new Map<number, number>();
    const joined = nodes.map((node) => {
      const set = sets[node] ?? -1;
      const number = numbers.get(set) ?? numbers.size;
      numbers.set(set, number);
      return number;
    });
    const volts = live.map(([node, source]) => (meter.isLive(s, node, source) ? 1 : 0));
    const text = [joined.join(), volts.join(""), byItself(s)].join("|");
    const made = createHash("sha256").update(text).digest("hex");
    known.set(s, made);
    return made;
  };

  /** What is looked at, reseated or measured by itself. */
  function byItself(s: number): string {
    const suspect = table.suspects[s];
    const fault = suspect?.fault;
    if (suspect === undefined || fault === undefined || !("joint" in fault)) return "";
    const joint = network.joints[fault.joint];
    if (joint === undefined) return "";
    if (fault.kind === "mechanical") return `inspect ${joint.id}`;
    if (mains.has(joint.a) || mains.has(joint.b)) return "";
    if (suspect.kind === "fuse-open") return `inspect ${joint.id}`;
    if (suspect.kind === "contact-open") return `reseat ${joint.id.replace(/\.[^.:]*$/u, "")}`;
    return PARTS.has(joint.element?.row.kind ?? "") ? `part ${joint.id}` : "";
  }
}
