import { join } from "node:path";
import { readBook } from "@pinwright/book/io";
import { compareText } from "@pinwright/kernel";
import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import type { Machine } from "../../model/index.ts";
import { resolveMachine } from "../../model/index.ts";
import { shuffled } from "../../testing/arbitrary.ts";
import { createMachine, createShop } from "../../testing/book.ts";
import { createMatrixTables } from "../../testing/matrix.ts";
import { createPoints, type TestPoints } from "../../testing/points.ts";
import { checkProgram, type ProgramPoint, programMap, programMapText } from "./index.ts";

const EXAMPLES = join(import.meta.dirname, "../../../../../examples");

async function exampleMachine(name: string): Promise<Machine> {
  const { book, shop } = await readBook(join(EXAMPLES, name));
  return resolveMachine(book, shop ?? createShop());
}

const short = (points: readonly ProgramPoint[], deviceId: string): readonly string[] =>
  points.filter((p) => p.deviceId === deviceId).map((p) => `${p.pointId} ${p.kind} ${p.polarity}`);

describe("the map of Tidewatch", () => {
  let machine: Machine;
  let points: readonly ProgramPoint[];
  beforeAll(async () => {
    machine = await exampleMachine("tidewatch");
    points = programMap(machine);
  });

  test("has every switch, button, sensor, lamp, coil, motor and speaker but the one that cuts the coils by itself", () => {
    const classes = ["switch", "button", "sensor", "lamp", "coil", "motor", "speaker"];
    const mapped = new Set(points.map((p) => p.deviceId));
    const wanted = [...machine.items.values()].filter(
      (item) => item.kind === "device" && classes.includes(item.type.class),
    );
    expect(wanted.length).toBeGreaterThan(280);
    expect(wanted.filter((item) => !mapped.has(item.id)).map((item) => item.id)).toEqual(["sw.interlock"]);
  });

  test("agrees with the names of the nets, in which the book's author wrote board, connector and place", () => {
    const netOf = new Map(machine.ends.map((end) => [end.point, end.net]));
    const places = new Map<string, Map<number, number>>();
    for (const { pointId, boardId, connector, pin, kind } of points) {
      const named = /^lo\.(.+)\.(j\d+)\.(\d+)$/u.exec(netOf.get(pointId) ?? "");
      if (named === null) continue;
      expect(kind).toBe("driver");
      expect([boardId, connector]).toEqual([`bd.${named[1]}`, named[2]]);
      const own = places.get(`${boardId} ${connector}`) ?? new Map<number, number>();
      places.set(`${boardId} ${connector}`, own.set(Number(named[3]), pin ?? 0));
    }
    expect([...places.values()].reduce((sum, own) => sum + own.size, 0)).toBeGreaterThan(120);
    // Places are counted without feed and key, so that they rise with the pins.
    for (const own of places.values()) {
      const pins = [...own].sort(([a], [b]) => a - b).map(([, pin]) => pin);
      expect(pins).toEqual(pins.toSorted((a, b) => a - b));
    }
  });

  test("reads each input from one device, and drives a motor by both halves of its bridge", () => {
    const byInput = new Map<string, Set<string>>();
    for (const { pointId, kind, deviceId } of points)
      if (kind === "input") byInput.set(pointId, (byInput.get(pointId) ?? new Set()).add(deviceId));
    expect([...byInput].filter(([, devices]) => devices.size > 1).map(([pointId]) => pointId)).toEqual([]);
    const motor = points.filter((p) => p.deviceId === "mech.tide-clock/motor");
    expect(motor.map((p) => `${p.pointId} ${p.polarity} ${p.control}`)).toEqual([
      "bd.motor-bb:j5.2 both forward, high / backward, low",
      "bd.motor-bb:j5.4 both forward, low / backward, high",
    ]);
  });

  test("has nothing to find, and finds an equal address, a moved terminator and a long pulse when they are put in", () => {
    expect(checkProgram(machine)).toEqual([]);
    const { book, shop } = machine;
    const with_ = (tables: Partial<typeof book.tables>): readonly string[] =>
      checkProgram(resolveMachine({ ...book, tables: { ...book.tables, ...tables } }, shop)).map(
        (f) => `${f.rule} ${f.subjects.join(" ")}`,
      );
    const boards = (change: (id: string) => object): typeof book.tables.boards =>
      book.tables.boards.map((row) => ({ ...row, ...change(row.id) }));
    const one = book.tables.boards.filter((b) => b.address !== null);
    const [a, b] = [one[0]?.id ?? "", one.at(-1)?.id ?? ""];
    expect(with_({ boards: boards((id) => (id === a ? { address: one.at(-1)?.address } : {})) })).toEqual([
      `address-twice ${[a, b].sort(compareText).join(" ")}`,
    ]);
    const last = book.tables.boards.find((row) => row.terminated)?.id ?? "";
    expect(with_({ boards: boards((id) => (id === last ? { terminated: false } : {})) })).toEqual([
      `bus-unterminated ${last}`,
    ]);
    const middle = one.find((row) => !row.terminated)?.id ?? "";
    const midway = with_({ boards: boards((id) => (id === middle ? { terminated: true } : {})) });
    expect(midway).toHaveLength(1);
    expect(midway[0]).toContain(`bus-terminated-midway ${middle}`);
    const pulsed = book.tables.activity.find((row) => row.pulse_ms !== null && row.timeout_ms !== null);
    const activity = book.tables.activity.map((row) => (row === pulsed ? { ...row, pulse_ms: 99999 } : row));
    expect(with_({ activity })).toEqual([`pulse-past-timeout ${pulsed?.item}`]);
  });
});

