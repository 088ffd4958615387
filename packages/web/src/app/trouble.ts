import { useCallback } from "react";
import { Refused, Unreachable } from "../api/call.ts";
import { DeskError } from "./book/desk-client.ts";
import { useSpeech } from "./words.tsx";

/** The code of what went wrong; blank when it has none. */
function codeOf(error: unknown): string {
  if (error instanceof Refused) return error.problem.code;
  if (error instanceof DeskError) return error.code;
  return error instanceof Unreachable ? "unreachable" : "internal";
}

/** Says by code why something was not done; `message` is the English of whoever refused it. */
export function useTroubleOf(): (code: string, message: string) => string {
  const { words, language } = useSpeech();
  return useCallback(
    (code, message) => {
      const own: Readonly<Record<string, string>> = words.shell.trouble;
      const known = code === "internal" || code === "bad-request" ? undefined : own[code];
      return (
        known ?? (language === "en" && message !== "" ? message : (own[code] ?? words.shell.trouble.internal))
      );
    },
    [words, language],
  );
}

/** Why something was not done, in the reader's language. */
export function useTrouble(): (error: unknown) => string {
  const say = useTroubleOf();
  return useCallback(
    (error) => say(codeOf(error), error instanceof Error ? error.message : String(error)),
    [say],
  );
}
