import type { Release, ReleaseJob } from "@pinwright/contract";
import { useCallback, useEffect, useState } from "react";
import { call } from "../../api/call.ts";
import { useDesk } from "../book/desk.tsx";
import { useSession } from "../session/session.tsx";

interface Releases {
  /** The newest first; null until the server answered. */
  readonly releases: readonly Release[] | null;
  readonly failed: unknown;
}

/** Releases of the open book, kept up to date by the server. */
export function useReleases(): Releases {
  const desk = useDesk();
  const { bookId } = desk;
  const [state, setState] = useState<Releases>({ releases: null, failed: null });
  useEffect(() => {
    let wanted = true;
    const ask = (): void => {
      call("releases", { parts: { book: bookId } }).then(
        (releases) => wanted && setState({ releases, failed: null }),
        (failed: unknown) => wanted && setState((before) => ({ ...before, failed })),
      );
    };
    ask();
    const stop = desk.onServer((event) => {
      if (event.type === "release" && event.job.book === bookId && event.job.state === "done") ask();
    });
    return () => {
      wanted = false;
      stop();
    };
  }, [desk, bookId]);
  return state;
}

interface ReleaseJobs {
  /** The release that this page asked for, or that was under way when it came. */
  readonly job: ReleaseJob | null;
  readonly make: (name: string, note: string) => Promise<void>;
  readonly cancel: () => void;
  /** Forgets one that is over. */
  readonly clear: () => void;
}

const isGoing = ({ state }: ReleaseJob): boolean => state === "waiting" || state === "running";

/** Making a release of the open book, and how far that is. */
export function useReleaseJob(): ReleaseJobs {
  const desk = useDesk();
  const { bookId } = desk;
  const { token } = useSession().status;
  const [job, setJob] = useState<ReleaseJob | null>(null);
  useEffect(() => {
    let wanted = true;
    call("releaseJobs", { parts: {} }).then(
      (jobs) => {
        const going = jobs.find((one) => one.book === bookId && isGoing(one));
        if (wanted && going !== undefined) setJob((before) => before ?? going);
      },
      () => undefined,
    );
    const stop = desk.onServer((event) => {
      if (event.type !== "release" || event.job.book !== bookId) return;
      setJob((before) => (before?.id === event.job.id || isGoing(event.job) ? event.job : before));
    });
    return () => {
      wanted = false;
      stop();
    };
  }, [desk, bookId]);
  const make = useCallback(
    async (name: string, note: string) => {
      const body = { id: crypto.randomUUID(), name, note };
      const made = await call("addRelease", { parts: { book: bookId }, body, token });
      // What the server told of it meanwhile is newer than its answer.
      setJob((before) => (before?.id === made.id ? before : made));
    },
    [bookId, token],
  );
  const cancel = useCallback(() => {
    if (job === null) return;
    call("cancelReleaseJob", { parts: { job: job.id }, token }).then(setJob, () => undefined);
  }, [job, token]);
  const clear = useCallback(
    () => setJob((before) => (before !== null && isGoing(before) ? before : null)),
    [],
  );
  return { job, make, cancel, clear };
}
