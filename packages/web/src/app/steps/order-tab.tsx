import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { SectionFindings } from "../findings/section-findings.tsx";
import { useWords } from "../words.tsx";

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
      <SectionFindings findings={findings} none={own.noFindings} />
    </>
  );
}
