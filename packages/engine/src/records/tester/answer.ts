import {
  ascending,
  checkedLine,
  fail,
  LineWords,
  MOST_TESTER_POINTS,
  numberIn,
  reading,
  TESTER_PROTOCOL,
  type TesterParsed,
} from "./words-of-line.ts";

/** Why a tester does not do what it is asked. */
export const TESTER_ERRORS = [
  /** The check of the command was wrong: it is asked again. */
  "check",
  /** No command of this protocol. */
  "word",
  /** No such point. */
  "point",
  /** Longer than the tester can take. */
  "long",
  /** Its own test failed: no answer of it is good. */
  "broken",
] as const;
export type TesterError = (typeof TESTER_ERRORS)[number];

/** Points joined with each other, two or more, ascending. */
export type JoinedPoints = readonly number[];

/** What a tester answers, always with one line. */
export type TesterAnswer =
  | { readonly kind: "who"; readonly name: string }
  | { readonly kind: "points"; readonly points: number }
  /** Points joined with the one that was tried, ascending, without itself. */
  | { readonly kind: "try"; readonly point: number; readonly joined: readonly number[] }
  /** Groups in the order of their first points; a point in none stands alone. */
  | { readonly kind: "all"; readonly groups: readonly JoinedPoints[] }
  | { readonly kind: "error"; readonly error: TesterError };

/** An answer as a line, without its end. */
export function formatTesterAnswer(answer: TesterAnswer): string {
  switch (answer.kind) {
    case "who":
      return checkedLine(`who ${TESTER_PROTOCOL} ${answer.name}`);
    case "points":
      return checkedLine(`points ${answer.points}`);
    case "try":
      return checkedLine(`try ${answer.point} ${answer.joined.join(" ") || "none"}`);
    case "all":
      return checkedLine(`all ${answer.groups.map((group) => group.join("-")).join(" ") || "none"}`);
    case "error":
      return checkedLine(`error ${answer.error}`);
  }
}

/**
 * Reads an answer; whatever is wrong with the line is named.
 * @param points points of the tester, once they are known
 */
export function parseTesterAnswer(line: string, points = MOST_TESTER_POINTS): TesterParsed<TesterAnswer> {
  return reading(() => {
    const words = new LineWords(line);
    const answer = answerOf(words, points);
    words.end();
    return answer;
  });
}

function answerOf(words: LineWords, points: number): TesterAnswer {
  const kind = words.oneOf(["who", "points", "try", "all", "error"]);
  switch (kind) {
    case "who":
      words.number(TESTER_PROTOCOL);
      return { kind, name: words.name() };
    case "points":
      return { kind, points: words.number(MOST_TESTER_POINTS) };
    case "try": {
      const point = words.number(points);
      return { kind, point, joined: words.take("none") ? [] : joinedWith(words, point, points) };
    }
    case "all":
      return { kind, groups: words.take("none") ? [] : groupsIn(words, points) };
    case "error":
      return { kind, error: words.oneOf(TESTER_ERRORS) };
  }
}

function joinedWith(words: LineWords, point: number, points: number): readonly number[] {
  const joined: number[] = [];
  do joined.push(words.number(points));
  while (words.more);
  if (joined.includes(point)) fail("point-twice", String(point), `other than ${point}`);
  return ascending(joined);
}

function groupsIn(words: LineWords, points: number): readonly JoinedPoints[] {
  const groups: JoinedPoints[] = [];
  const seen = new Set<number>();
  do {
    const word = words.next("1-2");
    const group = ascending(word.split("-").map((part) => numberIn(part, points)));
    if (group.length < 2) fail("too-few-words", word, "1-2");
    for (const point of group) {
      if (seen.has(point)) fail("point-twice", String(point), `1..${points}`);
      seen.add(point);
    }
    groups.push(group);
  } while (words.more);
  ascending(groups.map((group) => group[0] ?? 0));
  return groups;
}
