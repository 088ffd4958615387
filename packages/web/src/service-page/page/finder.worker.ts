import { FaultFileOpening, FaultFinder, readFaultFile } from "@pinwright/engine";
import type { FromFinder, ToFinder } from "./protocol.ts";

/** Finds faults beside the page, so that it never stalls. */
let finder: FaultFinder | null = null;

const tell = (message: FromFinder): void => postMessage(message);

addEventListener("message", ({ data }: MessageEvent<ToFinder>) => {
  try {
    if (data.type === "open") {
      const opening = new FaultFileOpening(readFaultFile(data.file));
      for (let opened = opening.step(); ; opened = opening.step()) {
        tell({ type: "progress", progress: opening.progress });
        if (opened === null) continue;
        finder = new FaultFinder(opened);
        tell({ type: "opened" });
        return;
      }
    }
    if (finder !== null) tell({ type: "answer", id: data.id, answer: finder.answer(data.session) });
  } catch (error) {
    tell({ type: "failed", message: error instanceof Error ? error.message : String(error) });
  }
});
