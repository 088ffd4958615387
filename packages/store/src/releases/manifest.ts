import { createHash } from "node:crypto";
import { canonicalJson, type Release, type ReleaseItem, releaseManifestSchema } from "@pinwright/contract";
import { StoreError } from "../error.ts";
import type { NewRelease } from "./release.ts";

export const sha256 = (bytes: Uint8Array | string): string =>
  createHash("sha256").update(bytes).digest("hex");

/** Everything that is known of a release when it is made. */
export interface Manifested extends Omit<NewRelease, "items" | "request"> {
  readonly no: number;
  readonly at: string;
  readonly personName: string;
  readonly items: readonly ReleaseItem[];
}

/** The one text for a release: JSON with sorted keys, items by kind and id in code-unit order. */
export const manifestText = ({ items, ...release }: Manifested): string =>
  canonicalJson({
    format: "pinwright-release",
    version: 1,
    ...release,
    items: [...items].sort((p, q) => compare(p.kind, q.kind) || compare(p.id, q.id)),
  });

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** A release as its manifest has it. Throws a `StoreError` when it is not what was written under the hash. */
export function readManifest(
  text: string,
  hash: string,
): Release & { readonly items: readonly ReleaseItem[] } {
  const damaged = (why: string): StoreError =>
    new StoreError("damaged", `A release is not what was stored under ${hash} (${why}); restore a back-up.`);
  if (sha256(text) !== hash) throw damaged("its manifest has another hash");
  const read = releaseManifestSchema.safeParse(JSON.parse(text));
  if (!read.success) throw damaged("its manifest cannot be read");
  const { format: _, version: __, ...release } = read.data;
  return { ...release, hash };
}
