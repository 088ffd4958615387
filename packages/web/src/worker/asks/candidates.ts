import { ALL_TABLES, type Column } from "@pinwright/book";
import { COLOUR_CODES, compareText } from "@pinwright/kernel";
import type { Model } from "../model.ts";
import { rowsOf } from "../views/table.ts";

/** A value that a cell could get, with what a person knows it by. */
export interface Candidate {
  readonly value: string;
  readonly label: string;
  readonly labelZh: string;
}

/** A cell that is being filled in: where it is, the other texts of its row, and what was typed so far. */
export interface CandidatesParam {
  readonly table: string;
  readonly column: string;
  readonly cells: Readonly<Record<string, string>>;
  readonly text: string;
}

const MOST = 60;

const plain = (value: string): Candidate => ({ value, label: "", labelZh: "" });

function* rowsByKey(model: Model, table: string): Generator<Candidate> {
  const key = ALL_TABLES[table]?.key[0] ?? "id";
  for (const cells of rowsOf(model, table).values()) {
    const value = cells.get(key) ?? "";
    if (value === "") continue;
    yield { value, label: cells.get("label") ?? "", labelZh: cells.get("label_zh") ?? "" };
  }
}

function* items({ line }: Model): Generator<Candidate> {
  for (const { id, labels } of line.machine.items.values())
    yield { value: id, label: labels.en, labelZh: labels.zh };
}

function* points({ line }: Model): Generator<Candidate> {
  const { items: all, points: ends } = line.machine;
  for (const { id, itemId } of ends.values()) {
    const labels = all.get(itemId)?.labels;
    yield { value: id, label: labels?.en ?? "", labelZh: labels?.zh ?? "" };
  }
}

/** Points inside a device type: its terminals and the cavities of its connectors. */
function* typePoints(
  { book: { tables } }: Model,
  column: "device_type" | "board_type",
  type: string,
): Generator<Candidate> {
  if (column === "device_type")
    for (const { device_type, terminal, label, label_zh } of tables.terminals)
      if (device_type === type) yield { value: terminal, label, labelZh: label_zh };
  for (const connector of tables.connectors)
    if (connector[column] === type)
      for (let pin = 1; pin <= connector.ways; pin++)
        yield { value: `${connector.name}.${pin}`, label: connector.label, labelZh: "" };
}

/** Points inside the type that the row is in. */
function* localPoints(model: Model, cells: CandidatesParam["cells"]): Generator<Candidate> {
  const { device_type, board_type, mechanism_type } = cells;
  if (device_type) yield* typePoints(model, "device_type", device_type);
  if (board_type) yield* typePoints(model, "board_type", board_type);
  if (mechanism_type)
    for (const child of model.book.tables.mechanism_devices)
      if (child.mechanism_type === mechanism_type)
        for (const point of typePoints(model, "device_type", child.device_type))
          yield { ...point, value: `${child.child}:${point.value}` };
}

function all(model: Model, column: Column<unknown>, cells: CandidatesParam["cells"]): Iterable<Candidate> {
  switch (column.kind) {
    case "ref":
    case "refs":
      return rowsByKey(model, column.table ?? "");
    case "item":
    case "items":
      return items(model);
    case "point":
      return points(model);
    case "local-point":
      return localPoints(model, cells);
    case "outline":
      return [...model.book.outlines.keys()].map(plain);
    case "choice":
      return (column.oneOf ?? []).map(plain);
    case "flag":
      return [plain("yes"), plain("no")];
    case "colour":
    case "colours":
      return COLOUR_CODES.map(({ code, name }) => ({ value: code, label: name, labelZh: "" }));
    default:
      return [];
  }
}

/** 0 is best; null: does not match. */
function rank({ value, label, labelZh }: Candidate, words: readonly string[], whole: string): number | null {
  const id = value.toLowerCase();
  const texts = [id, label.toLowerCase(), labelZh];
  if (!words.every((word) => texts.some((text) => text.includes(word)))) return null;
  if (id === whole) return 0;
  if (id.startsWith(whole)) return 1;
  return id.includes(whole) ? 2 : 3;
}

/** Values that fit a cell and have all the words that were typed, best first. */
export function candidates(model: Model, param: CandidatesParam): readonly Candidate[] {
  const column = ALL_TABLES[param.table]?.columns[param.column];
  if (column === undefined) return [];
  const whole = param.text.trim().toLowerCase();
  const words = whole === "" ? [] : whole.split(/\s+/);
  const found: { readonly candidate: Candidate; readonly place: number }[] = [];
  for (const candidate of all(model, column, param.cells)) {
    const place = rank(candidate, words, whole);
    if (place !== null) found.push({ candidate, place });
  }
  const listed = column.kind === "choice" || column.kind === "flag";
  found.sort((a, b) => a.place - b.place || (listed ? 0 : compareText(a.candidate.value, b.candidate.value)));
  return found.slice(0, MOST).map(({ candidate }) => candidate);
}
