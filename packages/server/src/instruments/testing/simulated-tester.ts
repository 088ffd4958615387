import {
  BenchModel,
  formatTesterAnswer,
  type HarnessFault,
  parseTesterCommand,
  type TestBench,
  type TesterAdapter,
  type TesterAnswer,
  type TesterError,
} from "@pinwright/engine";
import { LineServer } from "./line-server.ts";

/** A continuity tester on a port of this machine, with a harness plugged in, for tests. */
export class SimulatedTester {
  readonly server: LineServer;
  readonly #points: number;
  readonly #name: string;
  /** Group of each point, by its number less one. */
  #groupOf: readonly number[];
  /** Answers that are spoilt on their way before one comes through. */
  spoil = 0;
  /** Its own test failed. */
  broken = false;

  constructor(points: number, name = "simulated") {
    this.#points = points;
    this.#name = name;
    this.#groupOf = Array.from({ length: points }, (_, i) => i);
    this.server = new LineServer((line) => this.#answer(line));
  }

  /** Plugs a harness in that has these faults. */
  plug(bench: TestBench, adapter: TesterAdapter, faults: readonly HarnessFault[]): void {
    const groups = new BenchModel(bench).groups(faults);
    const rough = Array.from({ length: this.#points }, (_, i) => -1 - i);
    bench.places.forEach(({ id }, i) => {
      rough[(adapter.pointOf.get(id) ?? 0) - 1] = groups[i] ?? -1;
    });
    this.#groupOf = rough;
  }

  #answer(line: string): string {
    const text = formatTesterAnswer(this.#answerTo(line));
    if (this.spoil <= 0) return `${text}\n`;
    this.spoil--;
    return `${text.replace(/[0-9a-z]/, "?")}\n`;
  }

  #answerTo(line: string): TesterAnswer {
    const parsed = parseTesterCommand(line, this.#points);
    if (!parsed.ok) return { kind: "error", error: errorOf(parsed.fault.kind) };
    const command = parsed.value;
    if (this.broken) return { kind: "error", error: "broken" };
    switch (command.kind) {
      case "who":
        return { kind: "who", name: this.#name };
      case "points":
        return { kind: "points", points: this.#points };
      case "try": {
        const group = this.#members(command.point);
        return {
          kind: "try",
          point: command.point,
          joined: group.filter((point) => point !== command.point),
        };
      }
      case "try-all": {
        const groups = this.#groupOf.map((_, i) => this.#members(i + 1));
        return { kind: "all", groups: groups.filter((group, i) => group.length > 1 && group[0] === i + 1) };
      }
    }
  }

  #members(point: number): readonly number[] {
    return this.#groupOf.flatMap((group, i) => (group === this.#groupOf[point - 1] ? [i + 1] : []));
  }
}

/** Which error a tester gives for a command that it can't read. */
function errorOf(fault: string): TesterError {
  if (fault === "too-long") return "long";
  if (fault === "out-of-range" || fault === "not-a-number" || fault === "too-few-words") return "point";
  return fault === "unknown-word" || fault === "too-many-words" ? "word" : "check";
}
