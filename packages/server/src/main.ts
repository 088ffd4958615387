/**
 * The server as a program: `tsx packages/server/src/main.ts [serve | backup FILE | restore FILE | records …] [options]`;
 * `--help` lists the options.
 */
import { mkdir } from "node:fs/promises";
import { openStore, restoreBackUp, StoreError } from "@pinwright/store";
import about from "../package.json" with { type: "json" };
import { RECORDS_USAGE } from "./command/records-call.ts";
import { recordsCommand } from "./command/records-command.ts";
import { openBrowser } from "./open-browser.ts";
import { STORE_OPTIONS, serve } from "./serve.ts";
import { type Settings, settingsOf, USAGE, WrongCall } from "./settings.ts";

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const complain = (line: string): void => void process.stderr.write(`pinwright-server: ${line}\n`);
const log = (line: string): void => void process.stderr.write(`${new Date().toISOString()} ${line}\n`);

async function backUp({ data, place, file }: Settings): Promise<void> {
  await mkdir(data, { recursive: true, mode: 0o700 });
  const store = await openStore(place, STORE_OPTIONS);
  try {
    await store.backUp(file);
  } finally {
    await store.close();
  }
  say(`Everything that is kept is now also in ${file}`);
}

async function restore({ data, place, file }: Settings): Promise<void> {
  await mkdir(data, { recursive: true, mode: 0o700 });
  const store = await restoreBackUp(file, place, STORE_OPTIONS);
  await store.close();
  say(`Everything that was in ${file} is kept again. Everyone signs in anew.`);
}

async function run(settings: Settings): Promise<void> {
  if (settings.command === "backup") return backUp(settings);
  if (settings.command === "restore") return restore(settings);
  const running = await serve(settings, about.version, log);
  say(`Pinwright is open at ${running.address}`);
  if (settings.open) openBrowser(running.address);
  const stop = (): void => {
    running.close().then(
      () => process.exit(0),
      (error: unknown) => {
        log(String(error));
        process.exit(3);
      },
    );
  };
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
}

const isBusyPort = (error: unknown): boolean =>
  error instanceof Error && "code" in error && error.code === "EADDRINUSE";

const [command, ...args] = process.argv.slice(2);
const isOfRecords = command === "records";
try {
  if (isOfRecords) process.exitCode = await recordsCommand(args, process.env, say, complain);
  else {
    const settings = settingsOf(process.argv.slice(2), process.env);
    if (settings.help) say(USAGE);
    else await run(settings);
  }
} catch (error) {
  if (error instanceof WrongCall)
    process.stderr.write(`pinwright-server: ${error.message}\n\n${isOfRecords ? RECORDS_USAGE : USAGE}`);
  else if (isBusyPort(error))
    process.stderr.write(
      "pinwright-server: the port is in use. Is Pinwright open already? Choose another with --port.\n",
    );
  else if (error instanceof StoreError) process.stderr.write(`pinwright-server: ${error.message}\n`);
  else log(error instanceof Error ? (error.stack ?? error.message) : String(error));
  process.exitCode = error instanceof WrongCall ? 2 : 3;
}
