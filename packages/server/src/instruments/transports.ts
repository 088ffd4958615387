import { execFile } from "node:child_process";
import { close, constants, fstat, open } from "node:fs";
import { type Socket as NetSocket, Socket } from "node:net";
import { isatty, ReadStream } from "node:tty";
import { promisify } from "node:util";
import { InstrumentError } from "./instrument-error.ts";

/** Bytes in both directions. */
export type Wire = NetSocket;

/** Where an instrument is. */
export type InstrumentAddress =
  | { readonly kind: "tcp"; readonly host: string; readonly port: number }
  | {
      readonly kind: "serial";
      /** Device file. */
      readonly path: string;
      /** Bits per second; null: as the port is set. */
      readonly baud: number | null;
    };

/**
 * Opens the way to an instrument.
 * @throws InstrumentError `not-reached`
 */
export const openWire = (address: InstrumentAddress, timeoutMs: number): Promise<Wire> =>
  address.kind === "tcp"
    ? openTcp(address.host, address.port, timeoutMs)
    : openSerial(address.path, address.baud);

function openTcp(host: string, port: number, timeoutMs: number): Promise<Wire> {
  return new Promise((resolve, reject) => {
    const socket = new Socket();
    const fail = (says: string): void => {
      clearTimeout(timer);
      socket.destroy();
      reject(new InstrumentError("not-reached", `${host}:${port}`, says));
    };
    const timer = setTimeout(() => fail("no connection in time"), timeoutMs);
    socket.setNoDelay(true);
    socket.once("error", (error) => fail(error.message));
    socket.connect(port, host, () => {
      clearTimeout(timer);
      resolve(socket);
    });
  });
}

/**
 * Opens a device file. A terminal is set to plain bytes, eight bits without parity, at the baud given, with `stty` where
 * the system has it; without it the port is used as it is set.
 */
async function openSerial(path: string, baud: number | null): Promise<Wire> {
  let fd: number | null = null;
  try {
    // NOCTTY: the port must not become the terminal of the server; NONBLOCK: it may wait for a carrier otherwise.
    fd = await openFile(path, constants.O_RDWR | constants.O_NOCTTY | constants.O_NONBLOCK);
    const file = await statFile(fd);
    // What is asked is written: an ordinary file that the address names by mistake would be spoilt.
    if (!file.isCharacterDevice() && !file.isFIFO()) throw new Error("this is no device file");
    if (!isatty(fd)) return new Socket({ fd, readable: true, writable: true });
    await setPort(path, baud);
    return new ReadStream(fd);
  } catch (error) {
    if (fd !== null) close(fd);
    throw new InstrumentError("not-reached", path, error instanceof Error ? error.message : "");
  }
}

/** A file as its bare number: the stream that takes it over closes it. */
const openFile = promisify(open);
const statFile = promisify(fstat);

/** Longest wait for the settings of a port, ms. */
const STTY_MS = 3000;

/** Settings of the port. An unknown baud is refused by `stty`; a system without `stty` keeps what is set. */
function setPort(path: string, baud: number | null): Promise<void> {
  const settings = ["raw", "-echo", "cs8", "-parenb", "-cstopb", "clocal"];
  return new Promise((resolve, reject) => {
    const given = baud === null ? [] : [String(baud)];
    // GNU's takes the port behind -F, that of the BSDs behind -f.
    const named = process.platform === "linux" ? "-F" : "-f";
    execFile("stty", [named, path, ...given, ...settings], { timeout: STTY_MS }, (error) => {
      if (error === null || ("code" in error && error.code === "ENOENT")) resolve();
      else reject(error);
    });
  });
}
