import { createServer, type Server, type Socket } from "node:net";

/** A device on a port of this machine that answers line by line. */
export class LineDevice {
  readonly #server: Server;
  readonly #sockets = new Set<Socket>();
  /** Everything that it was asked, in order. */
  readonly asked: string[] = [];

  constructor(answer: (line: string) => string | null) {
    this.#server = createServer((socket) => {
      this.#sockets.add(socket);
      socket.on("error", () => socket.destroy());
      socket.setEncoding("latin1");
      let heard = "";
      socket.on("data", (text) => {
        const lines = (heard + String(text)).split("\n");
        heard = lines.pop() ?? "";
        for (const line of lines) {
          this.asked.push(line);
          const says = answer(line);
          if (says !== null) socket.write(`${says}\n`, "latin1");
        }
      });
    });
  }

  /** Listens on a free port, which it gives. */
  start(): Promise<number> {
    return new Promise((started) => {
      this.#server.listen(0, "127.0.0.1", () => {
        const address = this.#server.address();
        started(typeof address === "object" && address !== null ? address.port : 0);
      });
    });
  }

  stop(): Promise<void> {
    for (const socket of this.#sockets) socket.destroy();
    return new Promise((stopped) => this.#server.close(() => stopped()));
  }
}
