import {
  formatTesterCommand,
  LONGEST_TESTER_LINE,
  parseTesterAnswer,
  scanOfTries,
  type TesterAnswer,
  type TesterCommand,
  type TesterScan,
  type TriedScan,
} from "@pinwright/engine";
import { Conversation, type ConversationOptions } from "./conversation.ts";
import { InstrumentError } from "./instrument-error.ts";

/** Times that a question is put when a line was spoilt on its way. */
const MOST_TIMES = 3;

type Answer<K extends TesterAnswer["kind"]> = Extract<TesterAnswer, { kind: K }>;

/** A continuity tester that speaks the line protocol of docs/tester-protocol.md. */
export class ContinuityTester {
  readonly #talk: Conversation;
  #points: number | null = null;

  constructor(options: ConversationOptions) {
    this.#talk = new Conversation({ longestAnswer: LONGEST_TESTER_LINE, ...options });
  }

  /**
   * Name of the tester.
   * @throws InstrumentError
   */
  async identify(): Promise<string> {
    return (await this.#ask({ kind: "who" }, "who")).name;
  }

  /**
   * How many points it has; asked once.
   * @throws InstrumentError
   */
  async points(): Promise<number> {
    this.#points ??= (await this.#ask({ kind: "points" }, "points")).points;
    return this.#points;
  }

  /**
   * The points that are joined with one.
   * @throws InstrumentError
   */
  async try(point: number): Promise<readonly number[]> {
    await this.points();
    const answer = await this.#ask({ kind: "try", point }, "try");
    if (answer.point !== point)
      throw new InstrumentError("not-understood", `try ${point}`, `try ${answer.point}`);
    return answer.joined;
  }

  /**
   * Every point against all others, in one question.
   * @throws InstrumentError
   */
  async scan(): Promise<TesterScan> {
    const points = await this.points();
    return { points, groups: (await this.#ask({ kind: "try-all" }, "all")).groups };
  }

  /**
   * The same point by point: slower, and a contact that comes and goes shows.
   * @param told called after each point
   * @throws InstrumentError
   */
  async scanByPoints(told: (done: number, points: number) => void = () => undefined): Promise<TriedScan> {
    const points = await this.points();
    const tries = new Map<number, readonly number[]>();
    for (let point = 1; point <= points; point++) {
      tries.set(point, await this.try(point));
      told(point, points);
    }
    return scanOfTries(points, tries);
  }

  close(): Promise<void> {
    return this.#talk.close();
  }

  /** Ends at once, whoever waits. */
  hangUp(): void {
    this.#talk.hangUp();
  }

  /** Puts a question again when its line or the answer's was spoilt; any other fault is thrown at once. */
  async #ask<K extends TesterAnswer["kind"]>(command: TesterCommand, kind: K): Promise<Answer<K>> {
    const line = formatTesterCommand(command);
    let spoilt = "";
    for (let times = 0; times < MOST_TIMES; times++) {
      const says = await this.#talk.ask(line);
      const parsed = parseTesterAnswer(says, this.#points ?? undefined);
      if (!parsed.ok) {
        const { kind: fault, found, expected } = parsed.fault;
        spoilt = `${fault}: ${JSON.stringify(found)}, expected ${expected}`;
        if (fault === "wrong-check" || fault === "no-check" || fault === "not-plain") continue;
        throw new InstrumentError("not-understood", line, spoilt);
      }
      const answer = parsed.value;
      if (isOf(answer, kind)) return answer;
      spoilt = formatted(answer);
      if (answer.kind !== "error") throw new InstrumentError("not-understood", line, spoilt);
      if (answer.error !== "check") throw new InstrumentError("refused", line, spoilt);
    }
    throw new InstrumentError("not-understood", line, spoilt);
  }
}

const isOf = <K extends TesterAnswer["kind"]>(answer: TesterAnswer, kind: K): answer is Answer<K> =>
  answer.kind === kind;

const formatted = (answer: TesterAnswer): string =>
  answer.kind === "error" ? `error ${answer.error}` : answer.kind;
