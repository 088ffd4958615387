import { type ChildProcessWithoutNullStreams, execFileSync, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { appendFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { formatTesterAnswer } from "@pinwright/engine";
import { afterEach, describe, expect, test } from "vitest";
import { Conversation } from "./conversation.ts";
import {
  ContinuityTester,
  type ConversationOptions,
  InstrumentError,
  parseScpiNumber,
  ScpiInstrument,
} from "./index.ts";
import { LineServer } from "./testing/line-server.ts";
import { SimulatedInstrument } from "./testing/simulated-instrument.ts";
import { SimulatedTester } from "./testing/simulated-tester.ts";

/** Makes a pipe with a name. It gives back what is written into it, like a serial line whose two wires are joined. */
const MAKE_PIPE = "mkfifo";

/** Runs a command on a terminal of its own, and is the cable to it: a serial port for those who have none. */
const TERMINAL = { command: "script", args: ["-qfc", "tty; exec sleep 60", "/dev/null"] };

const ends: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

/** Starts a simulated device and gives the way to it. */
async function wayTo(server: LineServer, timeoutMs = 150): Promise<ConversationOptions> {
  const port = await server.start();
  ends.push(() => server.stop());
  return { address: { kind: "tcp", host: "127.0.0.1", port }, timeoutMs };
}

/** A terminal with somebody at its other end who answers each line with the same line and a sign beyond ASCII. */
async function terminal(): Promise<{ path: string; line: () => Promise<string> }> {
  const shell: ChildProcessWithoutNullStreams = spawn(TERMINAL.command, TERMINAL.args);
  ends.push(async () => void shell.kill());
  shell.stdout.setEncoding("latin1");
  const waiting: ((line: string) => void)[] = [];
  const line = (): Promise<string> => new Promise((resolve) => waiting.push(resolve));
  let heard = "";
  let path = "";
  shell.stdout.on("data", (text: string) => {
    const lines = (heard + text).split("\n");
    heard = lines.pop() ?? "";
    for (const one of lines) {
      if (path !== "") shell.stdin.write(`${one} \u00b5\r\n`, "latin1");
      else path = one.trim();
      waiting.shift()?.(one.trim());
    }
  });
  return { path: await line(), line };
}

async function meter(): Promise<{ simulated: SimulatedInstrument; instrument: ScpiInstrument }> {
  const simulated = new SimulatedInstrument();
  const instrument = new ScpiInstrument(await wayTo(simulated.server));
  ends.push(() => instrument.close());
  return { simulated, instrument };
}

/** What went wrong, as `trouble says`. */
const troubleOf = async (task: Promise<unknown>): Promise<string> =>
  task.then(
    () => "none",
    (error: unknown) => (error instanceof InstrumentError ? `${error.trouble} ${error.says}` : String(error)),
  );

describe("numbers of SCPI", () => {
  test.each([
    ["+1.23450000E+01", 12.345],
    ["-3", -3],
    [" 0.5\r", 0.5],
    [".25", 0.25],
    ["4.", 4],
    ["1E3", 1000],
    ["+9.89E+37", 9.89e37],
  ])("%j is a value", (text, value) => {
    expect(parseScpiNumber(text)).toEqual({ kind: "value", value });
  });

  test("what is beyond the range and what is no number are told apart from values", () => {
    expect(parseScpiNumber("+9.9E+37")).toEqual({ kind: "overload", negative: false });
    expect(parseScpiNumber("9.90000000E+37")).toEqual({ kind: "overload", negative: false });
    expect(parseScpiNumber("-9.9E37")).toEqual({ kind: "overload", negative: true });
    expect(parseScpiNumber("+9.91E+37")).toEqual({ kind: "not-a-number" });
  });

  test.each(["", "OL", "1,2", "1.2 V", "0x10", "--1", "1e", "Infinity", "1E5000"])("%j is none", (text) => {
    expect(parseScpiNumber(text)).toBeNull();
  });
});

describe("an instrument", () => {
  test("says who it is and what it measures", async () => {
    const { simulated, instrument } = await meter();
    expect(await instrument.identify()).toEqual({
      ...{ maker: "Pinwright", model: "Simulated meter", serial: "0", firmware: "1.0" },
    });
    simulated.answers.set("MEAS:VOLT:DC?", "+5.02000000E+00").set("READ?", "+9.90000000E+37");
    expect(await instrument.measure("MEAS:VOLT:DC?")).toEqual({ kind: "value", value: 5.02 });
    expect(await instrument.measure("READ?")).toEqual({ kind: "overload", negative: false });
  });

  test("is asked one thing at a time, in the order of asking", async () => {
    const { simulated, instrument } = await meter();
    simulated.server.delayMs = 15;
    simulated.answers.set("READ?", "1").set("FETC?", "2");
    const asked = ["READ?", "FETC?", "READ?", "FETC?"];
    const got = await Promise.all(asked.map((one) => instrument.measure(one)));
    expect(got.map((one) => (one.kind === "value" ? one.value : one.kind))).toEqual([1, 2, 1, 2]);
    expect(simulated.asked).toEqual(asked);
  });

  test("has its errors read until there is none", async () => {
    const { simulated, instrument } = await meter();
    simulated.err('-222,"Data out of range"');
    simulated.err("-350");
    expect(await instrument.errors()).toEqual([
      { code: -222, says: "Data out of range" },
      { code: -350, says: "" },
    ]);
    expect(await instrument.errors()).toEqual([]);
    for (let i = 0; i < 60; i++) simulated.err('-350,"Queue overflow"');
    expect(await instrument.errors()).toHaveLength(50);
  });

  test("that does not know a question says so through its list of errors", async () => {
    const { instrument } = await meter();
    expect(await troubleOf(instrument.measure("MEAS:SMELL?"))).toBe("refused -113 Undefined header");
  });

  test("that stays silent is given up in time, and answers the next question rightly", async () => {
    const { simulated, instrument } = await meter();
    simulated.answers.set("READ?", "7");
    simulated.silent.add("FETC?");
    expect(await troubleOf(instrument.measure("FETC?"))).toBe("time-out ");
    expect(await instrument.measure("READ?")).toEqual({ kind: "value", value: 7 });
  });

  test("that answers too late is not taken for the answer to the next question", async () => {
    const { simulated, instrument } = await meter();
    simulated.answers.set("READ?", "7").set("FETC?", "8");
    simulated.server.delayMs = 170;
    const late = instrument.measure("READ?");
    expect(await troubleOf(late)).toBe("time-out ");
    simulated.server.delayMs = 0;
    expect(await instrument.measure("FETC?")).toEqual({ kind: "value", value: 8 });
    await new Promise((resolve) => setTimeout(resolve, 60));
    expect(await instrument.measure("FETC?")).toEqual({ kind: "value", value: 8 });
  });

  test("whose cable is pulled is opened again", async () => {
    const { simulated, instrument } = await meter();
    simulated.answers.set("READ?", "7");
    await instrument.measure("READ?");
    simulated.server.delayMs = 100;
    const asked = troubleOf(instrument.measure("READ?"));
    setTimeout(() => simulated.server.cut(), 20);
    expect(await asked).toBe("ended ");
    simulated.server.delayMs = 0;
    expect(await instrument.measure("READ?")).toEqual({ kind: "value", value: 7 });
  });

  test("that answers what is no number, or too much, is not believed", async () => {
    const { simulated, instrument } = await meter();
    simulated.answers.set("READ?", "5.0 V").set("FETC?", "9".repeat(70_000));
    expect(await troubleOf(instrument.measure("READ?"))).toBe("not-understood 5.0 V");
    expect(await troubleOf(instrument.measure("FETC?"))).toMatch(/^too-long 9{80}$/);
    simulated.answers.set("*IDN?", "something");
    expect(await troubleOf(instrument.identify())).toBe("not-understood something");
  });

  test("nobody is at the address", async () => {
    const server = new LineServer(() => null);
    const way = await wayTo(server);
    await server.stop();
    ends.pop();
    const instrument = new ScpiInstrument(way);
    expect(await troubleOf(instrument.measure("READ?"))).toMatch(/^not-reached /);
  });

  test("only single questions are put: no setting, and no second command behind one", async () => {
    const { simulated, instrument } = await meter();
    for (const text of ["*RST", "READ?\n*RST", "READ?;*RST", "READ? 1;*RST", "OUTP ON", "", "READ? \u00e9"])
      await expect(instrument.measure(text)).rejects.toThrow(RangeError);
    expect(simulated.asked).toEqual([]);
  });
});

describe("a serial line", () => {
  test("a device file is asked like a socket", async () => {
    const folder = mkdtempSync(join(tmpdir(), "pinwright-serial-"));
    ends.push(async () => rmSync(folder, { recursive: true }));
    const path = join(folder, "port");
    execFileSync(MAKE_PIPE, [path]);
    const talk = new Conversation({ address: { kind: "serial", path, baud: 9600 }, timeoutMs: 500 });
    ends.push(() => talk.close());
    expect(await talk.ask("hello")).toBe("hello");
    expect(await talk.ask("again")).toBe("again");
  });

  test("what comes late after something went wrong is not taken for an answer", async () => {
    const folder = mkdtempSync(join(tmpdir(), "pinwright-serial-"));
    ends.push(async () => rmSync(folder, { recursive: true }));
    const path = join(folder, "port");
    execFileSync(MAKE_PIPE, [path]);
    const talk = new Conversation({
      ...{ address: { kind: "serial", path, baud: null }, timeoutMs: 1000 },
      ...{ longestAnswer: 5, quietMs: 100 },
    });
    ends.push(() => talk.close());
    expect(await troubleOf(talk.ask("much too long"))).toBe("too-long much too long\n");
    const next = talk.ask("next");
    setTimeout(() => appendFile(path, "late\n"), 30);
    expect(await next).toBe("next");
  });

  test("a terminal is set to plain bytes and asked", async () => {
    const { path, line } = await terminal();
    const talk = new Conversation({ address: { kind: "serial", path, baud: 9600 }, timeoutMs: 2000 });
    ends.push(() => talk.close());
    for (const text of ["READ?", "*IDN?"]) {
      const asked = line();
      const answer = talk.ask(text);
      // Whoever is at the other end answers what came, so that nothing is changed or echoed on its way.
      expect(await asked).toBe(text);
      expect(await answer).toBe(`${text} \u00b5`);
    }
    const other = new Conversation({ address: { kind: "serial", path, baud: 12_345 }, timeoutMs: 500 });
    ends.push(() => other.close());
    expect(await troubleOf(other.ask("READ?"))).toMatch(/^not-reached /);
  });

  test("an ordinary file is no port, and nothing is written into it", async () => {
    const folder = mkdtempSync(join(tmpdir(), "pinwright-serial-"));
    ends.push(async () => rmSync(folder, { recursive: true }));
    const path = join(folder, "records");
    await appendFile(path, "all that was recorded");
    const talk = new Conversation({ address: { kind: "serial", path, baud: null }, timeoutMs: 100 });
    expect(await troubleOf(talk.ask("hello"))).toBe("not-reached this is no device file");
    expect(readFileSync(path, "utf8")).toBe("all that was recorded");
  });

  test("a device file that is not there is named", async () => {
    const path = join(tmpdir(), "pinwright-no-such-port");
    const talk = new Conversation({ address: { kind: "serial", path, baud: null }, timeoutMs: 100 });
    expect(await troubleOf(talk.ask("hello"))).toMatch(/^not-reached ENOENT/);
  });
});

describe("a continuity tester", () => {
  async function tester(points = 6): Promise<{ simulated: SimulatedTester; tester: ContinuityTester }> {
    const simulated = new SimulatedTester(points);
    const tester = new ContinuityTester(await wayTo(simulated.server));
    ends.push(() => tester.close());
    return { simulated, tester };
  }
  const bench = {
    ...{ harnessId: "h", splices: [] },
    places: ["a", "b", "c"].map((id, i) => ({
      ...{ id, pointId: id, landingId: "j1", loose: false, column: i, row: 0, wires: [1] },
    })),
    wires: [{ id: "w1", number: 1, netId: "n", a: "a", b: "b" }],
  };
  const adapter = {
    pointOf: new Map([
      ["a", 5],
      ["b", 2],
      ["c", 3],
    ]),
  };

  test("is identified, counted and scanned either way", async () => {
    const { simulated, tester: one } = await tester();
    simulated.plug(bench, adapter, [{ kind: "short", a: "b", b: "c" }]);
    expect(await one.identify()).toBe("simulated");
    expect(await one.try(2)).toEqual([3, 5]);
    expect(await one.try(6)).toEqual([]);
    const scan = { points: 6, groups: [[2, 3, 5]] };
    expect(await one.scan()).toEqual(scan);
    const steps: string[] = [];
    const tried = await one.scanByPoints((done, points) => steps.push(`${done}/${points}`));
    expect(tried).toEqual({ scan, untried: [], oneSided: [] });
    expect(steps.at(-1)).toBe("6/6");
  });

  test("is asked again when a line was spoilt, three times at most", async () => {
    const { simulated, tester: one } = await tester();
    simulated.spoil = 2;
    expect(await one.points()).toBe(6);
    simulated.spoil = 3;
    expect(await troubleOf(one.scan())).toMatch(/^not-understood wrong-check: /);
  });

  test("that refuses or is broken is not asked again", async () => {
    const { simulated, tester: one } = await tester();
    expect(await troubleOf(one.try(7))).toBe("refused error point");
    simulated.broken = true;
    expect(await troubleOf(one.scan())).toBe("refused error broken");
  });

  test("that answers another question is not believed", async () => {
    const server = new LineServer(() => `${formatTesterAnswer({ kind: "points", points: 6 })}\n`);
    const one = new ContinuityTester(await wayTo(server));
    ends.push(() => one.close());
    expect(await troubleOf(one.identify())).toBe("not-understood points");
  });
});
