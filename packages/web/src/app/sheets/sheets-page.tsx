import { useEffect, useRef, useState } from "react";
import { useSearchParams } from "wouter";
import { useView } from "../book/desk.tsx";
import { usePick, useWords } from "../words.tsx";
import { Choices, ChooseSheets } from "./choose-sheets.tsx";
import { JobCard } from "./job-card.tsx";
import { useJobs } from "./use-jobs.ts";

/** Making sheets for the floor, and fetching those that were made. */
export default function SheetsPage() {
  const { prints: words, common } = useWords();
  const pick = usePick();
  const harnesses = useView("harnesses", null);
  const { jobs, make, cancel } = useJobs();
  const [chosen, setChosen] = useState<readonly string[] | null>(null);
  const [latest, setLatest] = useState<string | null>(null);
  const made = useRef<HTMLElement>(null);
  const [params] = useSearchParams();
  const kinds = params.get("kinds");
  const machines = Number(params.get("machines") ?? "1");
  const ids = [...(harnesses?.keys() ?? [])];
  const known = new Set(ids);
  const wanted = (chosen ?? ids).filter((id) => known.has(id));
  useEffect(() => {
    document.title = `${words.title} · Pinwright`;
  }, [words]);
  if (harnesses === null) return <p className="page dim">{common.loading}</p>;
  return (
    <div className="page sheets-page">
      <div>
        <h2>{words.title}</h2>
        {ids.length === 0 ? (
          <p>{words.noHarnesses}</p>
        ) : (
          <>
            <p className="dim">{words.intro}</p>
            <ChooseSheets
              harnessIds={wanted}
              key={kinds}
              ofMachine
              machines={Number.isInteger(machines) && machines > 0 ? machines : 1}
              asked={kinds === null ? null : new Set(kinds.split(","))}
              onMake={async (request) => {
                setLatest((await make(request)).id);
                made.current?.scrollIntoView({ block: "nearest", behavior: "smooth" });
              }}
            >
              <Choices
                title={words.harnesses}
                all={ids}
                chosen={wanted}
                onChoose={setChosen}
                nameOf={(id) => {
                  const harness = harnesses.get(id);
                  return harness === undefined
                    ? id
                    : `H${harness.number} ${pick(harness.label.en, harness.label.zh)}`;
                }}
              />
            </ChooseSheets>
          </>
        )}
      </div>
      <section className="jobs" ref={made} aria-label={words.made}>
        <h3>{words.made}</h3>
        {jobs !== null && jobs.length === 0 && <p className="dim">{words.noJobs}</p>}
        {jobs?.map((job) => (
          <JobCard key={job.id} job={job} open={job.id === latest} onCancel={() => cancel(job)} />
        ))}
      </section>
    </div>
  );
}
