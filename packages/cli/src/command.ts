import type { Status, Terminal } from "./terminal.ts";

/** One option of a command, as `node:util` parses it. */
export interface CommandOption {
  readonly type: "string" | "boolean";
  readonly multiple?: boolean;
  /** What stands for its value in the usage: `DIR`. */
  readonly value?: string;
  readonly about: string;
}

export interface CommandCall {
  readonly positionals: readonly string[];
  readonly text: (option: string) => string | undefined;
  readonly texts: (option: string) => readonly string[];
  readonly flag: (option: string) => boolean;
}

/** One thing that the program can be told to do. */
export interface Command {
  readonly name: string;
  /** `BOOK [ID]` */
  readonly operands: string;
  readonly about: string;
  /** Least and most operands. */
  readonly count: readonly [number, number];
  readonly options: Readonly<Record<string, CommandOption>>;
  readonly run: (call: CommandCall, terminal: Terminal) => Promise<Status>;
}
