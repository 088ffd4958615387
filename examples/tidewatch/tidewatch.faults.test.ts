import { readBook } from "@pinwright/book/io";
import {
  type FaultFile,
  FaultFinder,
  FaultModel,
  type FaultSession,
  FaultTable,
  faultFileOf,
  Line,
  likeliest,
  machineFunctions,
  Says,
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
let table: FaultTable;
let file: FaultFile;
let all: number;

beforeAll(async () => {
  const { book, shop } = await readBook(import.meta.dirname);
  if (shop === null) throw new Error("Tidewatch has a shop");
  const line = new Line().run(book, shop);
  const { machine, harnesses } = line;
  network = serviceNetwork(
    machine,
    [...harnesses.values()].flatMap(({ wires }) => wires),
  );
  const functions = machineFunctions(machine, network);
  all = functions.length;
  model = new FaultModel(network, functions);
  suspects = suspectsOf(machine, network, model.functions, null);
  table = new FaultTable(model, suspects);
  file = faultFileOf(line, { table: "later" });
}, 240_000);

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

test("a beam whose emitter is dark is as one whose receiver is open, and its receiver alone darkens no emitter", () => {
  for (const beam of ["sn.wreck", "sn.skill"]) {
    const [led, contact] = ["tx", "rx"].map(
      (end) => model.functions.find(({ itemId }) => itemId === `${beam}-${end}`)?.id ?? "",
    );
    const inDark = ids(opened(contact ?? ""));
    expect(inDark).toHaveLength(1);
    expect(ids(opened(led ?? ""))).toEqual([...inDark, `${beam}-tx dead`]);
  }
});

test("all that a person names by number has one, and no two of what is numbered together have the same", () => {
  const together: Record<string, string> = { button: "switch", sensor: "switch", motor: "coil" };
  const items = new Map(file.items.map((item) => [item.id, item]));
  const numbers = [...new Set(model.functions.map(({ itemId }) => itemId))].map((id) => {
    const item = items.get(id);
    const own = item?.class ?? "";
    return item?.number == null ? `${id} has none` : `${together[own] ?? own} ${item.number}`;
  });
  expect(numbers.filter((text) => text.endsWith("has none"))).toEqual([]);
  expect(new Set(numbers).size).toBe(numbers.length);
});

test("a fuse of a coil or lamp board takes what hangs on its own plug, and nothing else", () => {
  const fuses = suspects.filter(({ id }) => /^fuse-open bd\.[^:]*:el\.(?:coil8|lamp16)\./u.test(id));
  expect(fuses.length).toBeGreaterThan(3);
  for (const { id, fault, subjects } of fuses) {
    const fuse = network.joints[network.jointOf.get(subjects[0] ?? "") ?? -1]?.element;
    // The book has the fuse between the board's rail and the first cavity of the plug that it feeds.
    const plug = fuse?.toPointId.replace(/\.\d+$/u, ".") ?? "none";
    const expected = model.functions.flatMap(({ controls }, f) =>
      controls.some((joint) => network.joints[joint]?.element?.fromPointId.startsWith(plug)) ? [f] : [],
    );
    const symptoms = model.symptoms([fault]);
    expect([...symptoms.keys()], id).toEqual(expected);
    expect([...new Set(symptoms.values())], id).toEqual(expected.length > 0 ? ["dead"] : []);
  }
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

test("a motor in a bridge wants both ways; a driver of it that is shorted opens the fuse before it", () => {
  const drivers = suspects.filter(({ id }) => /^driver-(?:open|closed) bd\.motor-bb:/u.test(id));
  expect(drivers.length).toBe(8);
  for (const { id, kind, fault } of drivers) {
    const found = ids(model.symptoms([fault]));
    expect(found, id).toContain("mech.tide-clock/motor dead");
    // Without its motor supply the board is not fed, and reads nothing.
    expect(found.includes("mech.tide-clock/home dead"), id).toBe(kind === "driver-closed");
  }
});

test("a feed in its return's place lets the diodes across the coils open its fuse at the first command", () => {
  const swap = suspects.find(({ id }) => id === "cavities-swapped bd.coil-mid:j6.1 bd.coil-mid:j6.2");
  const found = ids(model.symptoms(swap === undefined ? [] : [swap.fault]));
  expect(found.length).toBeGreaterThan(2);
  expect(found.every((one) => one.endsWith("/coil dead"))).toBe(true);
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
  let first = 0;
  let firstOfWrong = 0;
  const tried = table.classes.filter((_, c) => c % 16 === 2);
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

test("what symptoms cannot tell apart a few looks do, hardly more than their bits demand", {
  timeout: 240_000,
}, () => {
  const finder = new FaultFinder({ file, model, table });
  const says = new Says(model, table);
  for (const itemId of ["lp.spinner", "sw.captive"]) {
    const f = model.functions.findIndex((one) => one.itemId === itemId);
    const own = table.classes.find(({ symptoms }) => symptoms.size === 1 && symptoms.get(f) === "dead");
    if (own === undefined) throw new Error(`nothing makes ${itemId} dead`);
    expect(own.suspects.length, itemId).toBeGreaterThan(4);
    const seen = Object.fromEntries(
      model.functions.map(({ id }, n) => [id, n === f ? ("dead" as const) : ("works" as const)]),
    );
    let mean = 0;
    // No way of asking yes or no needs fewer questions on average than the bits of what is asked (Shannon 1948).
    let bound = 0;
    for (const truth of own.suspects) {
      let session: FaultSession = { seen, done: [] };
      for (;;) {
        const { state, causes, looks } = finder.answer(session);
        const look = state === "looking" ? looks[0]?.look : undefined;
        const first = causes[0]?.parts[0]?.[0]?.suspect ?? -1;
        if (look === undefined && first === truth) break;
        expect(session.done.length).toBeLessThan(20);
        const isYes = look !== undefined && (says.chance(look, [truth]) ?? 0) > 0.5;
        const done =
          look === undefined
            ? ({ what: "mended", suspect: suspects[first]?.id ?? "", helped: false } as const)
            : ({ what: "looked", look, answer: isYes ? "yes" : "no" } as const);
        session = { seen, done: [...session.done, done] };
      }
      const p = (suspects[truth]?.odds ?? 0) / own.odds;
      mean += p * session.done.length;
      bound -= p * Math.log2(p);
    }
    expect(mean, itemId).toBeLessThan(1.5 * Math.max(1, bound));
  }
});