describe("the map of First Light", () => {
  test("goes on through a driver board that follows the board with the program", async () => {
    const machine = await exampleMachine("first-light");
    const points = programMap(machine);
    expect(new Set(points.map((p) => p.deviceId)).size).toBe(12);
    const coil = points.find((p) => p.deviceId === "mech.bumper/coil");
    expect(coil).toMatchObject({
      boardId: "bd.io",
      address: 1,
      pointId: "bd.io:j4.1",
      control: "c1",
      through: ["bd.driver"],
      pulseMs: 30,
      timeoutMs: 80,
      supplyV: 24,
    });
    expect(checkProgram(machine)).toEqual([]);
  });

  test("its text is the same for the same book in any order of rows, and another for another address", async () => {
    const machine = await exampleMachine("first-light");
    const text = programMapText(programMap(machine));
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const tables = shuffled(machine.book.tables, seed) as typeof machine.book.tables;
        const other = resolveMachine({ ...machine.book, tables }, machine.shop);
        expect(programMapText(programMap(other))).toBe(text);
      }),
      { seed: 4, numRuns: 15 },
    );
    const boards = machine.book.tables.boards.map((b) => ({
      ...b,
      address: b.address === 1 ? 9 : b.address,
    }));
    const moved = resolveMachine(
      { ...machine.book, tables: { ...machine.book.tables, boards } },
      machine.shop,
    );
    expect(programMapText(programMap(moved))).not.toBe(text);
  });
});

const machineOf = (points: TestPoints): Machine => createMachine(createPoints(points));
const mapOf = (points: TestPoints): readonly ProgramPoint[] => programMap(machineOf(points));
const rulesOf = (points: TestPoints): readonly string[] =>
  checkProgram(machineOf(points)).map((f) => `${f.rule} ${f.subjects.join(" ")}`);

const COIL = [["coil", "1", "2", { ohm: 10 }]] as const;
const SWITCH = [["contact", "1", "2"]] as const;
const LED = [["led", "1", "2", { amp: 0.03 }]] as const;

