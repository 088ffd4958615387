import { ActionIcon, Button } from "@mantine/core";
import { IconCheck, IconChevronDown, IconChevronUp, IconX } from "@tabler/icons-react";
import { useState } from "react";
import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { begin, nextStep, STEPS, type Step } from "./guide-state.ts";
import { useNoticing } from "./notice.ts";
import { changeGuide, keepGuide, useGuide } from "./use-guide.ts";
import "./guide.css";

const SECTION: Readonly<Record<Step, string>> = {
  move: "layout?id=sw.left",
  finding: "findings",
  pinboard: "harnesses",
  cell: "tables/devices",
  undo: "history",
  sheet: "sheets",
};

/** Beside the real sections: what to do next, and what was just done. */
export default function GuidePanel() {
  const words = useWords().guide;
  const { bookId } = useDesk();
  const state = useGuide();
  const [small, setSmall] = useState(false);
  useNoticing();
  if (state === null || !state.open || state.book !== bookId) return null;
  const step = nextStep(state);
  const before = state.done.at(-1);
  const number = step === null ? STEPS.length : STEPS.indexOf(step) + 1;
  return (
    <aside className="guide" aria-label={words.title}>
      <header>
        <b>{words.title}</b>
        <span className="dim">{words.at(number, STEPS.length)}</span>
        <ActionIcon
          variant="subtle"
          aria-label={small ? words.larger : words.smaller}
          aria-expanded={!small}
          onClick={() => setSmall(!small)}
        >
          {small ? <IconChevronUp size={18} /> : <IconChevronDown size={18} />}
        </ActionIcon>
        <ActionIcon
          variant="subtle"
          aria-label={words.leave}
          title={words.leave}
          onClick={() => changeGuide((now) => ({ ...now, open: false }))}
        >
          <IconX size={18} />
        </ActionIcon>
      </header>
      {!small && (
        <div aria-live="polite">
          {before !== undefined && (
            <p className="guide-done">
              <IconCheck size={16} aria-hidden /> {words.steps[before].seen}
            </p>
          )}
          {step === null ? (
            <>
              <h2>{words.finishedTitle}</h2>
              <p>{words.finished}</p>
              <div className="guide-buttons">
                <Button component={Link} href="/" size="compact-md">
                  {words.toTidewatch}
                </Button>
                <Button variant="default" size="compact-md" onClick={() => keepGuide(begin(bookId))}>
                  {words.again}
                </Button>
              </div>
            </>
          ) : (
            <>
              <h2>{words.steps[step].title}</h2>
              <p>{words.steps[step].text}</p>
              <Button
                component={Link}
                href={`/b/${bookId}/${SECTION[step]}`}
                variant="default"
                size="compact-md"
              >
                {words.go}
              </Button>
            </>
          )}
        </div>
      )}
    </aside>
  );
}
