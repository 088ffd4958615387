import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Fact, type FactBody, factText, NO_FACT, type StreamHead } from "@pinwright/contract";
import { openStore } from "@pinwright/store";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { WrongCall } from "../settings.ts";
import { SMALL } from "../testing/test-server.ts";
import { headsOfText } from "./heads-text.ts";
import { recordsCommand } from "./records-command.ts";

const folder = mkdtempSync(join(tmpdir(), "pinwright-command-"));
afterAll(() => rmSync(folder, { recursive: true }));
const inFolder = (name: string): string => join(folder, name);
const hashOf = (fact: Omit<Fact, "hash">): string =>
  createHash("sha256").update(factText(fact)).digest("hex");

let heads: readonly StreamHead[] = [];
const UNIT = "b-000001";
const read = (value: number): FactBody => ({ kind: "reading", unit: UNIT, test: "t.one", value, good: true });
const NOTES: readonly FactBody[] = [
  { kind: "noted", unit: UNIT, says: "one" },
  read(1.5),
  { kind: "noted", unit: UNIT, says: "three" },
  { kind: "noted", unit: UNIT, says: "four" },
];

function chained(bodies: readonly FactBody[]): readonly Fact[] {
  let before = NO_FACT;
  return bodies.map((body, i) => {
    const at = `2027-01-04T08:0${i}:00.000Z`;
    const text = { stream: "tablet-1", seq: i + 1, before, at, person: "ann", body };
    before = hashOf(text);
    return { ...text, hash: before };
  });
}

beforeAll(async () => {
  let ids = 0;
  const store = await openStore(
    { kind: "sqlite", file: inFolder("pinwright.sqlite") },
    { now: () => "2027-01-05T08:00:00.000Z", newId: () => `id${++ids}` },
  );
  const by = { personId: "pinwright", personName: "Pinwright" };
  for (const [id, tables] of [
    ["small", SMALL],
    ["shop", new Map()],
  ] as const)
    await store.books.add({ id, kind: id === "shop" ? "shop" : "machine", tables, note: "" }, by);
  await store.records.begin(
    [{ what: "board", type: "bt.one", book: "small", revision: "@1", options: [] }],
    "ann",
  );
  await store.records.take(chained(NOTES), () => null);
  heads = await store.records.heads();
  await store.releases.add(
    {
      ...{ book: "small", name: "A", request: "release-small", changeNo: 1, note: "", program: "1" },
      ...{ findings: { error: 0, warning: 0, note: 0 }, accepted: [] },
      items: [{ kind: "tables", id: "book", about: {}, body: Buffer.from("{}") }],
    },
    by,
  );
  await store.backUp(inFolder("kept.zip"));
  await store.close();
}, 60_000);

async function records(...args: readonly string[]) {
  const lines: string[] = [];
  const status = await recordsCommand(
    args,
    {},
    (line) => lines.push(line),
    (line) => lines.push(line),
  );
  return { status, said: lines.join("\n") };
}

/** The heads as a file, as the codes of a certificate hold them. */
function headsFile(cut = 64): string {
  const file = inFolder(`heads-${cut}.txt`);
  const lines = heads.map(({ stream, seq, hash }) => `${stream} ${seq} ${hash.slice(0, cut)}`);
  writeFileSync(file, [`pinwright-heads ${UNIT}`, ...lines].join("\n"));
  return file;
}

/** A copy of the data folder whose store another program changed, behind this one's back. */
function tampered(name: string, ...statements: readonly string[]): string {
  const other = inFolder(name);
  mkdirSync(other);
  copyFileSync(inFolder("pinwright.sqlite"), join(other, "pinwright.sqlite"));
  const script = "import sqlite3, sys; sqlite3.connect(sys.argv[1]).executescript(sys.stdin.read())";
  const input = statements.map((statement) => `${statement};\n`).join("");
  execFileSync("/usr/bin/python3", ["-c", script, join(other, "pinwright.sqlite")], { input });
  return other;
}

const text = (value: unknown): string => `'${String(value).replaceAll("'", "''")}'`;

