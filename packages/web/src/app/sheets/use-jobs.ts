import type { Job, SheetRequest } from "@pinwright/contract";
import { useCallback, useEffect, useState } from "react";
import { call } from "../../api/call.ts";
import { useDesk } from "../book/desk.tsx";
import { useSession } from "../session/session.tsx";
import { withJob } from "./job-files.ts";

export interface Jobs {
  /** Jobs of the open book, last first; null until the server answered. */
  readonly jobs: readonly Job[] | null;
  /** Asks for sheets; gives the job, or throws. */
  readonly make: (wanted: Omit<SheetRequest, "id">) => Promise<Job>;
  readonly cancel: (job: Job) => void;
}

/** Sheets that are being made or were made of the open book, kept up to date by the server. */
export function useJobs(): Jobs {
  const desk = useDesk();
  const { status } = useSession();
  const { token } = status;
  const [jobs, setJobs] = useState<readonly Job[] | null>(null);
  const { bookId } = desk;
  useEffect(() => {
    let wanted = true;
    const ask = async () => {
      const all = await call("jobs", { parts: {} }).catch(() => []);
      if (wanted) setJobs(all.filter((job) => job.book === bookId));
    };
    void ask();
    const stop = desk.onServer((event) => {
      if (event.type === "job" && event.job.book === bookId)
        setJobs((before) => withJob(before ?? [], event.job));
    });
    return () => {
      wanted = false;
      stop();
    };
  }, [desk, bookId]);
  const make = useCallback(
    async (wanted: Omit<SheetRequest, "id">) => {
      const job = await call("makeSheets", {
        parts: { book: bookId },
        body: { id: crypto.randomUUID(), ...wanted },
        token,
      });
      setJobs((before) => (before?.some((one) => one.id === job.id) ? before : withJob(before ?? [], job)));
      return job;
    },
    [bookId, token],
  );
  const cancel = useCallback(
    (job: Job) => {
      void call("cancelJob", { parts: { job: job.id }, token }).then(
        (stopped) => setJobs((before) => withJob(before ?? [], stopped)),
        () => undefined,
      );
    },
    [token],
  );
  return { jobs, make, cancel };
}
