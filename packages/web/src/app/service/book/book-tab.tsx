import { Button, Progress } from "@mantine/core";
import { SERVICE_BOOK_STAGES, type ServiceBookJob } from "@pinwright/contract";
import { useEffect, useRef } from "react";
import { useSearchParams } from "wouter";
import { useSpeech, useWords } from "../../words.tsx";
import { BookReader } from "./book-reader.tsx";
import { type BookChoice, ChooseBook, requestOf } from "./choose-book.tsx";
import { useServiceBook } from "./use-service-book.ts";
import "./book.css";

/** What the address asks for; null: nothing yet. */
function askedFor(params: URLSearchParams): BookChoice | null {
  const unit = params.get("unit");
  if (unit !== null && unit !== "") return `unit:${unit}`;
  const revision = params.get("revision");
  if (revision === null || revision === "") return null;
  return revision === "draft" ? "draft" : `release:${revision}`;
}

/** The service book: of a revision or of one machine, made, then read here or as PDF. */
export default function BookTab() {
  const { words, language: spoken } = useSpeech();
  const own = words.serviceBookApp;
  const [params, setParams] = useSearchParams();
  const { job, failed, make } = useServiceBook();
  const asked = askedFor(params);
  const named = params.get("language");
  const language = named === "en" || named === "zh" ? named : spoken;
  const begun = useRef("");
  useEffect(() => {
    const wanted = `${asked} ${language}`;
    if (asked === null || begun.current === wanted) return;
    begun.current = wanted;
    void make(requestOf(asked, language));
  }, [asked, language, make]);
  const isGoing = job !== null && (job.state === "waiting" || job.state === "running");
  return (
    <div className="currents-body service-book">
      <h2>{own.title}</h2>
      <p className="dim book-about">{own.about}</p>
      <ChooseBook
        key={`${asked} ${language}`}
        choice={asked ?? "draft"}
        language={language}
        busy={isGoing}
        onMake={(choice, chosen) => {
          const { release, unit } = requestOf(choice, chosen);
          if (choice === asked && chosen === language) void make(requestOf(choice, chosen));
          else if (unit !== undefined) setParams({ unit, language: chosen });
          else setParams({ revision: release ?? "draft", language: chosen });
        }}
      />
      {failed !== "" && <p className="error-text">{failed}</p>}
      {isGoing && <Making job={job} />}
      {job?.state === "failed" && (
        <p className="error-text">
          {own.failed} {job.now}{" "}
          {asked !== null && (
            <Button size="sm" variant="default" onClick={() => void make(requestOf(asked, language))}>
              {own.again}
            </Button>
          )}
        </p>
      )}
      {job?.state === "done" && <BookReader key={job.id} job={job} />}
    </div>
  );
}

function Making({ job }: { readonly job: ServiceBookJob }) {
  const { serviceBookApp: own } = useWords();
  const stage = SERVICE_BOOK_STAGES.find((one) => one === job.now);
  return (
    <section className="book-making" aria-label={own.making}>
      <Progress value={(100 * job.done) / job.total} aria-label={own.progress(job.done, job.total)} />
      <p role="status">
        {stage === undefined ? own.waiting : `${own.progress(job.done, job.total)}: ${own.stages[stage]}`}
      </p>
    </section>
  );
}
