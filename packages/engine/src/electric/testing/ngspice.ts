import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Netlist, OPEN_OHM, RAW_FILE } from "./netlist.ts";

/** Why the tests against ngspice cannot run; null when they can. */
export const NGSPICE_MISSING: string | null =
  spawnSync("ngspice", ["-v"]).error === undefined
    ? null
    : "ngspice is not installed: `apt-get install ngspice`, then run this again";

/** Volts of nodes, by their id. */
export interface NodeVolts {
  /** Undefined: there is no such node. */
  get(node: string): number | undefined;
}

/** Volts of every node of a netlist's operating point as Debian's ngspice finds them, by the node's id. */
export function simulate(netlist: Netlist): ReadonlyMap<string, number> {
  const [volts] = run(netlist, netlist.text, [RAW_FILE]);
  if (volts === undefined) throw new Error("ngspice wrote no result");
  return new Map([...netlist.nameOf.keys()].map((node) => [node, volts.get(node) ?? Number.NaN]));
}

/**
 * The same for several ways of switching one netlist, in one run of ngspice.
 * @param turns elements that are closed each time; everything else that can be switched is open
 */
export function simulateTurns(netlist: Netlist, turns: readonly ReadonlySet<string>[]): readonly NodeVolts[] {
  const [head = ""] = netlist.text.split("\nop\n");
  let closed: ReadonlySet<string> | null = null;
  const commands = turns.flatMap((turn, n) => {
    const changed = [...netlist.switchOf].filter(
      ([id]) => closed === null || closed.has(id) !== turn.has(id),
    );
    closed = turn;
    return [
      ...changed.map(
        ([id, { name, closedOhm }]) =>
          `alter ${name} = ${turn.has(id) ? Math.max(1e-6, closedOhm) : OPEN_OHM}`,
      ),
      "op",
      `write ${n}.raw all`,
      "destroy all",
    ];
  });
  const text = [head, ...commands, ".endc", ".end", ""].join("\n");
  return run(
    netlist,
    text,
    turns.map((_, n) => `${n}.raw`),
  );
}

function run({ nameOf }: Netlist, text: string, files: readonly string[]): readonly NodeVolts[] {
  const folder = mkdtempSync(join(tmpdir(), "pinwright-ngspice-"));
  try {
    writeFileSync(join(folder, "circuit.cir"), text);
    const { stdout, stderr } = spawnSync("ngspice", ["-b", "circuit.cir"], { cwd: folder, encoding: "utf8" });
    let names: ReadonlyMap<string, number> | null = null;
    return files.map((file): NodeVolts => {
      const raw = existsSync(join(folder, file)) ? readFileSync(join(folder, file), "utf8") : "";
      const own = names ?? rawNames(raw);
      names = own;
      const volts = rawValues(raw);
      if (own === null || volts === null)
        throw new Error(`ngspice found no operating point:\n${stdout}\n${stderr}`);
      return {
        get: (node) => {
          const name = nameOf.get(node);
          if (name === undefined) return undefined;
          return name === "0" ? 0 : (volts[own.get(name) ?? -1] ?? Number.NaN);
        },
      };
    });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Place of each node among the values of a raw file in text form; null: it lists none. */
function rawNames(text: string): ReadonlyMap<string, number> | null {
  const variables = text.indexOf("Variables:");
  const values = text.indexOf("Values:");
  if (variables < 0 || values < 0) return null;
  const names = [...text.slice(variables, values).matchAll(/^\s*\d+\s+(\S+)\s+\S+/gm)];
  return new Map(names.map(([, name = ""], n) => [name.replace(/^v\((.*)\)$/, "$1"), n]));
}

/** Values of a raw file in text form, one for each of its variables; null: there are none. */
function rawValues(text: string): Float64Array | null {
  const values = text.indexOf("Values:");
  if (values < 0) return null;
  return Float64Array.from(
    text
      .slice(values + "Values:".length)
      .trim()
      .split(/\s+/)
      .slice(1),
    Number,
  );
}
