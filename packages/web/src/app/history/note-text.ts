import type { AppWords } from "@pinwright/words/app";

const CODE = /^#(example|from)(?: (.+))?$/u;

/** A note of a change set as a sentence: those that the server writes itself are codes. Blank stays blank. */
export function noteText(words: AppWords["history"], note: string): string {
  const [, what, name = ""] = CODE.exec(note) ?? [];
  if (what === "example") return words.serverNotes.example;
  return what === "from" ? words.serverNotes.from(name) : note;
}
