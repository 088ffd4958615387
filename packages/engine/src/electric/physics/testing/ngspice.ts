import { spawnSync } from "node:child_process";

/**
 * Runs a netlist in ngspice and gives the numbers that its commands wrote as `name = value`, by name. Its exit code
 * says nothing: it is not zero when all analyses are started by commands.
 */
export function ngspice(netlist: string): ReadonlyMap<string, number> {
  const { stdout, error } = spawnSync("ngspice", ["-b"], { input: netlist, encoding: "utf8" });
  if (error !== undefined)
    throw new Error("ngspice is not installed: `apt-get install ngspice`, then run this again", {
      cause: error,
    });
  const found = new Map<string, number>();
  for (const [, name = "", value = ""] of stdout.matchAll(/^\s*([a-z0-9_()]+)\s*=\s*([-+0-9.eE]+)/gim))
    found.set(name.toLowerCase(), Number(value));
  return found;
}
