import { join } from "node:path";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { beforeAll, describe, expect, it } from "vitest";
import { Line } from "../../testing/line.ts";
import {
  FaultModel,
  FaultTable,
  likeliest,
  machineFunctions,
  type Suspect,
  serviceNetwork,
  suspectsOf,
} from "../faults/index.ts";
import { type FaultFile, FaultFileOpening, faultFileOf, openFaultFile, readFaultFile } from "./index.ts";

const FOLDER = join(import.meta.dirname, "../../../../../examples/first-light");

let file: FaultFile;
let suspects: readonly Suspect[];
let model: FaultModel;
let table: FaultTable;

beforeAll(async () => {
  const { book, shop } = await readBook(FOLDER);
  const line = new Line().run(book, shop ?? emptyShop(), undefined);
  const network = serviceNetwork(
    line.machine,
    [...line.harnesses.values()].flatMap(({ wires }) => wires),
  );
  model = new FaultModel(network, machineFunctions(line.machine, network));
  suspects = suspectsOf(line.machine, network, model.functions, null);
  table = new FaultTable(model, suspects);
  file = faultFileOf(line, { revision: "B" });
});

/** What a file is after it was shipped. */
const shipped = (): unknown => JSON.parse(JSON.stringify(file));

describe("a fault file", () => {
  it("opens to the network, functions and suspects that it was made from", () => {
    const opened = openFaultFile(readFaultFile(shipped()));
    const { network } = opened.model;
    expect(network.nodes).toEqual(model.network.nodes);
    expect(network.joints.map(({ id, kind, a, b }) => [id, kind, a, b])).toEqual(
      model.network.joints.map(({ id, kind, a, b }) => [id, kind, a, b]),
    );
    expect(network.leads).toEqual(model.network.leads);
    expect(network.sources).toEqual(model.network.sources);
    expect(opened.model.functions).toEqual(model.functions);
    expect(
      opened.table.suspects.map(({ id, kind, fault, subjects }) => ({ id, kind, fault, subjects })),
    ).toEqual(suspects.map(({ id, kind, fault, subjects }) => ({ id, kind, fault, subjects })));
  });

  it("tells the same causes as the machine itself, whether it brings its table or not", () => {
    const own = openFaultFile(readFaultFile(shipped()));
    const worked = openFaultFile({ ...file, classes: null });
    for (const { symptoms } of table.classes.slice(0, 20)) {
      const expected = likeliest(table, symptoms, 5);
      for (const { table: other } of [own, worked]) {
        const found = likeliest(other, symptoms, 5);
        expect(found.map(({ classes }) => classes)).toEqual(expected.map(({ classes }) => classes));
        found.forEach(({ probability }, n) => {
          expect(probability).toBeCloseTo(expected[n]?.probability ?? -1, 4);
        });
      }
    }
  });

  it("opens in steps that tell how far they are", () => {
    const opening = new FaultFileOpening({ ...file, classes: null });
    const seen: number[] = [];
    while (opening.step() === null) seen.push(opening.progress);
    expect(seen.length).toBeGreaterThan(3);
    expect(seen).toEqual(seen.toSorted((p, q) => p - q));
    expect(opening.progress).toBe(1);
  });

  it("names each contact of a plug with its cavity, each wire with number and colour", () => {
    expect(file.revision).toBe("B");
    const plug = file.landings.find(({ grid }) => grid !== null);
    expect(plug?.cells.length).toBeGreaterThan(0);
    expect(plug?.name).toMatch(/^J\d|^$/);
    for (const wire of file.wires) {
      expect(wire.colour).toMatch(/^[A-Z]{2,4}$/);
      expect(wire.number).toBeGreaterThan(0);
    }
  });
});

describe("reading a fault file", () => {
  const broken = (change: (json: Record<string, unknown>) => void): (() => unknown) => {
    const json = shipped() as Record<string, unknown>;
    change(json);
    return () => readFaultFile(json);
  };

  it("says where something is wrong and what was expected", () => {
    expect(() => readFaultFile(null)).toThrow("beginning: expected an object, found null");
    expect(broken((json) => Object.assign(json, { format: 2 }))).toThrow("reads format 1, found 2");
    expect(broken((json) => Object.assign(json, { wires: "none" }))).toThrow(
      'wires: expected a list, found "none"',
    );
    expect(broken((json) => delete json.nodes)).toThrow("nodes");
    expect(broken((json) => Object.assign(json, { messages: [99_999] }))).toThrow(
      `messages[0]: expected the place of one of the ${file.joints.length} joints, found 99999`,
    );
    expect(broken((json) => Object.assign(json, { joints: [["q", 0, 0, 0, 1]] }))).toThrow(
      'joints[0][0]: expected w or c or e, found "q"',
    );
    expect(broken((json) => Object.assign(json, { odds: [] }))).toThrow("one a suspect");
  });
});
