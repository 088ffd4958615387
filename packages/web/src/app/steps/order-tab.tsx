import { findingWords } from "@pinwright/words";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { subjectAddress } from "../findings/address.ts";
import { usePick, useSpeech, useWords } from "../words.tsx";

/** The order in figures, and what is wrong with it: loops that nobody can assemble, screws that nobody can reach. */
export function OrderTab({
  figures,
  findings,
}: {
  readonly figures: ViewEntry<"stepFigures">;
  readonly findings: Entries<"stepFindings">;
}) {
  const words = useWords();
  const own = words.steps;
  const { bookId } = useDesk();
  const figure = (name: string, value: number, note: string) => (
    <div>
      <dt>{name}</dt>
      <dd>
        <b>{value}</b> <span className="dim">{note}</span>
      </dd>
    </div>
  );
  const fewest = figures.turnOvers === figures.fewestTurnOvers;
  return (
    <>
      <h2>{own.orderTitle}</h2>
      <p>
        {own.orderAbout}{" "}
        <Link href={`/b/${bookId}/tables/step_rules`}>{words.tableNames.tables.step_rules}</Link>
      </p>
      <dl className="plan-figures">
        {figure(own.steps, figures.steps, "")}
        {figure(
          own.turnOvers,
          figures.turnOvers,
          fewest ? own.fewestTurnOvers : own.atLeastTurnOvers(figures.fewestTurnOvers),
        )}
        {figure(own.boxChanges, figures.boxChanges, "")}
        {figure(own.bitChanges, figures.bitChanges, "")}
      </dl>
      <h3>{own.findings}</h3>
      {findings.size === 0 ? (
        <p className="dim">{own.noFindings}</p>
      ) : (
        <ul className="order-findings">
          {[...findings].map(([key, entry]) => (
            <OrderFinding key={key} entry={entry} />
          ))}
        </ul>
      )}
    </>
  );
}

function OrderFinding({ entry: { finding, subjects } }: { readonly entry: ViewEntry<"stepFindings"> }) {
  const { words, language } = useSpeech();
  const { bookId } = useDesk();
  const pick = usePick();
  const wording = findingWords(language, finding.rule);
  const isLoop = finding.rule === "order-loop";
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
              {i > 0 && (isLoop ? " → " : ", ")}
              {address === null ? name : <Link href={address}>{name}</Link>}
            </span>
          );
        })}
      </p>
      <p className="dim">{wording.todo}</p>
    </li>
  );
}
