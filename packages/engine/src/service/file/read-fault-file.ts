import { SUSPECT_KINDS, SYMPTOMS } from "../faults/index.ts";
import { FAULT_FILE_FORMAT, type FaultFile } from "./fault-file.ts";

/** A fault file that cannot be used: where in it, and what was expected. */
export class FaultFileError extends Error {
  readonly where: string;

  constructor(where: string, what: string) {
    super(`Fault file, ${where}: ${what}`);
    this.name = "FaultFileError";
    this.where = where;
  }
}

type Check = (value: unknown, where: string) => void;

function fail(where: string, expected: string, found: unknown): never {
  const shown = found === undefined ? "nothing" : (JSON.stringify(found)?.slice(0, 60) ?? String(found));
  throw new FaultFileError(where, `expected ${expected}, found ${shown}.`);
}

const text: Check = (value, where) => {
  if (typeof value !== "string") fail(where, "a text", value);
};
const number: Check = (value, where) => {
  if (typeof value !== "number" || !Number.isFinite(value)) fail(where, "a number", value);
};
const flag: Check = (value, where) => {
  if (typeof value !== "boolean") fail(where, "true or false", value);
};
/** A place in another list of the file. */
const indexOf =
  (list: string, length: number, least = 0): Check =>
  (value, where) => {
    if (!Number.isInteger(value) || Number(value) < least || Number(value) >= length)
      fail(where, `the place of one of the ${length} ${list}`, value);
  };
const oneOf =
  (...values: readonly unknown[]): Check =>
  (value, where) => {
    if (!values.includes(value)) fail(where, values.map((v) => JSON.stringify(v)).join(" or "), value);
  };
const maybe =
  (check: Check): Check =>
  (value, where) => {
    if (value !== null) check(value, where);
  };
const optional =
  (check: Check): Check =>
  (value, where) => {
    if (value !== undefined) check(value, where);
  };
const list =
  (check: Check): Check =>
  (value, where) => {
    if (!Array.isArray(value)) fail(where, "a list", value);
    for (const [n, one] of value.entries()) check(one, `${where}[${n}]`);
  };
const tuple =
  (...checks: readonly Check[]): Check =>
  (value, where) => {
    if (!Array.isArray(value) || value.length !== checks.length)
      fail(where, `${checks.length} values`, value);
    for (const [n, check] of checks.entries()) check(value[n], `${where}[${n}]`);
  };
const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const record =
  (checks: Readonly<Record<string, Check>>): Check =>
  (value, where) => {
    if (!isRecord(value)) fail(where, "an object", value);
    for (const [name, check] of Object.entries(checks))
      check(value[name], where === "" ? name : `${where}.${name}`);
  };

const labels = tuple(text, text);
const point = tuple(number, number);

/** Checks of every list; those of lists that are pointed into need to know how long these are. */
function checks(lengthOf: (list: string) => number): Readonly<Record<string, Check>> {
  const to = (name: string): Check => indexOf(name, lengthOf(name));
  const [node, joint, item] = [to("nodes"), to("joints"), to("items")];
  const leads = oneOf(0, 1);
  const ofJoint: Readonly<Record<string, Check>> = {
    w: tuple(text, node, node, to("wires"), leads),
    c: tuple(text, node, node, to("points"), leads),
    e: tuple(text, node, node, to("elements"), leads, item),
  };
  const ofSuspect: Readonly<Record<string, Check>> = {
    o: tuple(text, text, joint, number),
    c: tuple(text, text, joint, number),
    s: tuple(text, text, node, node),
    w: tuple(text, text, joint, joint),
    d: tuple(text, text, item, number),
    m: tuple(text, text, joint, oneOf(0, 1)),
  };
  /** Tuples of several shapes, told apart by one of their values. */
  const shapes =
    (shapesOf: Readonly<Record<string, Check>>, at: number): Check =>
    (value, where) => {
      const key: unknown = Array.isArray(value) ? value[at] : undefined;
      const check = typeof key === "string" ? shapesOf[key] : undefined;
      if (check === undefined) fail(`${where}[${at}]`, Object.keys(shapesOf).join(" or "), key);
      check(value, where);
    };
  const kinds: Check = (value, where) =>
    oneOf(...SUSPECT_KINDS)(Array.isArray(value) ? value[0] : value, `${where}[0]`);
  return {
    machine: record({ id: text, labels }),
    revision: maybe(text),
    options: list(text),
    panels: list(record({ id: text, labels, outline: list(number) })),
    items: list(
      record({
        id: text,
        kind: oneOf("device", "board", "mechanism", "inline", "fastener"),
        labels,
        number: maybe(number),
        class: optional(text),
        type: labels,
        panel: indexOf("panels", lengthOf("panels"), -1),
        side: oneOf("top", "under"),
        at: point,
        outline: list(number),
      }),
    ),
    landings: list(
      record({
        id: text,
        item,
        name: text,
        label: text,
        half: maybe(oneOf("a", "b")),
        grid: maybe(point),
        cells: list(point),
        keys: list(number),
        at: point,
      }),
    ),
    points: list(record({ id: text, landing: to("landings"), pin: maybe(number), label: text })),
    harnesses: list(record({ id: text, number, labels })),
    wires: list(
      record({ id: text, harness: to("harnesses"), number, colour: text, type: labels, net: labels }),
    ),
    elements: list(
      record({
        id: text,
        kind: text,
        control: text,
        normally: oneOf("open", "closed"),
        of: oneOf("board", "device", "mechanism"),
        type: text,
        from: text,
        to: text,
        ohm: maybe(number),
        volt: maybe(number),
        amp: maybe(number),
      }),
    ),
    nodes: list(text),
    joints: list(shapes(ofJoint, 0)),
    sources: list(
      record({
        id: text,
        item,
        plus: node,
        minus: node,
        labels,
        volts: number,
        storedJ: number,
        isMains: flag,
      }),
    ),
    fuses: list(record({ joint, labels, ratedA: number, size: text })),
    messages: list(joint),
    mains: list(node),
    functions: list(
      record({
        id: text,
        item,
        kind: oneOf("driven", "read"),
        joint,
        controls: list(joint),
        signals: list(node),
        between: list(joint),
        boards: list(item),
        commands: list(tuple(node, node)),
        light: optional(joint),
      }),
    ),
    suspects: list((value, where) => {
      kinds(value, where);
      shapes(ofSuspect, 1)(value, where);
    }),
    odds: list(number),
    classes: maybe(
      list(tuple(list(to("suspects")), list(tuple(to("functions"), oneOf(...SYMPTOMS.slice(1)))))),
    ),
  };
}

/**
 * Reads a fault file that was parsed from JSON.
 * @throws FaultFileError where something is missing or of another kind, with where and what was expected
 */
export function readFaultFile(json: unknown): FaultFile {
  if (!isRecord(json)) fail("beginning", "an object", json);
  if (json.format !== FAULT_FILE_FORMAT)
    throw new FaultFileError(
      "format",
      `this program reads format ${FAULT_FILE_FORMAT}, found ${JSON.stringify(json.format) ?? "nothing"}.`,
    );
  const lengthOf = (name: string): number => {
    const value = json[name];
    return Array.isArray(value) ? value.length : 0;
  };
  record(checks(lengthOf))(json, "");
  if (lengthOf("odds") !== lengthOf("suspects"))
    fail("odds", `${lengthOf("suspects")} numbers, one a suspect`, lengthOf("odds"));
  assertChecked(json);
  return json;
}

/** Every list was checked above; this only tells the compiler. */
function assertChecked(_json: unknown): asserts _json is FaultFile {}
