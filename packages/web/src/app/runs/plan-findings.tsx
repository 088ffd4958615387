import { findingWords } from "@pinwright/words";
import { useState } from "react";
import { Link } from "wouter";
import type { AskAnswer } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { subjectAddress } from "../findings/address.ts";
import { usePick, useSpeech } from "../words.tsx";
import "../findings/section-findings.css";

type Found = AskAnswer<"runsFigures">["findings"];

const FIRST = 20;

/** What is wrong with a plan, the worst first, each with what it is about and what to do. */
export function PlanFindings({ findings, none }: { readonly findings: Found; readonly none: string }) {
  const { words, language } = useSpeech();
  const { bookId } = useDesk();
  const pick = usePick();
  const [most, setMost] = useState(FIRST);
  const rank = { error: 0, warning: 1, note: 2 };
  const sorted = findings.toSorted((a, b) => rank[a.finding.severity] - rank[b.finding.severity]);
  if (sorted.length === 0) return <p className="dim">{none}</p>;
  return (
    <>
      <ul className="section-findings">
        {sorted.slice(0, most).map(({ finding, subjects }) => {
          const wording = findingWords(language, finding.rule);
          return (
            <li key={`${finding.rule} ${finding.subjects.join(" ")}`} className={`said ${finding.severity}`}>
              <b>
                {words.common.severity[finding.severity]}: {wording.title}
              </b>
              <p>{wording.say(finding)}</p>
              <p className="loop">
                {subjects.map((subject, i) => {
                  const address = subjectAddress(bookId, subject);
                  const name = pick(subject.label, subject.labelZh) || subject.id;
                  return (
                    <span key={subject.id}>
                      {i > 0 && ", "}
                      {address === null ? name : <Link href={address}>{name}</Link>}
                    </span>
                  );
                })}
              </p>
              <p className="dim">{wording.todo}</p>
            </li>
          );
        })}
      </ul>
      {sorted.length > most && (
        <button type="button" className="link-button" onClick={() => setMost(Number.POSITIVE_INFINITY)}>
          {words.lists.more(sorted.length - most)}
        </button>
      )}
    </>
  );
}
