import { Refused, Unreachable } from "../api/call.ts";

/** Why the worker did not do something, by a code that the page has words for. */
export class Trouble extends Error {
  readonly code: "not-loaded" | "overtaken" | "unsent";

  constructor(code: Trouble["code"], message: string) {
    super(message);
    this.code = code;
  }
}

export function troubleCode(error: unknown): string {
  if (error instanceof Refused) return error.problem.code;
  if (error instanceof Trouble) return error.code;
  return error instanceof Unreachable ? "unreachable" : "internal";
}
