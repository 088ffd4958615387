import {
  type ChangeGroup,
  compareFacts,
  factNames,
  type MachineFacts,
  readMachineFacts,
} from "@pinwright/engine";
import { keptSheet, pageDifference, type SheetDocument } from "@pinwright/sheets";
import { changeSentence, subjectName } from "@pinwright/words";
import type { ResultOf, Task } from "./messages.ts";

type PrintTask = Extract<Task, { kind: "print-changes" }>;

const decoder = new TextDecoder();

/** Pages that differ, and all that stands on them on either side: a length alone does not say of which wire it is. */
function differing(
  old: SheetDocument,
  now: SheetDocument | null,
): { readonly pages: number[]; readonly texts: string } {
  const pages: number[] = [];
  const texts: string[] = [];
  const count = Math.max(old.pages.length, now?.pages.length ?? 0);
  for (let i = 0; i < count; i++) {
    if (old.pageHashes[i] === now?.pageHashes[i]) continue;
    pages.push(i + 1);
    const { old: gone, fresh, same } = pageDifference(old.pages[i] ?? null, now?.pages[i] ?? null);
    for (const { leaf } of [...gone, ...fresh, ...same]) if (leaf.kind === "text") texts.push(leaf.text);
  }
  return { pages, texts: ` ${texts.join(" \n ")} ` };
}

const isNamed = (texts: string, name: string): boolean => {
  if (name === "") return false;
  // A short name is looked for as a word of its own: `7-1` is not in `7-12`.
  const plain = name.replace(/[.*+?^${}()|[\]\\]/gu, "\\$&");
  return new RegExp(`(?<![\\p{L}\\p{N}.-])${plain}(?![\\p{L}\\p{N}]|[.-]\\p{N})`, "u").test(texts);
};

/** Whether the pages that differ speak of what a group of changes is about. */
function concerns({ subject, changes }: ChangeGroup, of: string, texts: string): boolean {
  if (subject.id === of) return true;
  const { id, labels } = subject;
  const values = changes.flatMap(({ values: own }) =>
    ["number", "wire"].flatMap((key) => (typeof own[key] === "string" ? [own[key]] : [])),
  );
  return [id, labels.en, labels.zh, ...values].some((name) => isNamed(texts, name));
}

/** What changed on a sheet between two releases: pages, and the changes of the machine that they speak of. */
export function printChanges(task: PrintTask): ResultOf<"print-changes"> {
  const facts = (bytes: Uint8Array): MachineFacts => readMachineFacts(JSON.parse(decoder.decode(bytes)));
  const sheet = ({ body, frame }: PrintTask["old"]): SheetDocument =>
    keptSheet(decoder.decode(body), decoder.decode(frame));
  const { pages, texts } = differing(sheet(task.old), task.now === null ? null : sheet(task.now));
  const [before, after] = [facts(task.before), facts(task.after)];
  const names = factNames(before, after);
  const { groups } = compareFacts(before, after);
  return {
    pages,
    groups: groups
      .filter((group) => concerns(group, task.of, texts))
      .map(({ subject, changes }) => ({
        title: subjectName(task.language, subject),
        sentences: [
          ...new Set(changes.map((change) => changeSentence(task.language, subject, change, names))),
        ],
      })),
  };
}
