import { PICTURE_BYTES } from "@pinwright/contract";
import type { Handlers } from "../http/bind.ts";
import { Refused } from "../http/problem.ts";
import { readBytes } from "../http/read-body.ts";
import { FILE_POLICY } from "../http/security-headers.ts";
import type { ServerParts } from "./parts.ts";

type Names = "putPicture" | "picture";

const startsWith = (bytes: Uint8Array, at: number, start: readonly number[]): boolean =>
  start.every((byte, i) => bytes[at + i] === byte);

const ascii = (text: string): readonly number[] => [...text].map((char) => char.charCodeAt(0));

/**
 * What kind of picture bytes are, by what they begin with: JPEG (start of image and a marker, ITU-T T.81 annex B), PNG (its
 * signature, ISO/IEC 15948 clause 5.2), WebP (a RIFF file of the form WEBP, RFC 9649 section 2.4); null: none of these.
 */
function pictureType(bytes: Uint8Array): "image/jpeg" | "image/png" | "image/webp" | null {
  if (startsWith(bytes, 0, [0xff, 0xd8, 0xff])) return "image/jpeg";
  if (startsWith(bytes, 0, [0x89, ...ascii("PNG\r\n"), 0x1a, 0x0a])) return "image/png";
  if (startsWith(bytes, 0, ascii("RIFF")) && startsWith(bytes, 8, ascii("WEBP"))) return "image/webp";
  return null;
}

/** Pictures that somebody took of a defect. */
export function pictureHandlers({ deps: { store } }: ServerParts): Pick<Handlers, Names> {
  return {
    putPicture: async ({ request }) => {
      const bytes = await readBytes(request, PICTURE_BYTES);
      if (bytes.byteLength === 0) throw new Refused("unreadable", "The picture is empty.");
      if (pictureType(bytes) === null)
        throw new Refused("unreadable", "This is no picture. Expected: a JPEG, PNG or WebP.");
      return { sha256: await store.pictures.put(bytes) };
    },
    picture: async ({ parts: { sha256 } }) => {
      const bytes = await store.pictures.get(sha256);
      const type = bytes === null ? null : pictureType(bytes);
      // Files of books lie under their hashes too; they are asked for by their names.
      if (bytes === null || type === null)
        throw new Refused(
          "not-found",
          "This picture is not here. The device that took it may still have it.",
        );
      return new Response(new Uint8Array(bytes), {
        headers: {
          "content-type": type,
          "content-length": String(bytes.byteLength),
          "content-disposition": "inline",
          "content-security-policy": FILE_POLICY,
          // Under this name there is never anything else.
          "cache-control": "private, max-age=31536000, immutable",
        },
      });
    },
  };
}
