import { Button } from "@mantine/core";
import type { BookFile } from "@pinwright/contract";
import { findingWords } from "@pinwright/words";
import { IconArrowLeft, IconPackageExport } from "@tabler/icons-react";
import { useState } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useView } from "../book/desk.tsx";
import { useMay } from "../session/session.tsx";
import { usePick, useSpeech, useWords } from "../words.tsx";
import { outsideAddress } from "./address.ts";
import { MarksSection } from "./marks-section.tsx";
import { shortText } from "./number-text.ts";
import { kindName } from "./outside-list.tsx";
import { PartFiles } from "./part-files.tsx";
import { ReviseDialog } from "./revise-dialog.tsx";
import { SampleHistory } from "./sample-history.tsx";
import { SamplesSection } from "./samples-section.tsx";
import { SendDialog } from "./send-dialog.tsx";

type Detail = ViewEntry<"outsideDetail">;

/** One part that is made outside: its files, what is measured on it, its samples, and the pack for the shop. */
export function OutsidePart({
  id,
  files,
  refreshFiles,
}: {
  readonly id: string;
  readonly files: ReadonlyMap<string, BookFile> | null;
  readonly refreshFiles: () => Promise<void>;
}) {
  const words = useWords();
  const own = words.outside;
  const { bookId } = useDesk();
  const details = useView("outsideDetail", id);
  const detail = details?.get(id);
  return (
    <>
      <Link className="currents-back" href={outsideAddress(bookId)}>
        <IconArrowLeft size={16} /> {own.all}
      </Link>
      {details === null ? (
        <p className="dim">{words.common.loading}</p>
      ) : detail === undefined ? (
        <p>{own.unknownPart(id)}</p>
      ) : (
        <>
          <Head detail={detail} />
          <SampleHistory samples={detail.samples} />
          <PartFiles detail={detail} files={files} refresh={refreshFiles} />
          <MarksSection detail={detail} />
          <SamplesSection detail={detail} />
          <Findings detail={detail} />
        </>
      )}
    </>
  );
}

function Head({ detail }: { readonly detail: Detail }) {
  const words = useWords();
  const own = words.outside;
  const pick = usePick();
  const { bookId } = useDesk();
  const mayEdit = useMay("designer");
  const [dialog, setDialog] = useState<"send" | "revise" | null>(null);
  const name = pick(detail.label, detail.labelZh) || detail.id;
  const facts = [
    [own.kind, kindName(own.kinds, detail.kind)],
    [own.facts.material, detail.material || own.facts.notSaid],
    [own.facts.thickness, detail.thicknessMm === null ? "" : `${shortText(detail.thicknessMm)} mm`],
    [own.facts.finish, detail.finish || own.facts.notSaid],
  ] as const;
  return (
    <header className="outside-head">
      <div>
        <h2>
          {name} <span className="dim">{detail.id}</span>
        </h2>
        <p className="outside-revision">
          {own.revision} <b>{detail.revision || own.noRevision}</b>
        </p>
        <dl className="facts">
          {facts
            .filter(([, value]) => value !== "")
            .map(([label, value]) => (
              <div key={label}>
                <dt>{label}</dt>
                <dd>{value}</dd>
              </div>
            ))}
        </dl>
        <p className={detail.blocked === null ? "dim" : "amber-text"}>
          {detail.blocked === null ? own.free : own.blocks[detail.blocked]}
        </p>
        <Link href={`/b/${bookId}/tables/parts?id=${encodeURIComponent(detail.id)}`}>{own.toTable}</Link>
      </div>
      <div className="outside-buttons">
        <Button
          leftSection={<IconPackageExport size={16} />}
          disabled={detail.drawings === 0}
          onClick={() => setDialog("send")}
        >
          {own.send.open}
        </Button>
        {mayEdit && (
          <Button variant="default" onClick={() => setDialog("revise")}>
            {own.revise.open}
          </Button>
        )}
      </div>
      {dialog === "send" && <SendDialog parts={[detail]} close={() => setDialog(null)} />}
      {dialog === "revise" && <ReviseDialog detail={detail} close={() => setDialog(null)} />}
    </header>
  );
}

function Findings({ detail }: { readonly detail: Detail }) {
  const { words, language } = useSpeech();
  const own = words.outside;
  if (detail.findings.length === 0) return null;
  return (
    <section>
      <h3>{own.checks}</h3>
      <ul className="section-findings">
        {detail.findings.map((finding) => {
          const wording = findingWords(language, finding.rule);
          return (
            <li
              key={`${finding.rule} ${JSON.stringify(finding.numbers)}`}
              className={`said ${finding.severity}`}
            >
              <b>
                {words.common.severity[finding.severity]}: {wording.title}
              </b>
              <p>{wording.say(finding)}</p>
              <p className="dim">{wording.todo}</p>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
