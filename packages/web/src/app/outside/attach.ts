import { type DrawingForm, drawingForm, LIMITS, safeDrawingName } from "@pinwright/book";
import type { BookFile } from "@pinwright/contract";

/** What a file of each form is, unless somebody says otherwise. */
export const KIND_OF_FORM: Readonly<Record<DrawingForm, "drawing" | "outline" | "model">> = {
  pdf: "drawing",
  dxf: "outline",
  svg: "outline",
  step: "model",
};

/** A text as part of a file's name. */
const slug = (text: string): string =>
  text
    .replace(/[^A-Za-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 40);

/** What a file is attached to, and what is there already. */
export interface Place {
  readonly partId: string;
  readonly revision: string;
  /** Names of the files that this revision of the part has. */
  readonly own: ReadonlySet<string>;
  readonly files: ReadonlyMap<string, BookFile>;
}

/**
 * The name under which a file is kept: its own as far as it is safe, else that of part and revision; another one when
 * somebody else's file has it. Null when it is no PDF, DXF, SVG or STEP.
 * @param sha256 hash of its bytes: the same bytes may keep their name
 */
export function nameFor(
  name: string,
  sha256: string,
  { partId, revision, own, files }: Place,
): string | null {
  if (drawingForm(name) === null) return null;
  const ending = name.slice(name.lastIndexOf(".")).toLowerCase();
  const plain = `${slug(partId)}-${slug(revision) || "x"}${ending}`;
  const wanted = safeDrawingName(name) ?? plain;
  const taken = new Map([...files.values()].map((file) => [file.name.toLowerCase(), file]));
  const isFree = (candidate: string): boolean => {
    const there = taken.get(candidate.toLowerCase());
    if (there === undefined || own.has(candidate)) return true;
    return there.name === candidate && there.sha256 === sha256;
  };
  if (isFree(wanted)) return wanted;
  const stem = wanted.slice(0, -ending.length);
  for (let n = 1; ; n++) {
    const candidate = `${stem}-${slug(revision) || "x"}${n === 1 ? "" : `-${n}`}${ending}`;
    if (isFree(candidate)) return candidate;
  }
}

/** Whether a file is too large to be sent. */
export const isTooLarge = (file: { readonly size: number }): boolean => file.size > LIMITS.drawingBytes;

/** SHA-256 of a file, in hexadecimal. */
export async function hashOf(file: Blob): Promise<string> {
  const digest = await crypto.subtle.digest("SHA-256", await file.arrayBuffer());
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** State of a file against what was attached. */
export function fileState(
  sha256: string,
  file: BookFile | undefined,
): "good" | "differs" | "missing" | "unhashed" {
  if (file === undefined) return "missing";
  if (sha256 === "") return "unhashed";
  return file.sha256 === sha256 ? "good" : "differs";
}

/** Bytes as people read them: `240 kB`, `3.1 MB`. */
export function sizeText(bytes: number): string {
  if (bytes < 1000) return `${bytes} B`;
  if (bytes < 1e6) return `${Math.round(bytes / 1000)} kB`;
  return `${(bytes / 1e6).toFixed(1)} MB`;
}
