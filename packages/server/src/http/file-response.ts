import { createReadStream } from "node:fs";
import { rm, stat } from "node:fs/promises";
import { Readable } from "node:stream";
import { FILE_POLICY } from "./security-headers.ts";

const TYPES: Readonly<Record<string, string>> = {
  pdf: "application/pdf",
  svg: "image/svg+xml; charset=utf-8",
  dxf: "image/vnd.dxf",
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  csv: "text/csv; charset=utf-8",
  zip: "application/zip",
  step: "model/step",
  stp: "model/step",
};

/** What a browser shows itself; the rest it saves. */
const SHOWN: readonly string[] = ["pdf", "svg"];

/** A name in a header: plain letters for old readers, and the name itself. */
function disposition(name: string, shown: boolean): string {
  const plain = name.replace(/[^A-Za-z0-9._-]/g, "_");
  const encoded = encodeURIComponent(name).replace(/['()*]/g, (c) => `%${c.charCodeAt(0).toString(16)}`);
  return `${shown ? "inline" : "attachment"}; filename="${plain}"; filename*=UTF-8''${encoded}`;
}

/** Bytes as a file that a browser saves and never shows: whoever made it may not be meant well. */
export function savedResponse(bytes: Uint8Array, name: string): Response {
  const ending = name.slice(name.lastIndexOf(".") + 1).toLowerCase();
  return new Response(new Uint8Array(bytes), {
    headers: {
      "content-type": TYPES[ending] ?? "application/octet-stream",
      "content-length": String(bytes.byteLength),
      "content-disposition": disposition(name, false),
      "content-security-policy": FILE_POLICY,
      "cache-control": "private, no-store",
    },
  });
}

/** Bytes that this program made, as a file that a browser may show. */
export function madeResponse(bytes: Uint8Array, name: string): Response {
  const ending = name.slice(name.lastIndexOf(".") + 1).toLowerCase();
  return new Response(new Uint8Array(bytes), {
    headers: {
      "content-type": TYPES[ending] ?? "application/octet-stream",
      "content-length": String(bytes.byteLength),
      "content-disposition": disposition(name, SHOWN.includes(ending)),
      "content-security-policy": FILE_POLICY,
      "cache-control": "private, no-store",
    },
  });
}

/** A file as an answer. `once`: it is deleted after it was read. */
export async function fileResponse(path: string, name: string, once = false): Promise<Response> {
  const ending = name.slice(name.lastIndexOf(".") + 1);
  const { size } = await stat(path);
  const stream = createReadStream(path);
  if (once) stream.once("close", () => void rm(path, { force: true }));
  // Node's and the browser's stream are declared apart; they are the same class.
  const body = Readable.toWeb(stream) as ReadableStream<Uint8Array>;
  return new Response(body, {
    headers: {
      "content-type": TYPES[ending] ?? "application/octet-stream",
      "content-length": String(size),
      "content-disposition": disposition(name, SHOWN.includes(ending)),
      "content-security-policy": FILE_POLICY,
      "cache-control": "private, no-store",
    },
  });
}
