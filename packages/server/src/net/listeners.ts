import { createServer as createHttp, type RequestListener, type Server } from "node:http";
import { createServer as createHttps, type Server as SecureServer } from "node:https";
import { createServer as createNet, type Server as NetServer, type Socket } from "node:net";
import { getRequestListener } from "@hono/node-server";
import type { Reach } from "../deps.ts";
import { type Place, plainAddress } from "../http/place.ts";
import { problemResponse } from "../http/problem.ts";
import type { Certificate } from "./authority.ts";
import { inUrl, type OwnNames, ownNames } from "./names.ts";

const SECOND_MS = 1000;
/** How often it is looked whether the certificate ends soon or the computer has other names. */
const LOOK_MS = 60 * SECOND_MS;
/** A connection that says nothing this long is given up. */
const FIRST_BYTE_MS = 10 * SECOND_MS;
/** Connections that are open at once. */
const CONNECTIONS = 1000;
/** First byte of every TLS connection: a record of a handshake (RFC 8446, 5.1). */
const TLS_HANDSHAKE = 0x16;
/** Lines of headers, and a whole request, must have come within this time. */
const TIMES = {
  headersTimeout: 15 * SECOND_MS,
  requestTimeout: 120 * SECOND_MS,
  keepAliveTimeout: 30 * SECOND_MS,
};

export interface ListenerOptions {
  /** Port of HTTP on this computer; 0: any that is free. */
  readonly port: number;
  /** Port of HTTPS on the network; 0: any that is free. */
  readonly networkPort: number;
  /** Folder of keys. */
  readonly folder: string;
  /** The owner's own certificate; null: one of the authority of our own. */
  readonly certificate: Certificate | null;
  readonly now: () => number;
  readonly log: (line: string) => void;
}

type Fetch = (request: Request, place: Place) => Response | Promise<Response>;

/** Turns what Node receives into requests, with where they came from. */
const listenerOf = (fetch: Fetch, secure: boolean): RequestListener =>
  getRequestListener(
    (request, { incoming }) =>
      fetch(request, { address: plainAddress(incoming.socket.remoteAddress ?? ""), secure }),
    { overrideGlobalObjects: false },
  );

const portOf = (server: NetServer): number => {
  const address = server.address();
  return typeof address === "object" && address !== null ? address.port : 0;
};

const listen = (server: NetServer, port: number, host: string): Promise<number> =>
  new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, host, () => {
      server.off("error", reject);
      resolve(portOf(server));
    });
  });

const close = (server: NetServer): Promise<void> => new Promise((resolve) => server.close(() => resolve()));

/**
 * The sockets: HTTP for this computer alone from the start; HTTPS for the network once there are accounts. On the
 * network's port plain HTTP gets nothing but the page that helps a tablet to trust this server, and the way to HTTPS.
 */
export class Listeners implements Reach {
  readonly #options: ListenerOptions;
  #fetch: Fetch = () =>
    problemResponse(
      { code: "busy", message: "Pinwright is starting. Try again in a moment." },
      { "retry-after": "1" },
    );
  #local: Server | null = null;
  #network: { readonly door: NetServer; readonly secure: SecureServer; readonly plain: Server } | null = null;
  readonly #sockets = new Set<Socket>();
  #names: OwnNames = ownNames();
  #authority: Certificate | null = null;
  #timer: NodeJS.Timeout | null = null;
  #opening: Promise<void> | null = null;
  /** Asked at every request, so it is made only when something of it changes. */
  #hosts: ReadonlySet<string> = new Set();

  constructor(options: ListenerOptions) {
    this.#options = options;
  }

  /** What answers requests from now on. */
  serve(fetch: Fetch): void {
    this.#fetch = fetch;
  }

  hosts = (): ReadonlySet<string> => this.#hosts;

