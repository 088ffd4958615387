import { type Done, type FaultFile, type FaultSession, NO_SESSION, type Seen } from "@pinwright/engine";

const SEEN: readonly string[] = ["works", "dead", "on", "mixed", "sometimes"] satisfies readonly Seen[];
const isSeen = (value: unknown): value is Seen => typeof value === "string" && SEEN.includes(value);
const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const keyOf = ({ machine, revision, options }: FaultFile): string =>
  `pinwright.faults.${machine.id}.${revision ?? ""}.${options.join("+")}`;

/** What was said of this machine before; nothing where the browser keeps nothing. */
export function keptSession(file: FaultFile): FaultSession {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(file)) ?? "null");
    if (!isRecord(kept) || !isRecord(kept.seen) || !Array.isArray(kept.done)) return NO_SESSION;
    const seen = Object.entries(kept.seen).flatMap(([id, what]) =>
      isSeen(what) ? [[id, what] as const] : [],
    );
    return { seen: Object.fromEntries(seen), done: kept.done.filter(isDone) };
  } catch {
    return NO_SESSION;
  }
}

/** Keeps what was said, so that a reload loses nothing. */
export function keepSession(file: FaultFile, session: FaultSession): void {
  try {
    localStorage.setItem(keyOf(file), JSON.stringify(session));
  } catch {
    // A page that is opened from a file may keep nothing: then it lasts as long as the page.
  }
}

function isDone(value: unknown): value is Done {
  if (!isRecord(value)) return false;
  if (value.what === "mended") return typeof value.suspect === "string" && typeof value.helped === "boolean";
  return (
    value.what === "looked" && ["yes", "no", "unsure"].includes(String(value.answer)) && isLook(value.look)
  );
}

function isLook(value: unknown): boolean {
  if (!isRecord(value)) return false;
  if (value.kind === "reseat")
    return Array.isArray(value.ids) && value.ids.every((id) => typeof id === "string");
  const names = { ohms: ["a", "b"], volts: ["node", "source"] }[String(value.kind)] ?? ["id"];
  const isKind = ["try", "inspect", "ohms", "part", "volts"].includes(String(value.kind));
  return isKind && names.every((name) => typeof value[name] === "string");
}
