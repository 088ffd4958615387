import { findingWords } from "@pinwright/words";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { usePick, useSpeech, useWords } from "../words.tsx";
import { subjectAddress } from "./address.ts";
import "./section-findings.css";

type Found = "stepFindings" | "panelFindings" | "boardFindings";

/** What is wrong in a section, each with what it is about and what to do. */
export function SectionFindings({
  findings,
  none,
}: {
  readonly findings: Entries<Found>;
  /** What is said when nothing is wrong. */
  readonly none: string;
}) {
  if (findings.size === 0) return <p className="dim">{none}</p>;
  return (
    <ul className="section-findings">
      {[...findings].map(([key, entry]) => (
        <SectionFinding key={key} entry={entry} />
      ))}
    </ul>
  );
}

function SectionFinding({ entry: { finding, subjects } }: { readonly entry: ViewEntry<Found> }) {
  const { words, language } = useSpeech();
  const { bookId } = useDesk();
  const pick = usePick();
  const wording = findingWords(language, finding.rule);
  // A loop goes round; whatever else several things share is a list.
  const between = finding.rule === "order-loop" ? " → " : ", ";
  return (
    <li className={`said ${finding.severity}`}>
      <b>
        {words.common.severity[finding.severity]}: {wording.title}
      </b>
      {finding.accepted !== null && <span className="dim"> {words.steps.accepted}</span>}
      <p>{wording.say(finding)}</p>
      <p className="loop">
        {subjects.map((subject, i) => {
          const address = subjectAddress(bookId, subject);
          const name = pick(subject.label, subject.labelZh) || subject.id;
          return (
            <span key={subject.id}>
              {i > 0 && between}
              {address === null ? name : <Link href={address}>{name}</Link>}
            </span>
          );
        })}
      </p>
      <p className="dim">{wording.todo}</p>
    </li>
  );
}

const openCount = (findings: Entries<Found>): number =>
  [...findings.values()].filter(({ finding }) => finding.accepted === null).length;

/** On a tab: how many of the section's findings nobody has accepted. */
export function OpenCount({ findings }: { readonly findings: Entries<Found> }) {
  const words = useWords().checks;
  const count = openCount(findings);
  if (count === 0) return null;
  return (
    <span className="tab-count" title={words.openFindings(count)}>
      <span aria-hidden>{count}</span>
      <span className="visually-hidden">{words.openFindings(count)}</span>
    </span>
  );
}
