import { type FaultAnswer, type FaultSession, fileSuspectId } from "@pinwright/engine";
import type { Faults } from "./host.ts";
import { likelyWords, percentText } from "./likely.ts";
import { lookAsks, lookedLine, lookSpots } from "./looks.ts";

type Told = Pick<Faults, "file" | "names" | "words">;

/** Causes that a letter to the service desk names. */
const MOST_CAUSES = 5;
/** Suspects that it names of each. */
const MOST_SUSPECTS = 3;

/** Name of a suspect that a session kept by its id; the id where this revision has it no more. */
export function suspectOfId({ file, names }: Told, id: string): string {
  const n = file.suspects.findIndex((_, index) => fileSuspectId(file, index) === id);
  return n < 0 ? id : names.suspect(n);
}

/** All that was said and found, as a text that can be sent to the service desk. */
export function sessionText(told: Told, session: FaultSession, answer: FaultAnswer | null): string {
  const { file, names, words } = told;
  const seen = names.functions.flatMap(({ id, f }) => {
    const does = session.seen[id];
    return does === undefined || does === "works"
      ? []
      : [words.seen(names.functionName(f), words.says[does])];
  });
  const works = Object.values(session.seen).filter((does) => does === "works").length;
  const done = session.done.map((one) =>
    one.what === "looked"
      ? lookedLine(told, one.look, one.answer)
      : words.mendedLine(suspectOfId(told, one.suspect), one.helped),
  );
  const causes = (answer?.causes ?? []).slice(0, MOST_CAUSES).map(({ parts, probability }) => {
    const text = parts
      .map((part) =>
        part
          .slice(0, MOST_SUSPECTS)
          .map(({ suspect }) => names.suspect(suspect))
          .join(` ${words.or} `),
      )
      .join(" + ");
    return `${words.chance(likelyWords(words, probability), percentText(probability))}: ${text}`;
  });
  const next = answer?.looks[0]?.look;
  const nextLines =
    next === undefined
      ? []
      : [
          "",
          `${words.next}: ${words.looks[next.kind]}`,
          lookAsks(told, next),
          ...lookSpots(told, next).map(({ text }) => `- ${text}`),
        ];
  return [
    words.machine(names.pick(file.machine.labels), file.revision),
    "",
    `${words.history}:`,
    ...seen.map((line) => `- ${line}`),
    ...(works > 0 ? [`- ${words.workCount(works)}`] : []),
    ...done.map((line) => `- ${line}`),
    ...(causes.length > 0 ? ["", `${words.causes}:`, ...causes.map((line) => `- ${line}`)] : []),
    ...nextLines,
    "",
  ].join("\n");
}
