import { Button, Checkbox } from "@mantine/core";
import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { usePick, useWords } from "../words.tsx";
import { subjectAddress } from "./address.ts";
import type { Said } from "./chosen.ts";
import { Computation } from "./computation.tsx";
import { boundText } from "./numbers.ts";

/** One finding: its sentence, where to look, and what was decided about it. */
export function FindingRow({
  said,
  chosen,
  mayAccept,
  onChoose,
  onAccept,
  onReopen,
}: {
  readonly said: Said;
  readonly chosen: boolean;
  readonly mayAccept: boolean;
  readonly onChoose: (chosen: boolean) => void;
  readonly onAccept: () => void;
  readonly onReopen: () => void;
}) {
  const words = useWords().checks;
  const { finding, lapsed } = said.entry;
  return (
    <li className="finding">
      {mayAccept && finding.accepted === null ? (
        <Checkbox
          aria-label={`${words.choose}: ${said.sentence}`}
          checked={chosen}
          onChange={(event) => onChoose(event.currentTarget.checked)}
        />
      ) : (
        <span />
      )}
      <div className="words">
        {said.sentence}
        <Places said={said} />
        <Computation finding={finding} />
        {finding.accepted !== null && (
          <p className="bounds">
            {words.acceptedBy(finding.accepted.by || words.noName)}: {finding.accepted.reason}
            <Bounds said={said} />
          </p>
        )}
        {lapsed !== null && (
          <p className="bounds">
            <b className="amber-text">{words.lapsed(lapsed.by || words.noName)}</b>
            {": "}
            {lapsed.broken.map((bound) => boundText(words, bound)).join(words.or)}. {lapsed.reason}
          </p>
        )}
      </div>
      {mayAccept && (
        <div className="finding-actions">
          {finding.accepted === null ? (
            <Button variant="default" size="compact-sm" onClick={onAccept}>
              {words.accept}
            </Button>
          ) : (
            <Button variant="default" size="compact-sm" onClick={onAccept}>
              {words.change}
            </Button>
          )}
          {(finding.accepted !== null || lapsed !== null) && (
            <Button variant="default" size="compact-sm" onClick={onReopen}>
              {words.reopen}
            </Button>
          )}
        </div>
      )}
    </li>
  );
}

function Bounds({ said }: { readonly said: Said }) {
  const words = useWords().checks;
  const { bounds } = said.entry;
  if (bounds.length === 0) return null;
  return (
    <span style={{ display: "block" }}>
      {words.comesBack} {bounds.map((bound) => boundText(words, bound)).join(words.or)}.
    </span>
  );
}

function Places({ said }: { readonly said: Said }) {
  const { bookId } = useDesk();
  const { checks, shell } = useWords();
  const pick = usePick();
  const places = said.entry.subjects.flatMap((subject) => {
    const address = subjectAddress(bookId, subject);
    return address === null ? [] : [{ subject, address }];
  });
  if (places.length === 0) return null;
  const kinds = { ...shell.kinds, ...checks.kinds };
  return (
    <div className="places">
      <span className="dim">{checks.place}</span>
      {places.map(({ subject, address }) => {
        const label = pick(subject.label, subject.labelZh);
        const kind = subject.kind === null || subject.kind === "row" ? "" : kinds[subject.kind];
        return (
          <Link key={subject.id} href={address} title={`${kind} ${subject.id}`.trim()}>
            {label === "" ? `${kind} ${subject.id}` : `${kind} ${label}`}
          </Link>
        );
      })}
    </div>
  );
}
