import { open } from "node:fs/promises";
import { Refused } from "./problem.ts";

/** Most bytes of a JSON body. */
export const JSON_BYTES = 8 * 1024 * 1024;
/** Deepest nesting of a JSON body; the deepest that any request needs is 3. Common practice, no source. */
const JSON_DEPTH = 20;

const tooLarge = (limit: number): Refused =>
  // What is left of the body is not read: the connection cannot be used again.
  new Refused(
    "too-large",
    `At most ${limit} bytes are taken here. Send less at once.`,
    {},
    { connection: "close" },
  );

/** Hands on the pieces of a body as they arrive, and stops at the limit, whatever its length was said to be. */
async function* pieces(request: Request, limit: number): AsyncGenerator<Uint8Array, void> {
  if (Number(request.headers.get("content-length") ?? "0") > limit) throw tooLarge(limit);
  if (request.body === null) return;
  let bytes = 0;
  for await (const piece of arriving(request.body)) {
    bytes += piece.byteLength;
    if (bytes > limit) throw tooLarge(limit);
    yield piece;
  }
}

/** A body whose sender goes away in the middle is no fault of the server's; nobody is there to hear of it. */
async function* arriving(body: NonNullable<Request["body"]>): AsyncGenerator<Uint8Array, void> {
  try {
    for await (const piece of body) yield piece;
  } catch {
    throw new Refused("bad-request", "The connection broke off in the middle of the body.");
  }
}

/**
 * Refuses what no store can keep or nobody can read: NUL, half a surrogate pair, nesting without end. Goes through
 * the value without recursion.
 */
function checkValue(value: unknown): void {
  const left: { readonly value: unknown; readonly depth: number }[] = [{ value, depth: 0 }];
  for (let item = left.pop(); item !== undefined; item = left.pop()) {
    if (typeof item.value === "string") checkText(item.value);
    else if (typeof item.value === "object" && item.value !== null) {
      if (item.depth >= JSON_DEPTH)
        throw new Refused("bad-json", `The body is nested deeper than ${JSON_DEPTH}.`);
      for (const [key, inner] of Object.entries(item.value)) {
        checkText(key);
        left.push({ value: inner, depth: item.depth + 1 });
      }
    }
  }
}

function checkText(text: string): void {
  if (text.includes("\u0000") || /\p{Surrogate}/u.test(text))
    throw new Refused("bad-json", "A text in the body has a NUL or half a surrogate pair. Take it out.");
}

/** The JSON of a body. */
export async function readJson(request: Request): Promise<unknown> {
  const type = request.headers.get("content-type") ?? "";
  if (!/^application\/json\s*(;|$)/i.test(type))
    throw new Refused("bad-request", "The body must be JSON, with the content type application/json.");
  const bytes = await readBytes(request, JSON_BYTES);
  let value: unknown;
  try {
    value = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch (error) {
    const why = error instanceof Error ? error.message.slice(0, 200) : "";
    throw new Refused("bad-json", `The body is not JSON in UTF-8: ${why}`);
  }
  checkValue(value);
  return value;
}

/** The bytes of a body that is not too large to be held. */
export async function readBytes(request: Request, limit: number): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  for await (const piece of pieces(request, limit)) parts.push(piece);
  return Buffer.concat(parts);
}

/** Writes a body to a file that must not exist yet, piece by piece. Returns its length in bytes. */
export async function saveBody(request: Request, path: string, limit: number): Promise<number> {
  const file = await open(path, "wx", 0o600);
  try {
    let bytes = 0;
    for await (const piece of pieces(request, limit)) {
      await file.write(piece);
      bytes += piece.byteLength;
    }
    return bytes;
  } finally {
    await file.close();
  }
}
