import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Netlist, RAW_FILE } from "./netlist.ts";

/** Why the tests against ngspice cannot run; null when they can. */
export const NGSPICE_MISSING: string | null =
  spawnSync("ngspice", ["-v"]).error === undefined
    ? null
    : "ngspice is not installed: `apt-get install ngspice`, then run this again";

/** Volts of every node of a netlist's operating point as Debian's ngspice finds them, by the node's id. */
export function simulate({ text, nameOf }: Netlist): ReadonlyMap<string, number> {
  const folder = mkdtempSync(join(tmpdir(), "pinwright-ngspice-"));
  try {
    writeFileSync(join(folder, "circuit.cir"), text);
    const { stdout, stderr } = spawnSync("ngspice", ["-b", "circuit.cir"], { cwd: folder, encoding: "utf8" });
    const raw = existsSync(join(folder, RAW_FILE)) ? readFileSync(join(folder, RAW_FILE), "utf8") : "";
    const byName = rawVolts(raw);
    if (byName === null) throw new Error(`ngspice found no operating point:\n${stdout}\n${stderr}`);
    return new Map(
      [...nameOf].map(([node, name]) => [node, name === "0" ? 0 : (byName.get(name) ?? Number.NaN)]),
    );
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Volts by node name from a raw file in text form: a list of variables, then one value for each. */
function rawVolts(text: string): ReadonlyMap<string, number> | null {
  const variables = text.indexOf("Variables:");
  const values = text.indexOf("Values:");
  if (variables < 0 || values < 0) return null;
  const names = [...text.slice(variables, values).matchAll(/^\s*\d+\s+(\S+)\s+\S+/gm)].map(
    ([, name = ""]) => name,
  );
  const numbers = text
    .slice(values + "Values:".length)
    .trim()
    .split(/\s+/)
    .slice(1)
    .map(Number);
  return new Map(names.map((name, n) => [name.replace(/^v\((.*)\)$/, "$1"), numbers[n] ?? Number.NaN]));
}
