import { Conversation, type ConversationOptions } from "./conversation.ts";
import { InstrumentError } from "./instrument-error.ts";
import { parseScpiNumber, type ScpiNumber } from "./scpi-number.ts";

/** Who an instrument says it is: the four fields of IEEE 488.2, 10.14. */
export interface InstrumentIdentity {
  readonly maker: string;
  readonly model: string;
  /** "0" where it has none. */
  readonly serial: string;
  readonly firmware: string;
}

/** An entry of an instrument's list of errors (SCPI-1999, volume 2, 21.8). */
export interface ScpiError {
  readonly code: number;
  readonly says: string;
}

/** Entries that are read before a list is given up: an instrument that never says 0 must not hold anybody. */
const MOST_ERRORS = 50;
/** One question: a header in ASCII with its question mark, parameters behind it; a semicolon would begin a second command. */
const QUERY = /^[*:A-Za-z][A-Za-z0-9:*_]*\?(?: [ -:<-~]{1,200})?$/;

/** An instrument that speaks SCPI over a raw socket or a serial line. */
export class ScpiInstrument {
  readonly #talk: Conversation;

  constructor(options: ConversationOptions) {
    this.#talk = new Conversation(options);
  }

  /**
   * Asks who it is (`*IDN?`).
   * @throws InstrumentError
   */
  async identify(): Promise<InstrumentIdentity> {
    const says = await this.#talk.ask("*IDN?");
    const [maker, model, serial, firmware, ...more] = says.split(",").map((field) => field.trim());
    if (maker === undefined || model === undefined || serial === undefined || firmware === undefined)
      throw new InstrumentError("not-understood", "*IDN?", says);
    return { maker, model, serial, firmware: [firmware, ...more].join(",") };
  }

  /**
   * Reads and so empties the list of errors (`SYST:ERR?` until it says 0).
   * @throws InstrumentError
   */
  async errors(): Promise<readonly ScpiError[]> {
    const found: ScpiError[] = [];
    while (found.length < MOST_ERRORS) {
      const says = await this.#talk.ask("SYST:ERR?");
      const entry = /^([+-]?[0-9]+)(?:,"?(.*?)"?)?$/.exec(says.trim());
      if (entry === null) throw new InstrumentError("not-understood", "SYST:ERR?", says);
      const code = Number(entry[1]);
      if (code === 0) return found;
      found.push({ code, says: entry[2] ?? "" });
    }
    return found;
  }

  /**
   * Puts a question whose answer is one number, such as `MEAS:VOLT:DC?` or `READ?`. When no answer comes, the instrument is
   * asked for its errors, and what it says is thrown: an instrument that does not know a question stays silent.
   * @throws RangeError for a text that is no question
   * @throws InstrumentError
   */
  async measure(query: string): Promise<ScpiNumber> {
    if (!QUERY.test(query)) throw new RangeError(`${JSON.stringify(query)} is no question to an instrument`);
    const says = await this.#answerOrError(query);
    const number = parseScpiNumber(says);
    if (number === null) throw new InstrumentError("not-understood", query, says);
    return number;
  }

  close(): Promise<void> {
    return this.#talk.close();
  }

  /** Ends at once, whoever waits. */
  hangUp(): void {
    this.#talk.hangUp();
  }

  async #answerOrError(query: string): Promise<string> {
    try {
      return await this.#talk.ask(query);
    } catch (error) {
      if (!(error instanceof InstrumentError) || error.trouble !== "time-out") throw error;
      const [first] = await this.errors().catch(() => []);
      if (first === undefined) throw error;
      throw new InstrumentError("refused", query, `${first.code} ${first.says}`);
    }
  }
}
