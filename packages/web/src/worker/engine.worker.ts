import { Desk } from "./desk.ts";
import type { ToWorker } from "./protocol.ts";

const desk = new Desk((message) => postMessage(message));
addEventListener("message", (event: MessageEvent<ToWorker>) => desk.handle(event.data));
