import { readBook } from "@pinwright/book/io";
import {
  afterLook,
  FaultModel,
  FaultTable,
  Line,
  LOOK_COSTS,
  LookTable,
  likeliest,
  looksFor,
  machineFunctions,
  rateLooks,
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
  table = new FaultTable(model, suspects);
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

test("what symptoms cannot tell apart a few measurements do, each worth its bits", {
  timeout: 240_000,
}, () => {
  // What happens to one lamp and one switch: wires, contacts, driver, lamp or contact itself.
  const alone = (itemId: string): readonly Suspect[] => {
    const f = model.functions.findIndex((one) => one.itemId === itemId);
    const own = table.classes.find(({ symptoms }) => symptoms.size === 1 && symptoms.get(f) === "dead");
    return (own?.suspects ?? []).flatMap((n) => suspects[n] ?? []);
  };
  for (const itemId of ["lp.spinner", "sw.captive"]) {
    const own = alone(itemId);
    const lookTable = new LookTable(model, own);
    const f = model.functions.findIndex((one) => one.itemId === itemId);
    const looks = looksFor(model, own, [f], [], () => 12).filter(({ kind }) => kind === "ohms");
    expect(own.length, itemId).toBeGreaterThan(4);
    const answers = own.map((_, s) =>
      looks.map((look) => (lookTable.chance(look, s) > 0.5 ? 1 : 0)).join(""),
    );
    const groups = new Map<string, number>();
    const all = own.reduce((sum, { odds }) => sum + odds, 0);
    own.forEach(({ odds }, s) => {
      groups.set(answers[s] ?? "", (groups.get(answers[s] ?? "") ?? 0) + odds / all);
    });
    // No way of asking yes or no needs fewer questions on average than the bits of what is asked (Shannon 1948).
    const bound = [...groups.values()].reduce((sum, p) => sum - p * Math.log2(p), 0);
    const counts = own.map((_, truth) => {
      let weights: readonly number[] = own.map(({ odds }) => odds);
      for (let count = 0; ; count++) {
        const total = weights.reduce((sum, weight) => sum + weight, 0);
        const mass = new Map<string, number>();
        weights.forEach((weight, s) => {
          mass.set(answers[s] ?? "", (mass.get(answers[s] ?? "") ?? 0) + weight / total);
        });
        const [[best, share] = ["", 0]] = [...mass].sort((p, q) => q[1] - p[1]);
        if (share > 0.9) {
          expect(best, own[truth]?.id).toBe(answers[truth]);
          return count;
        }
        const next = rateLooks(lookTable, weights, looks, "bits")[0]?.look;
        if (next === undefined) throw new Error("nothing to measure");
        weights = afterLook(lookTable, weights, next, lookTable.chance(next, truth) > 0.5);
      }
    });
    const mean = counts.reduce((sum, count, s) => sum + (count * (own[s]?.odds ?? 0)) / all, 0);
    expect(mean, itemId).toBeLessThan(1.5 * Math.max(1, bound));
  }
  expect(LOOK_COSTS.volts.danger).toBeGreaterThan(LOOK_COSTS.ohms.danger);
});
