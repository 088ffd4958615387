import type { Fact, FactBody } from "@pinwright/contract";

/** Stream of what the server itself writes: serial numbers and releases. */
const SERVER_STREAM = "server";

/** What holds a unit, or lets it go: only who wrote it takes it back; others mend, lift or end it. */
const isOfWriter = (body: FactBody): boolean =>
  ["defect", "override", "recall", "recall-ended", "problem", "problem-note", "problem-ended"].includes(
    body.kind,
  ) ||
  (body.kind === "alternate" && body.allowed === "concession");

/** Whether somebody can correct a record: what the server wrote, and a correction itself, stay. */
export const mayCorrect = ({ stream, body, person }: Fact, by: string): boolean =>
  stream !== SERVER_STREAM && body.kind !== "correction" && (!isOfWriter(body) || person === by);

/** What can be put right in a record, as text. */
export type Field =
  | "value"
  | "good"
  | "minutes"
  | "count"
  | "part"
  | "lot"
  | "quantity"
  | "text"
  | "stage"
  | "place"
  | "cause"
  | "what";
export type Fields = Readonly<Partial<Record<Field, string>>>;

const text = (value: number | undefined): string => (value === undefined ? "" : String(value));

/** What stands in a record, field by field; null: it can only be taken back. */
export function fieldsOf(body: FactBody): Fields | null {
  switch (body.kind) {
    case "reading":
      return { value: text(body.value), good: body.good ? "yes" : "no" };
    case "step-done":
      return { minutes: text(body.minutes), count: text(body.count) };
    case "lot-used":
      return { part: body.part, lot: body.lot, quantity: text(body.quantity) };
    case "noted":
      return { text: body.says };
    case "handed":
      return { stage: body.stage };
    case "fitted":
      return { place: body.place };
    case "mended":
      return { cause: body.cause, text: body.says, minutes: text(body.minutes) };
    case "defect":
      return { what: body.what, text: body.says };
    default:
      return null;
  }
}

/** A number as somebody typed it; undefined: nothing. A text that is no number is null. */
function numberOf(typed: string | undefined): number | undefined | null {
  const trimmed = (typed ?? "").trim().replace(",", ".");
  if (trimmed === "") return undefined;
  const value = Number(trimmed);
  return Number.isFinite(value) ? value : null;
}

const optional = <K extends string>(key: K, value: number | undefined): Partial<Record<K, number>> =>
  // A computed key makes an object of exactly this shape.
  value === undefined ? {} : ({ [key]: value } as Record<K, number>);

/** The record that takes the place of another, as the fields say it; null: they cannot be. */
export function replaced(body: FactBody, fields: Fields): FactBody | null {
  const filled = (field: Field): string => (fields[field] ?? "").trim();
  switch (body.kind) {
    case "reading": {
      const value = numberOf(fields.value);
      if (value === null) return null;
      const { value: _, ...rest } = body;
      return { ...rest, ...optional("value", value), good: fields.good === "yes" };
    }
    case "step-done": {
      const [minutes, count] = [numberOf(fields.minutes), numberOf(fields.count)];
      if (minutes === null || count === null || (minutes ?? 0) < 0) return null;
      if (count !== undefined && (!Number.isInteger(count) || count < 0)) return null;
      const { minutes: _, count: _count, ...rest } = body;
      return { ...rest, ...optional("minutes", minutes), ...optional("count", count) };
    }
    case "lot-used": {
      const quantity = numberOf(fields.quantity);
      if (quantity === null || (quantity ?? 0) < 0 || filled("part") === "" || filled("lot") === "")
        return null;
      const { quantity: _, ...rest } = body;
      return { ...rest, part: filled("part"), lot: filled("lot"), ...optional("quantity", quantity) };
    }
    case "noted":
      return filled("text") === "" ? null : { ...body, says: filled("text") };
    case "handed":
      return filled("stage") === "" ? null : { ...body, stage: filled("stage") };
    case "fitted":
      return filled("place") === "" ? null : { ...body, place: filled("place") };
    case "mended": {
      const minutes = numberOf(fields.minutes);
      if (minutes === null || (minutes ?? 0) < 0 || filled("cause") === "") return null;
      const { minutes: _, ...rest } = body;
      return { ...rest, cause: filled("cause"), says: filled("text"), ...optional("minutes", minutes) };
    }
    case "defect":
      return filled("what") === "" ? null : { ...body, what: filled("what"), says: filled("text") };
    default:
      return null;
  }
}
