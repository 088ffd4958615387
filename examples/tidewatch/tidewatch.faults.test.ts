import { readBook } from "@pinwright/book/io";
import {
  FaultModel,
  FaultTable,
  Line,
  likeliest,
  machineFunctions,
  type Seen,
  type ServiceNetwork,
  type Suspect,
  type Symptom,
  serviceNetwork,
  suspectsOf,
} from "@pinwright/engine";
import { beforeAll, expect, test } from "vitest";

let network: ServiceNetwork;
let model: FaultModel;
let suspects: readonly Suspect[];
let all: number;

beforeAll(async () => {
  const { book, shop } = await readBook(import.meta.dirname);
  if (shop === null) throw new Error("Tidewatch has a shop");
  const { machine, harnesses } = new Line().run(book, shop);
  network = serviceNetwork(
    machine,
    [...harnesses.values()].flatMap(({ wires }) => wires),
  );
  const functions = machineFunctions(machine, network);
  all = functions.length;
  model = new FaultModel(network, functions);
  suspects = suspectsOf(machine, network, model.functions, null);
}, 120_000);

const ids = (symptoms: ReadonlyMap<number, Symptom>): readonly string[] =>
  [...symptoms].map(([f, symptom]) => `${model.functions[f]?.itemId} ${symptom}`).sort();
const opened = (id: string) => model.symptoms([{ kind: "open", joint: network.jointOf.get(id) ?? -1 }]);
const closed = (id: string) => model.symptoms([{ kind: "closed", joint: network.jointOf.get(id) ?? -1 }]);

test("everything that Tidewatch drives or reads works in a sound machine", () => {
  expect(all).toBeGreaterThan(280);
  expect(model.functions.length).toBe(all);
  expect(model.symptoms([])).toEqual(new Map());
});

test("the wire to one lamp darkens that lamp alone, its driver shorted lights it all the time", () => {
  const f = model.functions.findIndex(({ itemId }) => itemId === "lp.spinner");
  const control = network.joints[model.functions[f]?.controls[0] ?? -1];
  const wire = network.joints.find(
    ({ kind, id }) => kind === "wire" && id.split("|").includes("lp.spinner:k"),
  );
  expect(ids(opened(wire?.id ?? ""))).toEqual(["lp.spinner dead"]);
  expect(ids(closed(control?.id ?? ""))).toEqual(["lp.spinner on"]);
});

test("a fuse takes what its board feeds through it, and nothing else", () => {
  for (const { id, kind, fault } of suspects) {
    if (kind !== "fuse-open") continue;
    const symptoms = model.symptoms([fault]);
    // Every driven thing behind it hangs on the fuse by the points of the book: none is dead whose supply does not pass it.
    for (const [, symptom] of symptoms) expect(symptom, id).toBe("dead");
  }
  const [, board] = /^fuse-open (bd\.coil[^:]*):/u.exec(
    suspects.find(({ id }) => id.startsWith("fuse-open bd.coil"))?.id ?? "",
  ) ?? ["", ""];
  const first = suspects.find(({ id }) => id.startsWith(`fuse-open ${board}:`));
  const dead = model.symptoms(first === undefined ? [] : [first.fault]);
  expect(dead.size).toBeGreaterThan(0);
  for (const [f] of dead) expect(model.functions[f]?.boardIds).toContain(board);
});

test("two exchanged contacts of a lamp connector mix two lamps up and leave the others alone", () => {
  const swap = suspects.find(
    ({ kind, subjects }) =>
      kind === "cavities-swapped" && subjects.every((point) => /^bd\.lamp-5:j5\.[5-9]$/u.test(point)),
  );
  const symptoms = model.symptoms(swap === undefined ? [] : [swap.fault]);
  expect([...symptoms.values()]).toEqual(["mixed", "mixed"]);
});

test("a shorted coil opens the fuse before it, which takes the coils beside it along", () => {
  const shorted = suspects.filter(({ kind, id }) => kind === "load-shorted" && id.includes("coil-"));
  expect(shorted.length).toBeGreaterThan(10);
  const widths = shorted.map(({ fault }) => model.symptoms([fault]).size);
  expect(Math.min(...widths)).toBeGreaterThan(0);
  expect(Math.max(...widths)).toBeGreaterThan(1);
});

test("one broken strand of the bus silences every board behind it", () => {
  const wires = network.joints.filter(({ kind, id }) => kind === "wire" && id.startsWith("bus."));
  const widths = wires.map(({ id }) => opened(id).size);
  expect(Math.max(...widths)).toBeGreaterThan(40);
  // The last board of a chain is alone behind its wire.
  expect(Math.min(...widths.filter((width) => width > 0))).toBeLessThan(20);
});

test("from full and true symptoms the cause comes first, also with one wrong tick", {
  timeout: 240_000,
}, () => {
  const some = suspects.filter((_, n) => n % 4 === 1);
  const table = new FaultTable(model, some);
  let first = 0;
  let firstOfWrong = 0;
  const tried = table.classes.filter((_, c) => c % 5 === 2);
  for (const { symptoms, suspects: own } of tried) {
    const seen = new Map<number, Seen>(model.functions.map((_, f) => [f, symptoms.get(f) ?? "works"]));
    const isFirst = (): boolean => {
      const [best] = likeliest(table, seen, 5);
      const [c, second] = best?.classes ?? [];
      return second === undefined && table.classes[c ?? -1]?.suspects[0] === own[0];
    };
    if (isFirst()) first++;
    const wrong = [...seen.keys()].find((f) => !symptoms.has(f)) ?? 0;
    seen.set(wrong, "dead");
    if (symptoms.size > 1 ? isFirst() : true) firstOfWrong++;
  }
  expect(tried.length).toBeGreaterThan(60);
  expect(first / tried.length).toBeGreaterThan(0.9);
  expect(firstOfWrong / tried.length).toBeGreaterThan(0.8);
});
