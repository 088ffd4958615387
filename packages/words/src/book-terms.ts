import type { Language } from "./language.ts";
import { BOOK_TERMS } from "./zh/book-terms.ts";

const NUMBER = /\d+(?:\.\d+)?(?:–\d+)?/gu;

/**
 * A text of the book that it has in one language only, such as the name of a gauge, in the language of whoever reads it.
 * One that is not among the usual terms of the trade stays as the book has it.
 */
export function bookTerm(language: Language, text: string): string {
  if (language === "en") return text;
  const own = BOOK_TERMS[text];
  if (own !== undefined) return own;
  const numbers = text.match(NUMBER) ?? [];
  const like = BOOK_TERMS[text.replaceAll(NUMBER, "#")];
  if (like === undefined) return text;
  let next = 0;
  return like.replaceAll("#", () => numbers[next++] ?? "#");
}
