import { Button, Progress } from "@mantine/core";
import { type Job, pathTo } from "@pinwright/contract";
import type { RunSheetKind } from "@pinwright/sheets";
import { IconDownload, IconFileZip } from "@tabler/icons-react";
import { useState } from "react";
import { useJobs } from "../sheets/use-jobs.ts";
import { useTrouble } from "../trouble.ts";
import { useSpeech, useWords } from "../words.tsx";
import type { Run } from "./run-tab.ts";

const endingOf = (name: string): string => name.slice(name.lastIndexOf(".") + 1).toUpperCase();

/** Files of one sheet in its formats. */
function bySheet(files: Job["files"]): ReadonlyMap<string, Job["files"]> {
  const sheets = new Map<string, Job["files"]>();
  for (const file of files) {
    const name = file.name.slice(0, file.name.lastIndexOf("."));
    sheets.set(name, [...(sheets.get(name) ?? []), file]);
  }
  return sheets;
}

/** Makes the sheets that belong to a part of a run's page, and gives their files. */
export function RunDownloads({
  run,
  day,
  kinds,
}: {
  readonly run: Run;
  readonly day: string;
  readonly kinds: readonly RunSheetKind[];
}) {
  const { words, language } = useSpeech();
  const own = words.runs.files;
  const trouble = useTrouble();
  const { jobs, make, cancel } = useJobs();
  const [jobId, setJobId] = useState<string | null>(null);
  const [failed, setFailed] = useState("");
  const job = jobs?.find(({ id }) => id === jobId);
  const isGoing = job?.state === "waiting" || job?.state === "running";
  const start = (): void => {
    setFailed("");
    make({
      harnessIds: [],
      kinds: [],
      formats: ["pdf", "xlsx", "csv"],
      language,
      runs: { kinds: [...kinds], run: run.id, today: day },
    }).then(
      ({ id }) => setJobId(id),
      (error: unknown) => setFailed(trouble(error)),
    );
  };
  return (
    <section className="run-files" aria-label={own.title}>
      <Button
        variant="default"
        size="sm"
        leftSection={<IconDownload size={16} />}
        loading={isGoing}
        onClick={start}
      >
        {own.make}
      </Button>
      {failed !== "" && (
        <p className="error-text" role="alert">
          {failed}
        </p>
      )}
      {job !== undefined && isGoing && <Going job={job} stop={() => cancel(job)} />}
      {job?.state === "failed" && <p className="error-text">{job.now}</p>}
      {job?.state === "done" && <Files job={job} />}
    </section>
  );
}

function Going({ job, stop }: { readonly job: Job; readonly stop: () => void }) {
  const words = useWords();
  const says = job.total === 0 ? words.prints.preparing : words.prints.progress(job.done, job.total);
  return (
    <div className="plan-progress" role="status">
      <Progress
        value={job.total === 0 ? 0 : (100 * job.done) / job.total}
        aria-label={says}
        style={{ width: 200 }}
      />
      <span>{says}</span>
      <Button variant="default" size="compact-sm" onClick={stop}>
        {words.common.cancel}
      </Button>
    </div>
  );
}

function Files({ job }: { readonly job: Job }) {
  const words = useWords();
  if (job.files.length === 0) return <p className="dim">{words.runs.files.none}</p>;
  return (
    <ul className="run-file-list">
      {job.files.length > 3 && (
        <li>
          <a href={pathTo("jobFile", { job: job.id, file: "all.zip" })} download>
            <IconFileZip size={16} aria-hidden /> {words.prints.allFiles}
          </a>
        </li>
      )}
      {[...bySheet(job.files)].map(([name, files]) => (
        <li key={name}>
          <span>{files[0]?.title}</span>
          {files.map((file) => (
            <a
              key={file.name}
              href={pathTo("jobFile", { job: job.id, file: file.name })}
              download={file.name}
              aria-label={`${file.title} ${endingOf(file.name)}`}
            >
              {endingOf(file.name)}
            </a>
          ))}
        </li>
      ))}
    </ul>
  );
}
