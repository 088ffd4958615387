import type { ServiceBookJob, ServiceBookRequest } from "@pinwright/contract";
import { useCallback, useEffect, useState } from "react";
import { call } from "../../../api/call.ts";
import { useDesk } from "../../book/desk.tsx";
import { useSession } from "../../session/session.tsx";
import { useTrouble } from "../../trouble.ts";

/** How long nothing may be heard of a book that is being made before it is asked for, ms. */
const ASK_MS = 2_000;

interface ServiceBook {
  /** The book that was asked for, made or under way; null: none. */
  readonly job: ServiceBookJob | null;
  /** Why it could not be asked for; blank: nothing went wrong. */
  readonly failed: string;
  readonly make: (wanted: ServiceBookRequest) => Promise<void>;
}

const isGoing = ({ state }: ServiceBookJob): boolean => state === "waiting" || state === "running";

/** A service book of the open machine, and how far it is. */
export function useServiceBook(): ServiceBook {
  const desk = useDesk();
  const { bookId } = desk;
  const { token } = useSession().status;
  const trouble = useTrouble();
  const [job, setJob] = useState<ServiceBookJob | null>(null);
  const [failed, setFailed] = useState("");
  useEffect(
    () =>
      desk.onServer((event) => {
        if (event.type !== "service-book") return;
        setJob((before) => (before?.id === event.job.id ? event.job : before));
      }),
    [desk],
  );
  const going = job !== null && isGoing(job) ? job.id : null;
  useEffect(() => {
    if (going === null) return;
    // What was told before this page listened is asked for.
    const timer = setInterval(() => {
      call("serviceBook", { parts: { job: going } }).then(
        (now) => setJob((before) => (before?.id === now.id ? now : before)),
        () => undefined,
      );
    }, ASK_MS);
    return () => clearInterval(timer);
  }, [going]);
  const make = useCallback(
    async (wanted: ServiceBookRequest) => {
      setFailed("");
      setJob(null);
      await call("makeServiceBook", { parts: { book: bookId }, body: wanted, token }).then(setJob, (error) =>
        setFailed(trouble(error)),
      );
    },
    [bookId, token, trouble],
  );
  return { job, failed, make };
}
