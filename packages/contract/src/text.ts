import { z } from "zod";

/** Text that a person typed: no control characters but line breaks and tabs, so that it prints as it reads. */
export const plainText = (maxChars: number) =>
  z
    .string()
    .max(maxChars)
    .regex(/^[^\p{Cc}\p{Cs}\u2028\u2029]*$/u, "no control characters");

/** Id that a client makes up for what it sends, so that a retry is never a double. */
export const requestId = z.string().regex(/^[A-Za-z0-9_-]{8,64}$/, "8 to 64 letters, digits, `-` or `_`");

/** Id of a book on this server: the id of its machine, or what it was called at import. */
export const bookId = z
  .string()
  .max(80)
  .regex(/^[a-z0-9]+(?:[.-][a-z0-9]+)*$/, "lower-case words joined by `.` or `-`");

/** UTC time as the store keeps it: `2026-03-31T09:30:00.000Z`. */
export const utcTime = z.iso.datetime();
