import { TextInput } from "@mantine/core";
import { memo, useDeferredValue, useEffect, useId, useMemo, useRef, useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { usePick, useWords } from "../words.tsx";

type Step = ViewEntry<"stepLines">;

const matching = (steps: readonly Step[], wanted: string): readonly Step[] =>
  steps.filter(({ id, number, label, labelZh }) =>
    [id, String(number), label.toLowerCase(), labelZh].some((one) => one.includes(wanted)),
  );

/** The steps in the order of assembly; one is picked by pointer, or by arrow keys and Enter. */
export const StepList = memo(function StepList({
  steps,
  currentId,
  choose,
}: {
  readonly steps: readonly Step[];
  readonly currentId: string | null;
  readonly choose: (id: string) => void;
}) {
  const words = useWords().screws;
  const pick = usePick();
  const listId = useId();
  const [text, setText] = useState("");
  const [active, setActive] = useState<string | null>(null);
  const rows = useRef<HTMLDivElement>(null);
  const typed = text.trim().toLowerCase();
  const wanted = useDeferredValue(typed);
  const found = useMemo(() => matching(steps, wanted), [steps, wanted]);
  const at = Math.max(
    0,
    found.findIndex((step) => step.id === (active ?? currentId)),
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: another step is brought into sight
  useEffect(() => {
    setActive(null);
    rows.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: "nearest" });
  }, [currentId]);
  const pressed = (event: React.KeyboardEvent): void => {
    const by = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
    if (by !== 0) {
      const next = Math.min(Math.max(at + by, 0), found.length - 1);
      setActive(found[next]?.id ?? null);
      rows.current?.children[next]?.scrollIntoView({ block: "nearest" });
    } else if (event.key === "Enter") {
      // Whoever types fast presses Enter before the list has followed: what was typed counts.
      const one = wanted === typed ? found[at] : matching(steps, typed)[0];
      if (one !== undefined) choose(one.id);
    } else return;
    event.preventDefault();
  };
  return (
    <section className="layout-list step-list" aria-label={words.steps}>
      <TextInput
        role="combobox"
        aria-label={words.findStep}
        aria-expanded
        aria-controls={listId}
        aria-activedescendant={found.length > 0 ? `${listId}-${at}` : undefined}
        placeholder={words.findStep}
        size="sm"
        value={text}
        onChange={(event) => {
          setText(event.currentTarget.value);
          setActive(null);
        }}
        onKeyDown={pressed}
      />
      <div role="listbox" id={listId} aria-label={words.steps} className="rows" ref={rows}>
        {found.map((step, i) => (
          <StepRow
            key={step.id}
            id={`${listId}-${i}`}
            step={step}
            title={pick(step.label, step.labelZh) || step.id}
            selected={step.id === currentId}
            active={i === at}
            choose={choose}
          />
        ))}
      </div>
      {found.length === 0 && <p className="dim">{words.noSteps(text)}</p>}
    </section>
  );
});

const StepRow = memo(function StepRow({
  id,
  step,
  title,
  selected,
  active,
  choose,
}: {
  readonly id: string;
  readonly step: Step;
  readonly title: string;
  readonly selected: boolean;
  readonly active: boolean;
  readonly choose: (id: string) => void;
}) {
  const words = useWords();
  const screws = step.fastenerIds.length + step.recheckIds.length;
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the search box that has the focus hears the keys
    <div
      role="option"
      id={id}
      tabIndex={-1}
      aria-selected={selected}
      className={active ? "row active" : "row"}
      title={step.id}
      onClick={() => choose(step.id)}
    >
      <span className="step-number">{step.number}</span>
      <span className="what">
        <b>{title}</b>
        <span className="dim">
          {words.steps.minutes(step.seconds)}
          {screws > 0 ? ` · ${words.screws.screws(screws)}` : ` · ${words.steps.kinds[step.kind]}`}
          {step.panelId !== null && ` · ${words.common.side[step.side]}`}
        </span>
      </span>
    </div>
  );
});
