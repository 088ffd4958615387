import { Button } from "@mantine/core";
import { findingWords } from "@pinwright/words";
import { useState } from "react";
import { useSpeech } from "../words.tsx";
import type { FindingGroup, Said } from "./chosen.ts";
import { FindingRow } from "./finding-row.tsx";
import { SeverityText } from "./severity-text.tsx";

/** Findings of a group that are shown before more are asked for. */
const FIRST = 20;

/** All findings of one rule: why it matters, what to do, and each case. */
export function FindingGroupBlock({
  group,
  mayAccept,
  accept,
  reopen,
}: {
  readonly group: FindingGroup;
  readonly mayAccept: boolean;
  readonly accept: (said: readonly Said[]) => void;
  readonly reopen: (said: Said) => void;
}) {
  const { words, language } = useSpeech();
  const { checks } = words;
  const [most, setMost] = useState(FIRST);
  const [chosenKeys, setChosenKeys] = useState<ReadonlySet<string>>(new Set());
  const rule = findingWords(language, group.rule);
  const shown = group.said.slice(0, most);
  const open = shown.filter(({ entry }) => entry.finding.accepted === null);
  const chosen = open.filter(({ key }) => chosenKeys.has(key));
  const choose = (key: string, on: boolean) =>
    setChosenKeys(new Set(on ? [...chosenKeys, key] : [...chosenKeys].filter((one) => one !== key)));
  return (
    <section className="finding-group" data-severity={group.severity} data-rule={group.rule}>
      <header>
        <h3>
          <SeverityText severity={group.severity} /> {rule.title}{" "}
          <span className="dim">{group.said.length}</span>
        </h3>
        {mayAccept && open.length > 1 && (
          <div className="finding-actions">
            <Button
              variant="subtle"
              size="compact-sm"
              onClick={() => setChosenKeys(new Set(open.map(({ key }) => key)))}
            >
              {checks.chooseAll}
            </Button>
            {chosen.length > 0 && (
              <Button size="compact-sm" onClick={() => accept(chosen)}>
                {checks.acceptChosen(chosen.length)}
              </Button>
            )}
          </div>
        )}
        <dl>
          {rule.why !== "" && (
            <>
              <dt>{checks.why}</dt>
              <dd>{rule.why}</dd>
            </>
          )}
          {rule.todo !== "" && (
            <>
              <dt>{checks.todo}</dt>
              <dd>{rule.todo}</dd>
            </>
          )}
        </dl>
      </header>
      <ul>
        {shown.map((said) => (
          <FindingRow
            key={said.key}
            said={said}
            chosen={chosenKeys.has(said.key)}
            mayAccept={mayAccept}
            onChoose={(on) => choose(said.key, on)}
            onAccept={() => accept([said])}
            onReopen={() => reopen(said)}
          />
        ))}
      </ul>
      {group.said.length > most && (
        <Button variant="subtle" onClick={() => setMost(most + 100)}>
          {checks.more(Math.min(100, group.said.length - most))}
        </Button>
      )}
    </section>
  );
}
