import { createServer, type Server, type Socket } from "node:net";

/** What a simulated device does with a line: an answer, as it goes onto the wire, or silence. */
export type LineAnswer = (line: string) => string | null;

/** A small TCP server that answers line by line, for tests. */
export class LineServer {
  readonly #server: Server;
  readonly #sockets = new Set<Socket>();
  /** Wait before each answer, ms. */
  delayMs = 0;

  constructor(answer: LineAnswer) {
    this.#server = createServer((socket) => {
      this.#sockets.add(socket);
      socket.on("close", () => this.#sockets.delete(socket));
      socket.on("error", () => socket.destroy());
      let heard = "";
      socket.setEncoding("latin1");
      socket.on("data", (text) => {
        const lines = (heard + String(text)).split("\n");
        heard = lines.pop() ?? "";
        for (const line of lines) this.#say(socket, answer(line.replace(/\r$/, "")));
      });
    });
  }

  /** Listens on a free port of this machine. */
  start(): Promise<number> {
    return new Promise((resolve, reject) => {
      this.#server.once("error", reject);
      this.#server.listen(0, "127.0.0.1", () => {
        const address = this.#server.address();
        if (address === null || typeof address === "string") reject(new Error("no port"));
        else resolve(address.port);
      });
    });
  }

  /** Cuts every connection, as somebody who pulls the plug. */
  cut(): void {
    for (const socket of this.#sockets) socket.destroy();
  }

  stop(): Promise<void> {
    this.cut();
    return new Promise((resolve) => this.#server.close(() => resolve()));
  }

  #say(socket: Socket, text: string | null): void {
    if (text === null) return;
    setTimeout(() => {
      if (!socket.destroyed) socket.write(text, "latin1");
    }, this.delayMs);
  }
}
