import { checkedLine, LineWords, MOST_TESTER_POINTS, reading, type TesterParsed } from "./words-of-line.ts";

/** What a tester is asked. */
export type TesterCommand =
  | { readonly kind: "who" }
  | { readonly kind: "points" }
  /** One point against all others. */
  | { readonly kind: "try"; readonly point: number }
  /** Every point against all others. */
  | { readonly kind: "try-all" };

/** A command as a line, without its end. */
export function formatTesterCommand(command: TesterCommand): string {
  switch (command.kind) {
    case "who":
    case "points":
      return checkedLine(command.kind);
    case "try":
      return checkedLine(`try ${command.point}`);
    case "try-all":
      return checkedLine("try all");
  }
}

/**
 * Reads a command, as a tester does.
 * @param points points of the tester
 */
export function parseTesterCommand(line: string, points = MOST_TESTER_POINTS): TesterParsed<TesterCommand> {
  return reading((): TesterCommand => {
    const words = new LineWords(line);
    const kind = words.oneOf(["who", "points", "try"]);
    let command: TesterCommand;
    if (kind !== "try") command = { kind };
    else if (words.take("all")) command = { kind: "try-all" };
    else command = { kind, point: words.number(points) };
    words.end();
    return command;
  });
}
