import { execFile, spawnSync } from "node:child_process";
import { rmSync } from "node:fs";
import { mkdtemp, readdir, rm } from "node:fs/promises";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import pg from "pg";

const run = promisify(execFile);

/** Where Debian's packages put the programs of each version. */
const VERSIONS = "/usr/lib/postgresql";
const USER = "pinwright";
const HOST = "127.0.0.1";

/** A PostgreSQL server that lives as long as its tests. */
export interface Postgres {
  /** Address of a place with no tables yet: a schema of its own, which is made quicker than a database. */
  newPlace(): Promise<string>;
  /** Bytes of all places on the disk. */
  bytes(): Promise<number>;
  /** Stops it like a pulled plug, its processes killed in the middle of whatever they do, and starts it again. */
  crash(): Promise<void>;
  /** Stops it and removes what it kept. */
  stop(): Promise<void>;
}

/**
 * Starts a throwaway server from Debian's binaries on a free loopback port; as user `postgres` when this process is
 * root, since PostgreSQL refuses to run as root. `durable` keeps it waiting for the disk at each commit, which tests
 * of anything else than durability need not do.
 */
export async function startPostgres({ durable }: { readonly durable: boolean }): Promise<Postgres> {
  const bin = await binaries();
  const folder = await mkdtemp(join(tmpdir(), "pinwright-postgres-"));
  const asPostgres = (program: string, args: readonly string[]): readonly [string, string[]] =>
    process.getuid?.() === 0
      ? ["runuser", ["-u", "postgres", "--", join(bin, program), ...args]]
      : [join(bin, program), [...args]];
  const call = (program: string, ...args: readonly string[]) => run(...asPostgres(program, args));
  const data = join(folder, "data");
  const port = await freePort();
  const settings = [
    `-p ${port} -k ${folder} -c listen_addresses=${HOST}`,
    durable ? "" : "-c fsync=off -c synchronous_commit=off -c full_page_writes=off",
  ].join(" ");
  const start = () => call("pg_ctl", "-D", data, "-w", "-l", join(folder, "log"), "-o", settings, "start");
  const halt = asPostgres("pg_ctl", ["-D", data, "-w", "-m", "immediate", "stop"]);
  const remove = () => {
    spawnSync(...halt);
    rmSync(folder, { recursive: true, force: true });
  };

  // From here on, so that nothing is left of a start that took its caller too long either.
  process.once("exit", remove);
  // Without an end of one's own, nothing is called when the process is asked to end.
  process.once("SIGINT", interrupted);
  process.once("SIGTERM", interrupted);
  if (process.getuid?.() === 0) await run("chown", ["postgres", folder]);
  await call("initdb", "-D", data, "-A", "trust", "-U", USER, "--no-sync", "-E", "UTF8", "--locale=C.UTF-8");
  await start();
  let places = 0;
  const address = `postgres://${USER}@${HOST}:${port}/postgres`;
  return {
    async newPlace() {
      places += 1;
      const client = new pg.Client(address);
      await client.connect();
      await client.query(`create schema place_${places}`);
      await client.end();
      return `${address}?options=${encodeURIComponent(`-c search_path=place_${places}`)}`;
    },
    async bytes() {
      const client = new pg.Client(address);
      await client.connect();
      const { rows } = await client.query<{ bytes: string }>(
        "select pg_database_size(current_database()) as bytes",
      );
      await client.end();
      return Number(rows[0]?.bytes ?? 0);
    },
    async crash() {
      await run(...halt);
      await start();
    },
    async stop() {
      process.off("exit", remove);
      process.off("SIGINT", interrupted);
      process.off("SIGTERM", interrupted);
      await run(...halt);
      await rm(folder, { recursive: true, force: true });
    },
  };
}

const interrupted = (): never => process.exit(1);

/** Folder of the newest version's programs. */
async function binaries(): Promise<string> {
  const versions = await readdir(VERSIONS).catch(() => []);
  const newest = versions
    .map(Number)
    .filter(Number.isFinite)
    .sort((a, b) => b - a)[0];
  if (newest === undefined) {
    throw new Error(
      `PostgreSQL is not installed: ${VERSIONS} is empty. The tests of the store need its programs (Debian: apt install postgresql).`,
    );
  }
  return join(VERSIONS, String(newest), "bin");
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", reject);
    server.listen(0, HOST, () => {
      const address = server.address();
      server.close(() =>
        address !== null && typeof address === "object"
          ? resolve(address.port)
          : reject(new Error("no port was given")),
      );
    });
  });
}
