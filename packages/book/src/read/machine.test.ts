import { expect, test } from "vitest";
import { filesOf, readBookFiles } from "../csv/files.ts";
import { FaultLog } from "../fault-log.ts";
import { machineSchema } from "../machine.ts";
import { MACHINE_TEXTS, readMachine } from "./machine.ts";

const good = { format: 1, id: "tide.one", label: "Tide", revision: "A", date: "2026-03-31" };

function read(raw: unknown) {
  const log = new FaultLog();
  return { machine: readMachine(raw, "machine.json", log), faults: log.list() };
}

test("keys that may be left out have their defaults", () => {
  expect(read(good)).toEqual({ machine: machineSchema.parse(good), faults: [] });
});

test("every key that is wrong is named, and the others count", () => {
  const { machine, faults } = read({
    ...good,
    id: "Tide One",
    date: "31.3.2026",
    slope_deg: 45,
    languages: ["fr"],
    colour: "red",
  });
  expect(faults.map((f) => [f.code, f.column, f.value])).toEqual([
    ["machine-json", "colour", "colour"],
    ["machine-json", "id", "Tide One"],
    ["machine-json", "date", "31.3.2026"],
    ["machine-json", "languages", '["fr"]'],
    ["machine-json", "slope_deg", "45"],
  ]);
  expect(machine).toMatchObject({ label: "Tide", revision: "A", slope_deg: 6.5, languages: ["en"] });
});

test("a missing key and a misspelt one are named", () => {
  const { label, ...rest } = good;
  expect(read({ ...rest, lable: label }).faults).toMatchObject([
    { column: "lable", nearest: "label" },
    { column: "label", value: null, expected: expect.stringContaining("`label`") },
  ]);
});

test.each([null, [], "text", 1])("%j is no machine", (raw) => {
  expect(read(raw).faults).toMatchObject([{ code: "machine-json" }]);
});

test("JSON that is malformed, and no file at all, are named", () => {
  expect(readBookFiles(filesOf(new Map([["machine.json", "{"]]))).faults).toMatchObject([
    { code: "machine-json", file: "machine.json" },
  ]);
  expect(readBookFiles(filesOf(new Map())).faults).toMatchObject([
    { code: "file-missing", file: "machine.json" },
  ]);
});

test("every key is documented", () => {
  expect(Object.keys(MACHINE_TEXTS).sort()).toEqual(Object.keys(machineSchema.shape).sort());
});
