import type { AppWords } from "@pinwright/words/app";
import { Refused } from "../../api/call.ts";

/** Why something was not done, in the reader's words where there are some. */
export function refusalText(words: AppWords, error: unknown): string {
  if (!(error instanceof Refused)) return words.shell.noServer;
  switch (error.problem.code) {
    case "taken":
      return words.start.taken;
    case "not-allowed":
    case "not-signed-in":
      return words.start.mayNot;
    case "too-large":
      return words.start.tooLarge;
    case "unreadable":
      return words.start.unreadable;
    default:
      return words.start.failed(error.problem.message);
  }
}
