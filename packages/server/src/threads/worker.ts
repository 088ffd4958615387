import { parentPort } from "node:worker_threads";
import { type Message, type ResultOf, type Task, taskSchema } from "./messages.ts";
import { Refusal } from "./refusal.ts";

/** The other thread: does one task after the other. */
const port = parentPort;
if (port === null) throw new Error("This file is started as a thread, not as a program.");

const tell = (message: Message): void => port.postMessage(message);

/** What only some tasks need is loaded by the first of them. */
async function work(task: Task): Promise<ResultOf<Task["kind"]>> {
  switch (task.kind) {
    case "read":
      return (await import("./book-files.ts")).readFile(task);
    case "read-foreign":
      return (await import("./book-files.ts")).readForeign(task);
    case "write":
      await (await import("./book-files.ts")).writeFile(task);
      return {};
    case "send-out":
      await (await import("./send-out.ts")).makeSendOut(task);
      return {};
    case "check-sheet":
      await (await import("./send-out.ts")).makeCheckSheet(task);
      return {};
    case "gate":
      return (await import("./unit-gate.ts")).unitGate(task);
    case "record-sheet":
      return (await import("./record-sheets.ts")).makeRecordSheet(task);
    case "release":
      return (await import("./make-release.ts")).makeRelease(task, tell);
    case "print-changes":
      return (await import("./print-changes.ts")).printChanges(task);
    case "compare":
      await (await import("./make-compare.ts")).makeCompare(task, tell);
      return {};
    case "fault-file":
      (await import("./make-fault-file.ts")).makeFaultFile(task);
      return {};
    case "service-book":
      return (await import("./make-service-book.ts")).makeServiceBook(task, tell);
    case "sheets":
      await (await import("./make-sheets.ts")).makeSheets(task, tell);
      return {};
  }
}

port.on("message", (raw: unknown) => {
  work(taskSchema.parse(raw)).then(
    (result) => tell({ type: "done", result }),
    (error: unknown) => {
      if (error instanceof Refusal) tell({ type: "refused", message: error.message });
      // Thrown where nobody catches it, so that the thread ends and whoever waits is told.
      else
        setImmediate(() => {
          throw error;
        });
    },
  );
});
