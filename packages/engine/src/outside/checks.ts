import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import { type Finding, groupRows, type Machine, makeFinding } from "../model/index.ts";
import { type FileFacts, partDrawing } from "./drawings.ts";
import { judgeSample } from "./first-article.ts";
import { isDrawnOutside } from "./parts.ts";
import { sampleState } from "./samples.ts";

type PartRow = BookRow<"parts">;
type DrawingRow = BookRow<"drawings">;

/** What the tables of the book say by themselves of what is made outside. */
export function checkDrawings(
  parts: readonly PartRow[],
  drawings: readonly DrawingRow[],
  dimensions: readonly BookRow<"dimensions">[],
): readonly Finding[] {
  const drawingsOfPart = groupRows(drawings, (row) => row.part);
  const dimensionsOfPart = groupRows(dimensions, (row) => row.part);
  return [...parts]
    .sort((a, b) => compareText(a.id, b.id))
    .flatMap((part) => [
      ...partFindings(part, drawingsOfPart.get(part.id) ?? [], dimensionsOfPart.has(part.id)),
      ...[...(dimensionsOfPart.get(part.id) ?? [])]
        .sort((a, b) => compareText(a.mark, b.mark))
        .flatMap(dimensionFindings),
    ]);
}

function partFindings(part: PartRow, drawings: readonly DrawingRow[], isMarked: boolean): readonly Finding[] {
  const findings: Finding[] = [];
  const revisions = [...new Set(drawings.map((row) => row.revision))].sort(compareText);
  if (drawings.length > 0 && part.revision === "")
    findings.push(
      makeFinding("drawing-no-revision", "error", [part.id], { revisions: revisions.join(", ") }),
    );
  else if (drawings.length > 0 && !revisions.includes(part.revision))
    findings.push(
      makeFinding("drawing-old", "error", [part.id], {
        revision: part.revision,
        revisions: revisions.join(", "),
      }),
    );
  else if (drawings.length === 0 && isMarked)
    findings.push(makeFinding("drawing-none", "warning", [part.id], { revision: part.revision }));
  const shared = [...groupRows(drawings, (row) => row.file)]
    .filter(([, rows]) => rows.length > 1)
    .sort(([a], [b]) => compareText(a, b));
  for (const [file, rows] of shared) {
    const both = rows.map((row) => row.revision).sort(compareText);
    findings.push(makeFinding("drawing-shared", "warning", [part.id], { file, revisions: both.join(", ") }));
  }
  if (isDrawnOutside(part) && part.material === "")
    findings.push(makeFinding("made-unsaid", "warning", [part.id], {}));
  return findings;
}

function dimensionFindings(row: BookRow<"dimensions">): readonly Finding[] {
  const { nominal, minus, plus } = row;
  const why =
    nominal === null
      ? minus > 0 || plus > 0
        ? "no-nominal"
        : ""
      : minus === 0 && plus === 0
        ? "no-tolerance"
        : "";
  if (why === "") return [];
  const numbers = { mark: row.mark, why, nominal: nominal ?? "—", minus, plus, unit: row.unit || "mm" };
  return [makeFinding("dimension-odd", "warning", [row.part], numbers)];
}

/** What is wrong with the files: not there, other bytes than were meant, or of no drawing. */
export function checkFiles(drawings: readonly DrawingRow[], files: FileFacts): readonly Finding[] {
  const findings: Finding[] = [];
  const order = [...drawings].sort(
    (a, b) =>
      compareText(a.part, b.part) || compareText(a.revision, b.revision) || compareText(a.file, b.file),
  );
  for (const row of order) {
    const { state, fact } = partDrawing(row, files);
    const numbers = { file: row.file, revision: row.revision };
    if (state === "missing") findings.push(makeFinding("drawing-missing", "error", [row.part], numbers));
    if (state === "differs")
      findings.push(
        makeFinding("drawing-hash", "error", [row.part], {
          ...numbers,
          meant: row.sha256.slice(0, 12),
          found: fact?.sha256.slice(0, 12) ?? "",
        }),
      );
  }
  const named = new Set(drawings.map((row) => row.file));
  for (const file of [...files.keys()].sort(compareText))
    if (!named.has(file)) findings.push(makeFinding("drawing-stray", "note", [file], {}));
  return findings;
}

/** What is wrong with samples of parts of this book: those of their present revision. */
export function checkSamples(machine: Machine): readonly Finding[] {
  const parts = new Map(machine.book.tables.parts.map((part) => [part.id, part]));
  const findings: Finding[] = [];
  for (const sample of [...machine.shop.tables.samples].sort((a, b) => compareText(a.id, b.id))) {
    const part = parts.get(sample.part);
    const judged = part === undefined ? null : judgeSample(machine, sample.id);
    if (judged === null || !judged.isPresent) continue;
    const subjects = [sample.part, sample.id];
    const failed = judged.dimensions.filter(({ verdict }) => verdict === "fail").map(({ mark }) => mark);
    const open = judged.dimensions.filter(({ verdict }) => verdict === "open").map(({ mark }) => mark);
    if (sample.state === "approved" && failed.length > 0)
      findings.push(makeFinding("sample-fails", "error", subjects, { marks: failed.join(", ") }));
    else if (sample.state === "approved" && open.length > 0)
      findings.push(makeFinding("sample-open", "warning", subjects, { marks: open.join(", ") }));
    if (judged.strays.length > 0)
      findings.push(makeFinding("sample-stray", "warning", subjects, { marks: judged.strays.join(", ") }));
  }
  for (const id of [...new Set(machine.shop.tables.samples.map(({ part }) => part))].sort(compareText)) {
    const approved = machine.shop.tables.samples.filter((s) => s.part === id && s.state === "approved");
    const part = parts.get(id);
    if (part === undefined || approved.length === 0 || sampleState(machine, id).state !== "none") continue;
    const revisions = [...new Set(approved.map(({ revision }) => revision))].sort(compareText);
    findings.push(
      makeFinding("sample-old", "warning", [id], {
        revision: part.revision,
        revisions: revisions.join(", "),
      }),
    );
  }
  return findings;
}
