import { createHash } from "node:crypto";
import { PICTURE_BYTES } from "@pinwright/contract";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { TestServer, type Visitor } from "../testing/test-server.ts";

const bytesOf = (start: readonly number[] | string, length = 40): Uint8Array<ArrayBuffer> => {
  const bytes = new Uint8Array(length);
  bytes.set(typeof start === "string" ? Buffer.from(start, "latin1") : start);
  return bytes;
};
const JPEG = bytesOf([0xff, 0xd8, 0xff, 0xe0]);
const PNG = bytesOf("\x89PNG\r\n\x1a\n");
const WEBP = bytesOf("RIFF\x20\0\0\0WEBPVP8 ");
const hashOf = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

describe("pictures", () => {
  let server: TestServer;
  let owner: Visitor;
  let builder: Visitor;
  beforeAll(async () => {
    server = await TestServer.start();
    owner = await server.owner();
    builder = await server.person(owner, "Bo", "builder");
  }, 60_000);
  afterAll(() => server.close());
  const put = (bytes: Uint8Array<ArrayBuffer>) => builder.get("/api/pictures", { method: "POST", bytes });
  const refused = (bytes: Uint8Array<ArrayBuffer>) =>
    builder.refusal("/api/pictures", { method: "POST", bytes });

  it("are kept under their hash, once, and given back as what they are", async () => {
    for (const [bytes, type] of [
      [JPEG, "image/jpeg"],
      [PNG, "image/png"],
      [WEBP, "image/webp"],
    ] as const) {
      expect(await put(bytes)).toEqual({ sha256: hashOf(bytes) });
      expect(await put(bytes)).toEqual({ sha256: hashOf(bytes) });
      const response = await builder.send(`/api/pictures/${hashOf(bytes)}`);
      expect(response.headers.get("content-type")).toBe(type);
      expect(response.headers.get("content-security-policy")).toMatch(/^default-src 'none'.*sandbox/);
      expect(response.headers.get("x-content-type-options")).toBe("nosniff");
      expect(new Uint8Array(await response.arrayBuffer())).toEqual(bytes);
    }
  });

  it("are refused when they are something else, empty or too large", async () => {
    for (const bytes of [
      bytesOf("<svg xmlns='http://www.w3.org/2000/svg'/>", 60),
      bytesOf("GIF89a"),
      bytesOf("RIFF\x20\0\0\0WAVE"),
      bytesOf([0xff, 0xd8]).slice(0, 2),
    ])
      expect(await refused(bytes)).toMatchObject({
        ...{ status: 422, code: "unreadable", message: expect.stringContaining("JPEG, PNG or WebP") },
      });
    expect(await refused(new Uint8Array())).toMatchObject({ code: "unreadable" });
    const largest = bytesOf([0xff, 0xd8, 0xff], PICTURE_BYTES);
    expect(await put(largest)).toEqual({ sha256: hashOf(largest) });
    expect(await refused(bytesOf([0xff, 0xd8, 0xff], PICTURE_BYTES + 1))).toMatchObject({
      ...{ status: 413, code: "too-large" },
    });
  });

  it("that are not here are not found, and files of books are not given as pictures", async () => {
    for (const name of ["0".repeat(64), "none", "..%2f..%2fstore.sqlite"])
      expect(await builder.refusal(`/api/pictures/${name}`)).toMatchObject({ status: 404 });
    const step = new Uint8Array(Buffer.from("ISO-10303-21;\nHEADER;\nENDSEC;\n"));
    await owner.get("/api/books/small/files/post-a.step", { method: "PUT", bytes: step });
    expect(await builder.refusal(`/api/pictures/${hashOf(step)}`)).toMatchObject({ status: 404 });
  });
});