describe("records verify", () => {
  it("finds nothing in what was not touched, also in a back-up, and with heads whole or in their short form", async () => {
    expect(await records("verify", "--data", folder)).toMatchObject({ status: 0 });
    const kept = inFolder("kept.zip");
    for (const digits of [64, 12])
      expect(await records("verify", headsFile(digits), "--back-up", kept)).toMatchObject({
        status: 0,
        said: "5 records are as they were written; 2 heads that were given agree.",
      });
  });

  it("names the record that was changed", async () => {
    const body = text(JSON.stringify(read(9.5)));
    const data = tampered("changed", `update facts set body = ${body} where stream = 'tablet-1' and seq = 2`);
    const { status, said } = await records("verify", "--data", data);
    expect(status).toBe(1);
    expect(said).toContain(
      "stream tablet-1, record 2: is not what was written; it now says: reading of b-000001, 2027-01-04T08:01:00.000Z, by ann",
    );
    expect(said).not.toContain("record 3");
  });

  it("names a record that was dropped, and one that was slipped in", async () => {
    const dropped = tampered("dropped", "delete from facts where stream = 'tablet-1' and seq = 3");
    const first = await records("verify", "--data", dropped);
    expect(first.status).toBe(1);
    expect(first.said).toContain("stream tablet-1, record 3: is missing");
    const last = heads.find(({ stream }) => stream === "tablet-1")?.hash ?? "";
    const more = { stream: "tablet-1", seq: 5, before: last, at: "2027-01-04T08:09:00.000Z", person: "ann" };
    const fact = { ...more, body: { kind: "noted" as const, unit: UNIT, says: "five" } };
    const values = [
      99,
      more.stream,
      5,
      last,
      hashOf(fact),
      more.at,
      more.at,
      more.person,
      "noted",
      JSON.stringify(fact.body),
    ];
    const added = tampered(
      "added",
      `insert into facts (no, stream, seq, before, hash, at, received_at, person, kind, body) values (${values.map(text).join(", ")})`,
    );
    const second = await records("verify", "--data", added);
    expect(second.status).toBe(1);
    expect(second.said).toContain(
      "stream tablet-1, record 4: is where the stream should end, and it does not",
    );
  });

  it("finds a stream that was chained anew only by heads that were written down, and says between which records", async () => {
    const anew = chained(NOTES.map((body) => (body.kind === "reading" ? read(9.5) : body)));
    const data = tampered(
      "anew",
      ...anew.map(
        ({ seq, before, hash, body }) =>
          `update facts set before = ${text(before)}, hash = ${text(hash)}, body = ${text(JSON.stringify(body))} where stream = 'tablet-1' and seq = ${seq}`,
      ),
      `update stream_heads set hash = ${text(anew.at(-1)?.hash)} where stream = 'tablet-1'`,
      "update readings set value = 9.5",
    );
    expect(await records("verify", "--data", data)).toMatchObject({ status: 0 });
    for (const digits of [64, 12]) {
      const { status, said } = await records("verify", headsFile(digits), "--data", data);
      expect(status).toBe(1);
      expect(said).toContain(
        "stream tablet-1, record 4: is not what was written; the head that was given says otherwise",
      );
      expect(said).toContain("from record 1 to 4");
    }
  });

  it("takes what a scanner gives, and refuses what is no head", () => {
    const [{ stream = "", seq = 0, hash = "" } = {}] = heads;
    expect(headsOfText(`QR-Code:pinwright-heads m-1\r\n${stream} ${seq} ${hash}\n\n`)).toEqual([
      { stream, seq, hash },
    ]);
    expect(headsOfText(`${stream} ${seq} A1B2 c3d4 e5f6`)).toEqual([{ stream, seq, hash: "a1b2c3d4e5f6" }]);
    for (const line of ["tablet-1 4", "tablet-1 x abcdefabcdef", "tablet-1 4 abc", "tablet-1 0 abcdefabcdef"])
      expect(() => headsOfText(line)).toThrow(WrongCall);
  });
});

describe("records sheets", () => {
  it("are made from a data folder", async () => {
    const file = inFolder("certificate.pdf");
    const made = await records("certificate", UNIT, file, "--data", folder, "--language", "both");
    expect(made).toEqual({ status: 0, said: `Written: ${file}` });
    const said = execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
    for (const own of ["NOT RELEASED", "未放行", UNIT, ...heads.map(({ hash }) => hash)])
      expect(said).toContain(own);
  });

  it("are made from a back-up", async () => {
    const labels = inFolder("labels.pdf");
    const args = [
      "labels",
      "small",
      labels,
      "--back-up",
      inFolder("kept.zip"),
      "--paper",
      "roll",
      "--width",
      "40",
    ];
    expect(await records(...args, "--height", "20")).toMatchObject({ status: 0 });
    // 40 × 20 mm in points.
    const pages = execFileSync("pdftotext", ["-bbox", labels, "-"], { encoding: "utf8" });
    expect(pages).toMatch(/<page width="113\.\d+" height="56\.\d+">/);
  });

  it("are refused with a reason", async () => {
    expect(await records("certificate", "b-000009", inFolder("x.pdf"), "--data", folder)).toEqual({
      status: 3,
      said: "There is no unit b-000009.",
    });
    for (const args of [
      ["dance"],
      ["certificate", UNIT],
      ["labels", "small", "x.pdf", "--paper", "a5"],
      ["verify", "--data", inFolder("none")],
      ["verify", "--wrong"],
    ])
      await expect(records(...args)).rejects.toThrow(WrongCall);
    expect((await records("--help")).said).toContain("records verify [HEADS]");
  });
});

describe("releases", () => {
  it("are read again, byte by byte, also from a back-up", async () => {
    for (const place of [
      ["--data", folder],
      ["--back-up", inFolder("kept.zip")],
    ]) {
      const lines: string[] = [];
      const status = await recordsCommand(
        ["releases", ...place],
        {},
        (line) => lines.push(line),
        (line) => lines.push(line),
      );
      expect(lines.at(-1)).toBe("1 released revisions are as they were made, byte by byte.");
      expect(lines[0]).toMatch(/^small A 2027-01-05 [0-9a-f]{64}$/u);
      expect(status).toBe(0);
    }
  });
});
