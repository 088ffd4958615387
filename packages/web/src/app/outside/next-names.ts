/** The revision that most likely follows: `B` after `A`, `4` after `3`; blank when nothing is likely. */
export function nextRevision(revision: string): string {
  if (revision === "") return "A";
  const number = /^(.*?)(\d+)$/.exec(revision);
  if (number !== null) return `${number[1]}${Number(number[2]) + 1}`;
  const last = revision.charCodeAt(revision.length - 1);
  const isLetter = (last >= 65 && last < 90) || (last >= 97 && last < 122);
  return isLetter ? `${revision.slice(0, -1)}${String.fromCharCode(last + 1)}` : "";
}

/** An id for the next sample of a part's present revision: `sm.br.plate.b-2`. */
export function nextSampleId(partId: string, revision: string, taken: ReadonlySet<string>): string {
  const of = revision
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  const stem = `sm.${partId.slice(0, 60)}.${of || "x"}`;
  for (let n = 1; ; n++) if (!taken.has(`${stem}-${n}`)) return `${stem}-${n}`;
}
