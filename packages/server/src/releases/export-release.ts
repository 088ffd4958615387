import { setImmediate } from "node:timers/promises";
import type { Store } from "@pinwright/store";
import { done } from "../http/problem.ts";
import { ZipFile } from "../threads/zip-file.ts";

const MANIFEST = "manifest.json";

/** A name that unpacks on every system: what stands for it is in the list of sums. */
const plainName = (text: string): string => text.replace(/[^\p{L}\p{N}._-]/gu, "_").slice(0, 150);

/**
 * Writes a release as a ZIP: `manifest.json`, whose SHA-256 is the hash of the release, everything that it holds as it was
 * written, and `SHA256SUMS`, which `sha256sum -c` checks it with. Others get their turn after every item.
 * @returns the path
 */
export async function exportRelease(
  store: Store,
  book: string,
  release: string,
  path: string,
): Promise<string> {
  const what = `release ${release} of ${book}`;
  const { hash } = done(await store.releases.get(book, release), what);
  const zip = new ZipFile(path);
  const encoder = new TextEncoder();
  zip.add(MANIFEST, encoder.encode(done(await store.releases.manifest(book, release), what)));
  const sums = [`${hash}  ${MANIFEST}`];
  const names = new Set([MANIFEST]);
  for (const { kind, id, hash: own } of done(await store.releases.items(book, release), what)) {
    const bytes = done(await store.releases.body(book, release, kind, id), what);
    const ending = kind === "file" ? "" : ".json";
    let name = `${kind}/${plainName(id)}${ending}`;
    for (let n = 2; names.has(name); n++) name = `${kind}/${plainName(id)}-${n}${ending}`;
    names.add(name);
    zip.add(name, bytes);
    sums.push(`${own}  ${name}`);
    await setImmediate();
  }
  zip.add("SHA256SUMS", encoder.encode(`${sums.join("\n")}\n`));
  zip.end();
  return path;
}
