import { Button, Progress } from "@mantine/core";
import { type Job, pathTo } from "@pinwright/contract";
import { IconDownload, IconFileZip } from "@tabler/icons-react";
import { useSyncExternalStore } from "react";
import { useDesk, useView } from "../book/desk.tsx";
import { usePick, useWords } from "../words.tsx";
import { byHarness } from "./job-files.ts";
import { MACHINE_SHEETS } from "./sheet-kinds.ts";
import "./sheets.css";

/** One making of sheets: how far it is, what it was made from, and its files. */
export function JobCard({
  job,
  onCancel,
  open,
}: {
  readonly job: Job;
  readonly onCancel: () => void;
  /** Whether its files are laid open from the start. */
  readonly open: boolean;
}) {
  const words = useWords().prints;
  const isGoing = job.state === "waiting" || job.state === "running";
  return (
    <section className="job" aria-label={words.states[job.state]}>
      <header>
        <strong className={job.state === "failed" ? "error-text" : undefined}>
          {words.states[job.state]}
        </strong>
        <span className="dim">{words.from(job.changeNo)}</span>
        <Standing job={job} />
        <span style={{ flex: 1 }} />
        {isGoing && (
          <Button variant="default" size="sm" onClick={onCancel}>
            {words.cancel}
          </Button>
        )}
        {job.state === "done" && job.files.length > 1 && (
          <Button
            component="a"
            href={pathTo("jobFile", { job: job.id, file: "all.zip" })}
            download
            size="sm"
            leftSection={<IconFileZip size={16} />}
          >
            {words.allFiles}
          </Button>
        )}
      </header>
      {isGoing && (
        <div className="job-progress">
          <Progress
            value={job.total === 0 ? 0 : (100 * job.done) / job.total}
            aria-label={words.progress(job.done, job.total)}
            style={{ flex: 1 }}
          />
          {job.total === 0 ? (
            <span className="dim">{words.preparing}</span>
          ) : (
            <>
              <span>{words.progress(job.done, job.total)}</span>
              <span className="dim">{job.now}</span>
            </>
          )}
        </div>
      )}
      {job.state === "failed" && <p className="error-text">{job.now}</p>}
      <JobFiles job={job} open={open} />
    </section>
  );
}

/** Whether the book is still what these sheets were made from. */
function Standing({ job }: { readonly job: Job }) {
  const words = useWords().prints;
  const desk = useDesk();
  const changeNo = useSyncExternalStore(desk.subscribe, () => desk.changeNo);
  if (changeNo === 0) return null;
  const since = changeNo - job.changeNo;
  return since <= 0 ? (
    <span className="dim">{words.current}</span>
  ) : (
    <span className="amber-text">{words.changedSince(since)}</span>
  );
}

const kilobytes = (bytes: number): string => String(Math.max(1, Math.round(bytes / 1000)));

function JobFiles({ job, open }: { readonly job: Job; readonly open: boolean }) {
  const words = useWords().prints;
  const pick = usePick();
  const harnesses = useView("harnesses", null);
  const groups = byHarness(job.files, [MACHINE_SHEETS, ...(harnesses?.keys() ?? [])]);
  return groups.map(({ harnessId, files }) => {
    const harness = harnessId === null ? undefined : harnesses?.get(harnessId);
    const name =
      harnessId === MACHINE_SHEETS
        ? words.machine
        : harness === undefined
          ? words.other
          : `H${harness.number} ${pick(harness.label.en, harness.label.zh)}`;
    return (
      <details key={harnessId ?? ""} open={open && groups.length === 1}>
        <summary>{words.filesOf(name, files.length)}</summary>
        <ul className="job-files">
          {files.map((file) => (
            <li key={file.name}>
              <a href={pathTo("jobFile", { job: job.id, file: file.name })} target="_blank" rel="noreferrer">
                {file.title} <b>{file.name.slice(file.name.lastIndexOf(".") + 1).toUpperCase()}</b>
              </a>
              <span className="dim">{words.size(kilobytes(file.bytes))}</span>
              <a
                href={pathTo("jobFile", { job: job.id, file: file.name })}
                download={file.name}
                aria-label={`${file.name} ↓`}
                title={file.name}
              >
                <IconDownload size={18} />
              </a>
            </li>
          ))}
        </ul>
      </details>
    );
  });
}
