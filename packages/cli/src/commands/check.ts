import type { Fault } from "@pinwright/book";
import { type Finding, type LineResult, outsideFindings, type Severity } from "@pinwright/engine";
import { findingWords, type Language } from "@pinwright/words";
import type { Command } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { harnessTable } from "../harness-table.ts";
import { BOOK_OPTIONS, fatalFaults, type Loaded, loadBook, runLine } from "../load.ts";
import { sha256 } from "../manifest.ts";
import { STATUS, type Status, UsageError } from "../terminal.ts";

const SEVERITIES: readonly Severity[] = ["error", "warning", "note"];

/** A line with what the files of the book and the samples in the shop tell besides. */
function withFiles(result: LineResult, { drawings, shop }: Loaded): LineResult {
  const facts = new Map(
    [...drawings].map(([name, bytes]) => [name, { bytes: bytes.length, sha256: sha256(bytes) }]),
  );
  const found = outsideFindings({ ...result.machine, shop }, facts);
  return { ...result, findings: [...result.findings, ...found] };
}

/** Findings of one severity by rule, rules in code-point order; accepted ones are told apart. */
function byRule(findings: readonly Finding[]): ReadonlyMap<string, readonly Finding[]> {
  const rules = [...new Set(findings.map((finding) => finding.rule))].sort();
  return new Map(rules.map((rule) => [rule, findings.filter((finding) => finding.rule === rule)]));
}

function languageOf(text: string | undefined): Language {
  if (text === undefined || text === "en" || text === "zh") return text ?? "en";
  throw new UsageError(`--language ${text}: expected en or zh`);
}

function summary(result: LineResult): string {
  const count = (severity: Severity): number =>
    result.findings.filter((f) => f.severity === severity && f.accepted === null).length;
  const accepted = result.findings.filter((f) => f.accepted !== null).length;
  const harnesses = [...result.harnesses.values()];
  const wires = harnesses.reduce((sum, h) => sum + h.wires.length, 0);
  const metres = harnesses.reduce((sum, h) => sum + h.route.work.metres, 0);
  const minutes = harnesses.reduce((sum, h) => sum + h.route.work.minutes, 0);
  return [
    `${result.machine.items.size} items, ${result.machine.nets.size} nets, ${wires} wires in ${harnesses.length} harnesses: ${metres.toFixed(1)} m, ${minutes.toFixed(0)} min of harness work`,
    `plugs that can still be exchanged: ${result.swaps.value}, none can do with fewer than ${result.swaps.lowerBound}`,
    `${count("error")} errors, ${count("warning")} warnings, ${count("note")} notes${accepted > 0 ? `, ${accepted} accepted` : ""}`,
  ].join("\n");
}

/** Findings grouped by severity and rule, each rule with why it matters and what to do, then its cases. */
function report(result: LineResult, language: Language, most: number): string {
  const lines: string[] = [];
  for (const severity of SEVERITIES) {
    const open = result.findings.filter((f) => f.severity === severity && f.accepted === null);
    for (const [rule, findings] of byRule(open)) {
      const words = findingWords(language, rule);
      lines.push(
        `${severity.toUpperCase()} ${rule} (${findings.length}): ${words.title}`,
        `  ${words.why}`,
        `  ${words.todo}`,
      );
      for (const finding of findings.slice(0, most)) lines.push(`  - ${words.say(finding)}`);
      if (findings.length > most) lines.push(`  … and ${findings.length - most} more; --all lists them`);
      lines.push("");
    }
  }
  return lines.join("\n");
}

function asJson(path: string, faults: readonly Fault[], result: LineResult | null): string {
  const findings = result?.findings ?? [];
  const harnesses = [...(result?.harnesses.values() ?? [])].map((harness) => ({
    id: harness.harness.id,
    wires: harness.wires.length,
    work: harness.route.work,
    colours: harness.colours,
    pinboard: {
      widthMm: harness.pinboard.widthMm,
      heightMm: harness.pinboard.heightMm,
      area: harness.pinboard.area,
    },
  }));
  return `${JSON.stringify({ book: path, faults, findings, harnesses, swaps: result?.swaps ?? null }, null, 2)}\n`;
}

function status(faults: readonly Fault[], findings: readonly Finding[], strict: boolean): Status {
  const counts = (finding: Finding): boolean =>
    finding.accepted === null && (finding.severity === "error" || (strict && finding.severity === "warning"));
  return faults.length > 0 || findings.some(counts) ? STATUS.found : STATUS.good;
}

/** Reads a book, runs the whole line and tells everything that is wrong with either. */
export const checkCommand: Command = {
  name: "check",
  operands: "BOOK",
  about: "tell everything that is wrong with a book",
  count: [1, 1],
  options: {
    ...BOOK_OPTIONS,
    language: { type: "string", value: "en|zh", about: "language of the findings" },
    json: { type: "boolean", about: "write faults and findings as JSON" },
    all: { type: "boolean", about: "list every case of a rule, not only the first five" },
    harnesses: { type: "boolean", about: "list every harness with its figures, each beside its bound" },
    strict: { type: "boolean", about: "a warning, too, gives exit status 1" },
  },
  run: async (call, terminal) => {
    const language = languageOf(call.text("language"));
    const loaded = await loadBook(call);
    const fatal = fatalFaults(loaded.faults).length > 0;
    const result = fatal ? null : withFiles(runLine(loaded), loaded);
    if (call.flag("json")) terminal.out(asJson(loaded.path, loaded.faults, result));
    else {
      for (const fault of loaded.faults) terminal.out(`FAULT ${faultText(fault)}\n`);
      if (loaded.faults.length > 0) terminal.out(`${loaded.faults.length} faults in the book's files\n\n`);
      if (result !== null) {
        terminal.out(report(result, language, call.flag("all") ? Number.POSITIVE_INFINITY : 5));
        if (call.flag("harnesses")) terminal.out(`${harnessTable(result)}\n\n`);
        terminal.out(`${summary(result)}\n`);
      }
    }
    return fatal ? STATUS.failed : status(loaded.faults, result?.findings ?? [], call.flag("strict"));
  },
};
