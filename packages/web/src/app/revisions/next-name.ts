/** Letters that a hurried eye takes for digits: drawing practice names no revision with them (from memory). */
const LIKE_DIGITS: readonly string[] = ["I", "O"];

/** `A` to `Z`, then `AA`, without I and O: the letters after these. */
function nextLetters(letters: string): string {
  const last = letters.at(-1) ?? "";
  if (last === "") return "A";
  const head = letters.slice(0, -1);
  if (last === "Z") return `${nextLetters(head)}A`;
  const next = String.fromCodePoint((last.codePointAt(0) ?? 0) + 1);
  return LIKE_DIGITS.includes(next) ? nextLetters(head + next) : head + next;
}

/**
 * A name for the next release: the next letter, or the next number where names end in one; never one that is taken.
 * @param names of the releases, the newest first
 */
export function nextReleaseName(names: readonly string[]): string {
  const [newest = ""] = names;
  const follow = (name: string): string => {
    const [, head = "", digits = ""] = /^(.*?)(\d+)$/u.exec(name) ?? [];
    if (digits !== "") return head + String(Number(digits) + 1).padStart(digits.length, "0");
    return /^[A-Z]+$/u.test(name) ? nextLetters(name) : `${name}2`;
  };
  let next = newest === "" ? "A" : follow(newest);
  while (names.includes(next)) next = follow(next);
  return next;
}