  addresses = (): readonly string[] => {
    if (this.#network === null) return [];
    const port = portOf(this.#network.door);
    const names = this.#names.dns.filter((name) => name !== "localhost");
    return [...this.#names.network.map(inUrl), ...names].map((name) => `https://${name}:${port}`);
  };

  /** Opens HTTP for this computer. Returns its address. */
  async openLocal(): Promise<string> {
    const local = createHttp(
      TIMES,
      listenerOf((request, place) => this.#fetch(request, place), false),
    );
    local.maxConnections = CONNECTIONS;
    this.#track(local);
    const port = await listen(local, this.#options.port, "127.0.0.1");
    this.#local = local;
    this.#nameHosts();
    return `http://127.0.0.1:${port}`;
  }

  /** Opens the network. */
  open = (): Promise<void> => {
    this.#opening ??= this.#openNetwork();
    return this.#opening;
  };

  async close(): Promise<void> {
    if (this.#timer !== null) clearInterval(this.#timer);
    const servers = [this.#local, this.#network?.door].flatMap((server) => server ?? []);
    const closed = Promise.all(servers.map(close));
    for (const socket of this.#sockets) socket.destroy();
    await closed;
    this.#local = null;
    this.#network = null;
  }

  #nameHosts(): void {
    const network = [...this.#names.dns, ...this.#names.ips.map(inUrl)];
    const at = (server: NetServer | undefined | null, names: readonly string[]): readonly string[] => {
      const port = server === undefined || server === null ? 0 : portOf(server);
      return port === 0 ? [] : names.map((name) => `${name}:${port}`);
    };
    this.#hosts = new Set([
      ...at(this.#local, ["localhost", "127.0.0.1", "[::1]"]),
      ...at(this.#network?.door, network),
    ]);
  }

  async #openNetwork(): Promise<void> {
    this.#names = ownNames();
    const { certificatePem, keyPem } = await this.#certificate();
    const secure = createHttps(
      { ...TIMES, cert: certificatePem, key: keyPem, minVersion: "TLSv1.2" },
      listenerOf((request, place) => this.#fetch(request, place), true),
    );
    const plain = createHttp(
      TIMES,
      listenerOf((request) => this.#trust(request), false),
    );
    const door = createNet((socket) => {
      socket.setTimeout(FIRST_BYTE_MS, () => socket.destroy());
      socket.on("error", () => socket.destroy());
      socket.once("readable", () => {
        const first: unknown = socket.read(1);
        if (!Buffer.isBuffer(first)) {
          socket.destroy();
          return;
        }
        socket.setTimeout(0);
        socket.unshift(first);
        (first[0] === TLS_HANDSHAKE ? secure : plain).emit("connection", socket);
      });
    });
    door.maxConnections = CONNECTIONS;
    this.#track(door);
    // Strange words on a TLS port are no fault of ours; they end the connection.
    secure.on("tlsClientError", (_, socket) => socket.destroy());
    await listen(door, this.#options.networkPort, "0.0.0.0");
    this.#network = { door, secure, plain };
    this.#nameHosts();
    this.#timer = setInterval(() => {
      this.#renew(secure).catch((error: unknown) => this.#options.log(`certificate: ${String(error)}`));
    }, LOOK_MS);
    this.#timer.unref();
  }

  async #certificate(): Promise<Certificate> {
    const { certificate, folder, now } = this.#options;
    if (certificate !== null) return certificate;
    // Loaded when it is needed: most starts of the first days need no certificates.
    const { authorityOf, serverCertificateOf } = await import("./authority.ts");
    this.#authority = await authorityOf(folder, this.#names, now());
    return serverCertificateOf(folder, this.#authority, this.#names, now());
  }

  async #renew(secure: SecureServer): Promise<void> {
    this.#names = ownNames();
    this.#nameHosts();
    const { certificatePem, keyPem } = await this.#certificate();
    secure.setSecureContext({ cert: certificatePem, key: keyPem, minVersion: "TLSv1.2" });
  }

  async #trust(request: Request): Promise<Response> {
    const { trustPage } = await import("./trust-page.ts");
    const url = new URL(request.url);
    const known = this.hosts().has(url.host.toLowerCase());
    const [first = ""] = this.addresses();
    const home = known ? `https://${url.host.toLowerCase()}` : first;
    return trustPage(request, { home, authority: this.#authority?.certificatePem ?? null });
  }

  #track(server: NetServer): void {
    server.on("connection", (socket: Socket) => {
      this.#sockets.add(socket);
      socket.once("close", () => this.#sockets.delete(socket));
    });
  }
}
