import { type Job, pathTo } from "@pinwright/contract";
import { useCallback, useEffect, useState } from "react";
import { today } from "../../runs/today.ts";
import { useJobs } from "../../sheets/use-jobs.ts";
import { useTrouble } from "../../trouble.ts";
import { useSpeech } from "../../words.tsx";

/** Name of the file that holds the facts of the draft with its sheets. */
const FACTS = "facts.json";

interface DraftFacts {
  /** Facts as JSON; null: not composed. */
  readonly facts: string | null;
  /** Number of the change that they are of. */
  readonly changeNo: number;
  readonly job: Job | null;
  readonly failed: string;
  readonly ask: () => void;
  readonly stop: () => void;
}

/** Has the server compose the draft's sheets, so that a comparison can say which of them change. */
export function useDraftFacts(from: string): DraftFacts {
  const { language } = useSpeech();
  const { jobs, make, cancel } = useJobs();
  const trouble = useTrouble();
  const [id, setId] = useState<string | null>(null);
  const [facts, setFacts] = useState<string | null>(null);
  const [failed, setFailed] = useState("");
  const job = jobs?.find((one) => one.id === id) ?? null;
  const isDone = job?.state === "done";
  useEffect(() => {
    if (!isDone || id === null) return;
    let wanted = true;
    void fetch(pathTo("jobFile", { job: id, file: FACTS }), { credentials: "same-origin" })
      .then(async (response) => {
        if (!response.ok) throw new Error(`${response.status} ${response.statusText}`);
        return response.text();
      })
      .then(
        (text) => wanted && setFacts(text),
        (error: unknown) => wanted && setFailed(trouble(error)),
      );
    return () => {
      wanted = false;
    };
  }, [isDone, id, trouble]);
  const ask = useCallback(() => {
    setFailed("");
    make({
      ...{ harnessIds: [], kinds: [], formats: [], language },
      compare: { from, make: ["facts"], today: today() },
    }).then(
      (made) => setId(made.id),
      (error: unknown) => setFailed(trouble(error)),
    );
  }, [make, from, language, trouble]);
  return {
    facts,
    changeNo: job?.changeNo ?? 0,
    job,
    failed: failed !== "" ? failed : job?.state === "failed" ? job.now : "",
    ask,
    stop: () => job !== null && cancel(job),
  };
}
