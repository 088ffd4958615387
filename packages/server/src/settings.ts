import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import type { StorePlace } from "@pinwright/store";

/** A wrong call, told with how it is right. */
export class WrongCall extends Error {}

export const USAGE = `pinwright-server [serve]        serve the app (what is done without a command)
pinwright-server backup FILE    write everything that is kept into one file
pinwright-server restore FILE   put a back-up into a store that is empty
pinwright-server records …      sheets of the floor's records, and whether they are what was written; records --help

  --data DIR              folder of the store and its keys; else ./data
  --store PLACE           postgres://user@host/name, or a SQLite file; else pinwright.sqlite in the data folder
  --port PORT             port of this computer; else 4180
  --network-port PORT     port of the network, once there are accounts; else 4181
  --certificate FILE      the owner's certificate for the network, with its chain, as PEM …
  --key FILE              … and its key; else Pinwright makes its own
  --web DIR               folder of the built app; else the one that comes with the program
  --open                  open the browser, if there is a screen

Instead of options: PINWRIGHT_DATA, PINWRIGHT_STORE, PINWRIGHT_PORT, PINWRIGHT_NETWORK_PORT, PINWRIGHT_CERTIFICATE,
PINWRIGHT_KEY, PINWRIGHT_WEB.
`;

/** What the server was told to do. */
export interface Settings {
  readonly command: "serve" | "backup" | "restore";
  /** File of the command. */
  readonly file: string;
  readonly data: string;
  readonly place: StorePlace;
  readonly port: number;
  readonly networkPort: number;
  readonly certificate: { readonly certificateFile: string; readonly keyFile: string } | null;
  /** Folder of the built app; null: the one that comes with the program. */
  readonly web: string | null;
  readonly open: boolean;
  readonly help: boolean;
}

const OPTIONS = {
  data: { type: "string" },
  store: { type: "string" },
  port: { type: "string" },
  "network-port": { type: "string" },
  certificate: { type: "string" },
  key: { type: "string" },
  web: { type: "string" },
  open: { type: "boolean" },
  help: { type: "boolean" },
} as const;

function portOf(name: string, text: string): number {
  const port = Number(text);
  if (!/^\d{1,5}$/.test(text) || port > 65_535)
    throw new WrongCall(`${name} ${text}: expected a number up to 65535`);
  return port;
}

/** Where a store is, from what was said of it. @throws WrongCall */
export function placeOf(text: string | undefined, data: string): StorePlace {
  if (text === undefined) return { kind: "sqlite", file: join(data, "pinwright.sqlite") };
  if (/^postgres(ql)?:\/\//i.test(text)) return { kind: "postgres", url: text };
  if (/^[a-z][a-z0-9+.-]+:\/\//i.test(text))
    throw new WrongCall(`--store ${text.split(":")[0]}: expected postgres:// or a file`);
  return { kind: "sqlite", file: resolve(text) };
}

function commandOf([command = "serve", file, ...rest]: readonly string[]): Pick<
  Settings,
  "command" | "file"
> {
  if (command === "serve" && file === undefined) return { command, file: "" };
  if ((command === "backup" || command === "restore") && file !== undefined && rest.length === 0)
    return { command, file: resolve(file) };
  throw new WrongCall(
    `${[command, file ?? "", ...rest].join(" ").trim()}: expected serve, backup FILE or restore FILE`,
  );
}

function parsed(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true, strict: true });
  } catch (error) {
    throw new WrongCall(error instanceof Error ? error.message : String(error));
  }
}

/** Reads the command line and the environment. @throws WrongCall */
export function settingsOf(
  args: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
): Settings {
  const { values, positionals } = parsed(args);
  const given = (option: string | undefined, name: string): string | undefined =>
    option ?? (env[name] || undefined);
  const data = resolve(given(values.data, "PINWRIGHT_DATA") ?? "data");
  const certificateFile = given(values.certificate, "PINWRIGHT_CERTIFICATE");
  const keyFile = given(values.key, "PINWRIGHT_KEY");
  const web = given(values.web, "PINWRIGHT_WEB");
  if ((certificateFile === undefined) !== (keyFile === undefined))
    throw new WrongCall("--certificate and --key go together");
  return {
    ...commandOf(positionals),
    data,
    place: placeOf(given(values.store, "PINWRIGHT_STORE"), data),
    port: portOf("--port", given(values.port, "PINWRIGHT_PORT") ?? "4180"),
    networkPort: portOf("--network-port", given(values["network-port"], "PINWRIGHT_NETWORK_PORT") ?? "4181"),
    certificate: certificateFile === undefined || keyFile === undefined ? null : { certificateFile, keyFile },
    web: web === undefined ? null : resolve(web),
    open: values.open ?? false,
    help: values.help ?? false,
  };
}
