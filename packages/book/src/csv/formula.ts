/**
 * A text that starts with one of these would run as a formula, or could be taken for one, when a spreadsheet
 * opens the file. Rule of the OWASP page "CSV Injection".
 */
const RUNS = /^'*[=+\-@\t\r]/;
const ESCAPED = /^'+[=+\-@\t\r]/;

/** Puts an apostrophe before a text that would run; one that has apostrophes there already gets one more. */
export const escapeFormula = (text: string): string => (RUNS.test(text) ? `'${text}` : text);

/** Takes back what `escapeFormula` did. */
export const unescapeFormula = (text: string): string =>
  text.charCodeAt(0) === 0x27 && ESCAPED.test(text) ? text.slice(1) : text;
