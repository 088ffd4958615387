import { COMMANDS } from "./index.ts";
import { run } from "./run.ts";

process.exitCode = await run(COMMANDS, process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  screen: process.stderr.isTTY,
});
