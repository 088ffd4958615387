import type { Finding } from "@pinwright/engine";
import { findingWords } from "@pinwright/words";
import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { useSpeech } from "../words.tsx";

/** Findings in sentences, each leading to where it is dealt with. */
export function FindingLines({
  findings,
  about,
}: {
  readonly findings: readonly Finding[];
  readonly about: string;
}) {
  const { words, language } = useSpeech();
  const { bookId } = useDesk();
  if (findings.length === 0) return null;
  return (
    <div className="group">
      <h4>
        {words.layout.chosen.findings} <span className="dim">{findings.length}</span>
      </h4>
      {findings.map((finding) => {
        const wording = findingWords(language, finding.rule);
        return (
          <p
            key={`${finding.rule} ${finding.subjects.join(" ")}`}
            className={`effect said ${finding.severity}`}
          >
            <Link href={`/b/${bookId}/findings?rule=${finding.rule}&id=${encodeURIComponent(about)}`}>
              {words.common.severity[finding.severity]}: {wording.title}
            </Link>
            <br />
            {wording.say(finding)}
          </p>
        );
      })}
    </div>
  );
}
