import { createServer, connect as dial, type Server, type Socket } from "node:net";

/** What the network does to an exchange of a request and its answer. */
const HARMS = [
  /** Half of the request arrives. */
  "request-cut",
  /** The request arrives, and nothing of the answer. */
  "answer-lost",
  /** Half of the first piece of the answer arrives. */
  "answer-cut",
  /** The request is held up. */
  "delay",
] as const;
type Harm = (typeof HARMS)[number];

export interface NetworkOptions {
  /** Port of the server. */
  readonly to: number;
  /** Share of exchanges that something is done to. */
  readonly share: number;
  /** Longest hold-up, ms. */
  readonly delayMs: number;
  readonly random: () => number;
}

/** The wires between stations and server, which now and then break in the middle of a request or an answer. */
export class BadNetwork {
  readonly #options: NetworkOptions;
  readonly #server: Server;
  readonly #sockets = new Set<Socket>();
  /** By port of the station's end: for how long its exchange was held up. */
  readonly #heldMs = new Map<number, number>();
  #isAway = false;
  #isGood = false;
  readonly counts: Record<Harm | "away" | "refused", number> = {
    "request-cut": 0,
    "answer-lost": 0,
    "answer-cut": 0,
    delay: 0,
    away: 0,
    refused: 0,
  };

  constructor(options: NetworkOptions) {
    this.#options = options;
    this.#server = createServer((near) => this.#join(near));
  }

  /** Resolves with the port that stations connect to. */
  open(): Promise<number> {
    return new Promise((resolve) => {
      this.#server.listen(0, "127.0.0.1", () => {
        const address = this.#server.address();
        resolve(address !== null && typeof address === "object" ? address.port : 0);
      });
    });
  }

  /** For how long the exchange on a station's connection was held up, ms; asked once. */
  heldMs(port: number): number {
    const held = this.#heldMs.get(port) ?? 0;
    this.#heldMs.delete(port);
    return held;
  }

  /** Everything breaks off, and nothing gets through until `back`. */
  away(): void {
    this.counts.away++;
    this.#isAway = true;
    for (const socket of this.#sockets) socket.destroy();
  }

  back(): void {
    this.#isAway = false;
  }

  /** From now on nothing is done to anything, until `harm`. */
  heal(): void {
    this.#isGood = true;
    this.back();
  }

  harm(): void {
    this.#isGood = false;
  }

  close(): Promise<void> {
    for (const socket of this.#sockets) socket.destroy();
    return new Promise((resolve) => this.#server.close(() => resolve()));
  }

  #track(socket: Socket): void {
    socket.setNoDelay(true);
    this.#sockets.add(socket);
    socket.once("close", () => this.#sockets.delete(socket));
  }

  #join(near: Socket): void {
    this.#track(near);
    if (this.#isAway) {
      this.counts.refused++;
      near.on("error", () => undefined);
      near.destroy();
      return;
    }
    const far = dial(this.#options.to, "127.0.0.1");
    this.#track(far);
    const cut = (): void => {
      near.destroy();
      far.destroy();
    };
    for (const end of [near, far]) {
      end.on("error", cut);
      end.on("close", cut);
    }
    near.once("close", () => this.#heldMs.delete(near.remotePort ?? 0));
    /** What happens to the exchange that is on its way. */
    let harm: Harm | null = null;
    let isNew = true;
    let hold: Promise<void> = Promise.resolve();
    near.on("data", (piece) => {
      if (isNew) harm = this.#harm();
      if (harm === "request-cut") {
        far.write(piece.subarray(0, piece.byteLength >> 1), cut);
        return;
      }
      if (isNew && harm === "delay") hold = this.#hold(near.remotePort ?? 0);
      isNew = false;
      // Pieces keep their order behind one that is held up.
      hold = hold.then(() => void (far.destroyed || far.write(piece)));
    });
    far.on("data", (piece) => {
      isNew = true;
      if (harm === "answer-lost") cut();
      else if (harm === "answer-cut") near.write(piece.subarray(0, piece.byteLength >> 1), cut);
      else near.write(piece);
    });
  }

  #harm(): Harm | null {
    const { share, random } = this.#options;
    if (this.#isGood || random() >= share) return null;
    const harm = HARMS[Math.floor(random() * HARMS.length)] ?? null;
    if (harm !== null) this.counts[harm]++;
    return harm;
  }

  #hold(port: number): Promise<void> {
    const ms = this.#options.random() * this.#options.delayMs;
    this.#heldMs.set(port, ms);
    return new Promise((resolve) => setTimeout(resolve, ms));
  }
}
