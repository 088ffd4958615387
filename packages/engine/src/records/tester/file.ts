import { formatTesterAnswer, parseTesterAnswer, type TesterAnswer } from "./answer.ts";
import { scanOfTries, type TesterScan } from "./scan.ts";
import { checkedLine, LineWords, reading, type TesterFault } from "./words-of-line.ts";

/** A scan that a tester kept as a file: its answers, line by line. */
export interface ScanFile {
  readonly tester: string;
  /** Serial number of the harness; empty where nobody gave it. */
  readonly unit: string;
  readonly scan: TesterScan;
  /** Pairs that only one of the two tries named. */
  readonly oneSided: readonly (readonly [number, number])[];
}

/** A fault of a file; line 0: of the file as a whole. */
export interface ScanFileFault {
  readonly line: number;
  readonly fault: TesterFault;
}

/** A scan as a file: `who`, `points`, `unit` where it is known, then all groups in one line. */
export function formatScanFile(file: Omit<ScanFile, "oneSided">): string {
  return [
    formatTesterAnswer({ kind: "who", name: file.tester }),
    formatTesterAnswer({ kind: "points", points: file.scan.points }),
    ...(file.unit === "" ? [] : [checkedLine(`unit ${file.unit}`)]),
    formatTesterAnswer({ kind: "all", groups: file.scan.groups }),
    "",
  ].join("\n");
}

/** Lines of a file as they are met. */
interface Gathered {
  tester: string | null;
  points: number | null;
  unit: string | null;
  all: TesterScan["groups"] | null;
  readonly tries: Map<number, readonly number[]>;
}

/**
 * Reads a scan file: lines of a tester that begin with `who` and `points`, then either one `all` or a `try` of every point,
 * with a `unit` anywhere. Lines that begin with `;` and empty lines are passed over.
 * @returns the file, or every fault with the number of its line
 */
export function parseScanFile(text: string): {
  readonly file: ScanFile | null;
  readonly faults: readonly ScanFileFault[];
} {
  const got: Gathered = { tester: null, points: null, unit: null, all: null, tries: new Map() };
  const faults: ScanFileFault[] = [];
  text.split(/\r?\n/).forEach((line, i) => {
    if (line === "" || line.startsWith(";")) return;
    const fault = line.startsWith("unit ") ? takeUnit(got, line) : takeAnswer(got, line);
    if (fault !== null) faults.push({ line: i + 1, fault });
  });
  const { tester, points } = got;
  if (tester === null) faults.push(missing("who"));
  if (points === null) faults.push(missing("points"));
  if (tester === null || points === null || faults.length > 0) return { file: null, faults };
  const tried = scanOfTries(points, got.tries);
  if (got.all === null && tried.untried.length > 0)
    return { file: null, faults: [missing(got.tries.size === 0 ? "all" : `try ${tried.untried[0]}`)] };
  const scan = got.all === null ? tried.scan : { points, groups: got.all };
  const oneSided = got.all === null ? tried.oneSided : [];
  return { file: { tester, unit: got.unit ?? "", scan, oneSided }, faults: [] };
}

const missing = (expected: string): ScanFileFault => ({
  line: 0,
  fault: { kind: "missing-line", found: "", expected },
});
const twice = (found: string): TesterFault => ({ kind: "line-twice", found, expected: "" });

function takeUnit(got: Gathered, line: string): TesterFault | null {
  const parsed = reading(() => {
    const words = new LineWords(line);
    words.oneOf(["unit"]);
    const unit = words.name();
    words.end();
    return unit;
  });
  if (!parsed.ok) return parsed.fault;
  if (got.unit !== null) return twice("unit");
  got.unit = parsed.value;
  return null;
}

function takeAnswer(got: Gathered, line: string): TesterFault | null {
  const parsed = parseTesterAnswer(line, got.points ?? undefined);
  if (!parsed.ok) return parsed.fault;
  const answer = parsed.value;
  if (answer.kind === "error")
    return { kind: "unknown-word", found: "error", expected: "who|points|unit|try|all" };
  if (isKnown(got, answer)) return twice(answer.kind === "try" ? `try ${answer.point}` : answer.kind);
  if ((answer.kind === "try" || answer.kind === "all") && got.points === null)
    return { kind: "missing-line", found: answer.kind, expected: "points" };
  if (answer.kind === "who") got.tester = answer.name;
  else if (answer.kind === "points") got.points = answer.points;
  else if (answer.kind === "all") got.all = answer.groups;
  else got.tries.set(answer.point, answer.joined);
  return null;
}

function isKnown(got: Gathered, answer: Exclude<TesterAnswer, { kind: "error" }>): boolean {
  switch (answer.kind) {
    case "who":
      return got.tester !== null;
    case "points":
      return got.points !== null;
    case "all":
      return got.all !== null || got.tries.size > 0;
    case "try":
      return got.all !== null || got.tries.has(answer.point);
  }
}
