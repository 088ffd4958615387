/** Where a command writes: results to `out`, everything that is said along the way to `err`. */
export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Whether `err` is a screen, on which a progress line may be overwritten. */
  readonly screen: boolean;
}

/** A wrong call: told to the user with the usage of the command, exit status 2. */
export class UsageError extends Error {}

/** Exit statuses, as the README lists them. */
export const STATUS = { good: 0, found: 1, usage: 2, failed: 3 } as const;

export type Status = (typeof STATUS)[keyof typeof STATUS];

/** Shows `3/42 harness-1 pinboard` while something takes longer than a blink. */
export class Progress {
  readonly #terminal: Terminal;
  #shown = 0;

  constructor(terminal: Terminal) {
    this.#terminal = terminal;
  }

  show(done: number, total: number, what: string): void {
    const line = `${String(done).padStart(String(total).length)}/${total} ${what}`;
    if (this.#terminal.screen) this.#terminal.err(`\r${line.padEnd(this.#shown)}`);
    else if (done === total || done % 25 === 0) this.#terminal.err(`${line}\n`);
    this.#shown = Math.max(this.#shown, line.length);
  }

  end(): void {
    if (this.#terminal.screen && this.#shown > 0) this.#terminal.err(`\r${" ".repeat(this.#shown)}\r`);
    this.#shown = 0;
  }
}
