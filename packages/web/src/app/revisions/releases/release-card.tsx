import { ActionIcon } from "@mantine/core";
import { type KeptUnit, pathTo, type Release, UNIT_KINDS } from "@pinwright/contract";
import { unitRanges } from "@pinwright/engine";
import { findingWords } from "@pinwright/words";
import { IconCheck, IconCopy, IconFileZip, IconGitCompare } from "@tabler/icons-react";
import { useState } from "react";
import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { SeverityText } from "../../findings/severity-text.tsx";
import { serviceAddress } from "../../service/address.ts";
import { useSpeech, useWords } from "../../words.tsx";
import { revisionsAddress } from "../address.ts";
import { ReleaseFiles } from "./release-files.tsx";
import { ReleaseSheets } from "./release-sheets.tsx";

/** Digits of a hash that are shown; the whole of it is copied. */
const SHOWN_DIGITS = 12;

/** One release: who made it, why, what was accepted, what was built to it, and all that it holds. */
export function ReleaseCard({
  release,
  before,
  isNewest,
  built,
}: {
  readonly release: Release;
  /** The release before it; null: there is none. */
  readonly before: string | null;
  readonly isNewest: boolean;
  readonly built: readonly KeptUnit[];
}) {
  const { words, language } = useSpeech();
  const own = words.revisionsApp.list;
  const { bookId } = useDesk();
  const when = new Intl.DateTimeFormat(language, {
    dateStyle: "medium",
    timeStyle: "short",
    hourCycle: "h23",
  });
  const { name, findings } = release;
  return (
    <article className="release" aria-labelledby={`release-${release.no}`}>
      <header>
        <h3 id={`release-${release.no}`}>{name}</h3>
        {isNewest && <span className="release-newest">{own.newest}</span>}
        <span>{own.by(release.personName, when.format(new Date(release.at)))}</span>
        <Link href={`/b/${bookId}/history`} className="dim">
          {own.change(release.changeNo)}
        </Link>
      </header>
      <p className="release-note">
        {release.note === "" ? <span className="dim">{own.noNote}</span> : release.note}
      </p>
      <dl className="facts">
        <div>
          <dt>{own.hash}</dt>
          <dd>
            <Hash release={release} />
          </dd>
        </div>
        <div>
          <dt>{words.shell.sections.findings}</dt>
          <dd>
            {own.findings(findings.error, findings.warning, findings.note)}
            <Accepted release={release} />
          </dd>
        </div>
        <div>
          <dt>{own.units}</dt>
          <dd>
            <Built units={built} />
          </dd>
        </div>
      </dl>
      <ReleaseSheets book={bookId} release={name} />
      <div className="release-links">
        {isNewest ? (
          <Link href={revisionsAddress(bookId, "compare", { from: name, to: "draft" })}>
            <IconGitCompare size={16} aria-hidden /> {own.compare}
          </Link>
        ) : null}
        {before !== null && (
          <Link href={revisionsAddress(bookId, "compare", { from: before, to: name })}>
            <IconGitCompare size={16} aria-hidden /> {own.compareBefore(before)}
          </Link>
        )}
        <a href={pathTo("releaseExport", { book: bookId, release: name })} download>
          <IconFileZip size={16} aria-hidden /> {own.export}
        </a>
        <Link href={serviceAddress(bookId, "book", { revision: name })}>{own.book}</Link>
        <ReleaseFiles book={bookId} release={name} />
      </div>
    </article>
  );
}

function Hash({ release }: { readonly release: Release }) {
  const own = useWords().revisionsApp.list;
  const [copied, setCopied] = useState(false);
  return (
    <span className="release-hash">
      <code title={own.hashAbout(release.hash, release.program)}>{release.hash.slice(0, SHOWN_DIGITS)}…</code>
      <ActionIcon
        variant="subtle"
        size="md"
        aria-label={`${own.copy}: ${release.name}`}
        title={own.copy}
        onClick={() =>
          void navigator.clipboard.writeText(release.hash).then(
            () => setCopied(true),
            () => undefined,
          )
        }
      >
        {copied ? <IconCheck size={16} /> : <IconCopy size={16} />}
      </ActionIcon>
      <span role="status" className="dim">
        {copied ? own.copied : ""}
      </span>
    </span>
  );
}

/** What was accepted when it was released, by whom and why. */
function Accepted({ release }: { readonly release: Release }) {
  const { words, language } = useSpeech();
  const own = words.revisionsApp.list;
  const { accepted } = release;
  if (accepted.length === 0) return <div className="dim">{own.accepted(0)}</div>;
  return (
    <details>
      <summary>{own.accepted(accepted.length)}</summary>
      <ul className="release-accepted">
        {accepted.map((one, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: what was released never changes
          <li key={i}>
            <SeverityText severity={one.severity} /> {findingWords(language, one.rule).title}
            {one.subjects.length > 0 && <span className="dim"> ({one.subjects.join(", ")})</span>}
            <div>
              {own.acceptedBy(one.by === "" ? own.noName : one.by)}: {one.reason}
            </div>
          </li>
        ))}
      </ul>
    </details>
  );
}

function Built({ units }: { readonly units: readonly KeptUnit[] }) {
  const own = useWords().revisionsApp.list;
  if (units.length === 0) return <span className="dim">{own.noUnits}</span>;
  return UNIT_KINDS.map((kind) => {
    const list = unitRanges(units.filter(({ what }) => what === kind).map(({ unit }) => unit));
    return list.length === 0 ? null : (
      <div key={kind}>
        {own.kinds[kind]}: {list.join(", ")}
      </div>
    );
  });
}
