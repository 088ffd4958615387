import { readFileSync } from "node:fs";

/** Whether this goes before other work on the machine: the policy in Linux's `/proc/self/stat`, field 41 (proc(5)). */
export function goesFirst(): boolean {
  if (process.platform !== "linux") return false;
  const fields = readFileSync("/proc/self/stat", "utf8")
    .replace(/^.*\) /s, "")
    .split(" ");
  // The fields before the third, which stands first here, are the id and the name. 1 and 2: FIFO and round-robin.
  return ["1", "2"].includes(fields[41 - 3] ?? "0");
}