describe("points", () => {
  test("low and high drivers, and a bridge", () => {
    const points = mapOf({
      boards: {
        b: [
          ["driver", "j2.1", "j1.2", { amp: 6 }],
          ["driver", "j1.1", "j2.2", { amp: 6 }],
          ["driver", "j1.1", "j2.3"],
          ["driver", "j2.4", "j1.2"],
          ["driver", "j1.1", "j2.4"],
          ["driver", "j2.3", "j1.2"],
        ],
      },
      devices: { low: COIL, high: COIL, m: [["motor", "1", "2", { amp: 1 }]] },
      nets: {
        "48": ["b:j1.1", "low:1"],
        "0": ["b:j1.2", "high:2"],
        l: ["b:j2.1", "low:2"],
        h: ["b:j2.2", "high:1"],
        m1: ["b:j2.3", "m:1"],
        m2: ["b:j2.4", "m:2"],
      },
    });
    expect(short(points, "low")).toEqual(["b:j2.1 driver low"]);
    expect(short(points, "high")).toEqual(["b:j2.2 driver high"]);
    expect(short(points, "m")).toEqual(["b:j2.3 driver both", "b:j2.4 driver both"]);
  });

  test("through a fuse, a contact in series, a resistor and a diode, but not past a neighbour", () => {
    const points = mapOf({
      boards: {
        b: [
          ["fuse", "j1.1", "j1.3"],
          ["driver", "j2.1", "j1.2"],
          ["driver", "j2.2", "j1.2"],
          ["resistor", "j2.3", "j2.2", { ohm: 220 }],
        ],
      },
      devices: { c: [...COIL, ["diode", "2", "1"]], eos: SWITCH, l: LED, d: [["diode", "1", "2"]], l2: LED },
      nets: {
        "48": ["b:j1.1"],
        "0": ["b:j1.2"],
        fused: ["b:j1.3", "c:1", "l:1", "l2:1"],
        between: ["c:2", "eos:1"],
        out: ["eos:2", "b:j2.1"],
        led: ["l:2", "b:j2.3"],
        led2: ["l2:2", "d:1"],
        dio: ["d:2", "b:j2.2"],
      },
    });
    expect(short(points, "c")).toEqual(["b:j2.1 driver low"]);
    expect(short(points, "l")).toEqual(["b:j2.2 driver low"]);
    expect(short(points, "l2")).toEqual(["b:j2.2 driver low"]);
  });

  test("switches at a common are read by their own input, and a matrix has two points", () => {
    const points = mapOf({
      boards: {
        b: [
          ["load", "j1.1", "j1.2", { amp: 0.1 }],
          ["resistor", "j2.8", "j1.2", { ohm: 22 }],
          ["input", "j2.1", "j2.8", { control: "in 1" }],
          ["input", "j2.2", "j2.8", { control: "in 2" }],
        ],
      },
      devices: { s1: SWITCH, s2: [["contact", "1", "2", { normally: "closed" }]] },
      nets: {
        "48": ["b:j1.1"],
        "0": ["b:j1.2"],
        c: ["b:j2.8", "s1:1", "s2:1"],
        a: ["b:j2.1", "s1:2"],
        b: ["b:j2.2", "s2:2"],
      },
    });
    expect(short(points, "s1")).toEqual(["b:j2.1 input low"]);
    expect(points.find((p) => p.deviceId === "s2")).toMatchObject({ control: "in 2", closedAtRest: true });
    const switches = [1, 2, 3, 4].map((i) => ({
      id: `s${i}`,
      x: 100 * i,
      y: 300,
      column: i < 3 ? 1 : 2,
      row: i % 2 === 0 ? 2 : 1,
      number: 40 + i,
    }));
    const matrix = programMap(createMachine(createMatrixTables({ columns: 2, rows: 2, switches })));
    expect(short(matrix, "s4")).toEqual(["mx:j1.2 driver low", "mx:j2.2 input low"]);
    expect(matrix.find((p) => p.deviceId === "s3")?.number).toBe(43);
  });
});

describe("checks", () => {
  const board = (amp: number): TestPoints["boards"] => ({
    b: [
      ["driver", "j2.1", "j1.2", { amp }],
      ["input", "j2.2", "j1.2"],
    ],
  });
  const rails = { "48": ["b:j1.1"], "0": ["b:j1.2"] };

  test("a driver that is too weak: 48 V ÷ 10 Ω = 4.8 A", () => {
    const points = (amp: number): TestPoints => ({
      boards: board(amp),
      devices: { c: COIL },
      nets: { ...rails, "48": ["c:1"], l: ["b:j2.1", "c:2"] },
    });
    expect(rulesOf(points(4.7))).toEqual(["driver-amps b:j2.1 c"]);
    expect(rulesOf(points(4.9))).toEqual([]);
    const solution = { loads: new Map([["c:el.c.0", { amps: { most: 5.2 } }]]) };
    expect(checkProgram(machineOf(points(4.9)), solution as never).map((f) => f.numbers.load_a)).toEqual([
      5.2,
    ]);
  });

  test("a coil on an input, a switch on a driver, and devices that hang on nothing", () => {
    expect(
      rulesOf({
        boards: board(6),
        devices: { c: COIL, s: SWITCH, loose: SWITCH, idle: COIL },
        nets: {
          ...rails,
          "48": ["c:1", "idle:1"],
          "0": ["b:j1.2", "s:2", "loose:2"],
          i: ["b:j2.2", "c:2"],
          d: ["b:j2.1", "s:1"],
        },
      }),
    ).toEqual([
      "device-unread loose loose:el.loose.0",
      "device-undriven idle idle:el.idle.0",
      "load-on-input c b:j2.2",
      "switch-on-driver s b:j2.1",
    ]);
  });

  test("a driver for two coils, but not for a string of lamps", () => {
    const points = (element: typeof COIL | typeof LED): TestPoints => ({
      boards: board(60),
      devices: { x: element, y: element },
      nets: { ...rails, "48": ["x:1", "y:1"], l: ["b:j2.1", "x:2", "y:2"] },
    });
    expect(rulesOf(points(COIL))).toEqual(["driver-shared b:j2.1 x y"]);
    expect(rulesOf(points(LED))).toEqual([]);
  });
});
