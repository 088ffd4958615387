import type { AppWords } from "@pinwright/words/app";
import { Refused } from "../../api/call.ts";

/** Why an account was not made or changed, in the reader's words where there are some. */
export function accountRefusal(words: AppWords, error: unknown): string {
  if (!(error instanceof Refused)) return words.shell.noServer;
  return error.problem.code === "taken" ? words.people.taken : words.people.failed(error.problem.message);
}
