import { Button } from "@mantine/core";
import { type CompareSheet, type Job, pathTo } from "@pinwright/contract";
import { IconFileText, IconTool } from "@tabler/icons-react";
import { useState } from "react";
import { today } from "../../runs/today.ts";
import { useJobs } from "../../sheets/use-jobs.ts";
import { useTrouble } from "../../trouble.ts";
import { useSpeech } from "../../words.tsx";
import { DRAFT } from "../address.ts";

const SHEETS = [
  { sheet: "change-note", Icon: IconFileText },
  { sheet: "retrofit-kit", Icon: IconTool },
] as const;

/** The two sheets of a change, made by the server. */
export function MakeSheets({ from, to }: { readonly from: string; readonly to: string }) {
  const { words, language } = useSpeech();
  const own = words.compareApp.make;
  const { jobs, make } = useJobs();
  const trouble = useTrouble();
  const [asked, setAsked] = useState<Readonly<Partial<Record<CompareSheet, string>>>>({});
  const [failed, setFailed] = useState("");
  const ask = (sheet: CompareSheet): void => {
    setFailed("");
    make({
      ...{ harnessIds: [], kinds: [], formats: [], language },
      compare: { from, ...(to === DRAFT ? {} : { to }), make: [sheet], today: today() },
    }).then(
      (job) => setAsked((before) => ({ ...before, [sheet]: job.id })),
      (error: unknown) => setFailed(trouble(error)),
    );
  };
  const names = { "change-note": own.note, "retrofit-kit": own.kit };
  return (
    <section>
      <h3>{own.title}</h3>
      <div className="compare-make">
        {SHEETS.map(({ sheet, Icon }) => (
          <Made
            key={sheet}
            name={names[sheet]}
            job={jobs?.find(({ id }) => id === asked[sheet]) ?? null}
            ask={() => ask(sheet)}
            icon={<Icon size={16} aria-hidden />}
          />
        ))}
      </div>
      {failed !== "" && <p className="error-text">{own.failed(failed)}</p>}
    </section>
  );
}

function Made({
  name,
  job,
  ask,
  icon,
}: {
  readonly name: string;
  readonly job: Job | null;
  readonly ask: () => void;
  readonly icon: React.ReactNode;
}) {
  const { words } = useSpeech();
  const own = words.compareApp;
  const isGoing = job?.state === "waiting" || job?.state === "running";
  const file = job?.state === "done" ? job.files.find((one) => one.name.endsWith(".pdf")) : undefined;
  return (
    <div>
      <Button variant="default" leftSection={icon} onClick={ask} loading={isGoing}>
        {name}
      </Button>
      <span role="status">
        {isGoing && job !== null && (
          <span className="dim">
            {" "}
            {job.total === 0 ? own.make.busy : own.sheets.progress(job.done, job.total)}
          </span>
        )}
        {job !== null && file !== undefined && (
          <a href={pathTo("jobFile", { job: job.id, file: file.name })} target="_blank" rel="noreferrer">
            {own.make.open(name)}
          </a>
        )}
        {job?.state === "failed" && <span className="error-text">{own.make.failed(job.now)}</span>}
      </span>
    </div>
  );
}
