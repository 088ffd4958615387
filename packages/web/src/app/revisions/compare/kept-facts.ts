import { pathTo } from "@pinwright/contract";

/** Facts of releases never change: each is asked for once. */
const kept = new Map<string, Promise<string>>();

/** Facts that a release keeps, as JSON. @throws Error when the server has none */
export function keptFacts(book: string, release: string): Promise<string> {
  const path = pathTo("releaseResults", { book, release, name: "facts" });
  const known = kept.get(path);
  if (known !== undefined) return known;
  const asked = fetch(path, { credentials: "same-origin" }).then(async (response) => {
    if (!response.ok) throw new Error(`${response.status} ${response.statusText}`);
    return response.text();
  });
  kept.set(path, asked);
  asked.catch(() => kept.delete(path));
  return asked;
}
