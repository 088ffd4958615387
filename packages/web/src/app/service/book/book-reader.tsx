import { Button } from "@mantine/core";
import { pathTo, type ServiceBookGuide, type ServiceBookJob } from "@pinwright/contract";
import { IconFileTypePdf, IconPrinter } from "@tabler/icons-react";
import { useEffect, useState } from "react";
import { useSearchParams } from "wouter";
import { call } from "../../../api/call.ts";
import { useTrouble } from "../../trouble.ts";
import { useWords } from "../../words.tsx";
import { BookContents } from "./book-contents.tsx";
import { BookPage } from "./book-page.tsx";
import { BookSearch } from "./book-search.tsx";
import type { Spot } from "./find-text.ts";
import { PageTurner } from "./page-turner.tsx";

const BYTES_A_MEGABYTE = 1e6;

/** A finished book: contents and search at the side, one page at a time. */
export function BookReader({ job }: { readonly job: ServiceBookJob }) {
  const { serviceBookApp: own, common } = useWords();
  const trouble = useTrouble();
  const [params, setParams] = useSearchParams();
  const [guide, setGuide] = useState<ServiceBookGuide | null>(null);
  const [failed, setFailed] = useState("");
  const [spot, setSpot] = useState<Spot | null>(null);
  const { id } = job;
  useEffect(() => {
    let wanted = true;
    call("serviceBookGuide", { parts: { job: id } }).then(
      (answer) => wanted && setGuide(answer),
      (error: unknown) => wanted && setFailed(trouble(error)),
    );
    return () => {
      wanted = false;
    };
  }, [id, trouble]);
  const asked = Number(params.get("page") ?? "1");
  const page = Number.isInteger(asked) ? Math.min(Math.max(asked, 1), Math.max(job.pages, 1)) : 1;
  const open = (to: number, where: Spot | null): void => {
    setSpot(where);
    setParams(
      (before) => {
        before.set("page", String(to));
        return before;
      },
      { replace: true },
    );
  };
  if (failed !== "") return <p className="error-text">{failed}</p>;
  if (guide === null) return <p className="dim">{common.loading}</p>;
  return (
    <section className="book" aria-label={guide.title}>
      <header className="book-head">
        <h3>{guide.title}</h3>
        <span className={job.isReleased ? "dim" : "amber-text"}>
          {job.isReleased ? own.released(job.revision) : own.drafted(job.revision.replace(/^@/u, ""))}
        </span>
        <span className="book-actions">
          <Button
            component="a"
            href={pathTo("serviceBookPdf", { job: id })}
            download
            size="sm"
            leftSection={<IconFileTypePdf size={16} aria-hidden />}
          >
            {own.pdf} · {own.pdfSize((job.bytes / BYTES_A_MEGABYTE).toFixed(1))}
          </Button>
          <Button
            variant="default"
            size="sm"
            leftSection={<IconPrinter size={16} aria-hidden />}
            onClick={() => window.print()}
          >
            {own.print}
          </Button>
        </span>
      </header>
      <div className="book-body">
        <aside className="book-side">
          <BookSearch job={id} onOpen={open} />
          <BookContents outline={guide.outline} page={page - 1} onOpen={(to) => open(to, null)} />
        </aside>
        <div className="book-main">
          <PageTurner page={page} pages={job.pages} onOpen={(to) => open(to, null)} />
          <BookPage job={id} guide={guide} page={page} spot={spot} onOpen={(to) => open(to, null)} />
        </div>
      </div>
    </section>
  );
}
