import { TextInput } from "@mantine/core";
import { memo, useDeferredValue, useId, useMemo, useState } from "react";
import { usePick, useWords } from "../words.tsx";
import type { Scene, Target } from "./scene.ts";

const MOST = 200;
const ORDER: Readonly<Record<string, number>> = {
  boards: 0,
  mechanisms: 1,
  devices: 2,
  inlines: 3,
  fasteners: 4,
  cutouts: 5,
  waypoints: 6,
  lanes: 7,
};

const matching = (targets: readonly Target[], text: string): readonly Target[] =>
  targets.filter(({ id, label, labelZh }) =>
    [id, label, labelZh].some((one) => one.toLowerCase().includes(text)),
  );

/** Everything on this side by name: what a pointer does on the drawing, the keyboard can do here. */
export const ItemList = memo(function ItemList({
  scene,
  selected,
  choose,
}: {
  readonly scene: Scene;
  readonly selected: readonly string[];
  /** Selects, and brings into sight. */
  readonly choose: (id: string, add: boolean) => void;
}) {
  const words = useWords();
  const pick = usePick();
  const own = words.layout.list;
  const listId = useId();
  const [text, setText] = useState("");
  const [active, setActive] = useState(0);
  const typed = text.trim().toLowerCase();
  const wanted = useDeferredValue(typed);
  const sorted = useMemo(
    () =>
      [...scene.targets.values()].sort(
        (a, b) => (ORDER[a.layer] ?? 9) - (ORDER[b.layer] ?? 9) || (a.id < b.id ? -1 : 1),
      ),
    [scene],
  );
  const found = useMemo(() => matching(sorted, wanted), [sorted, wanted]);
  const shown = found.slice(0, MOST);
  const at = Math.min(active, Math.max(shown.length - 1, 0));
  const step = (by: number): void => {
    const next = Math.min(Math.max(at + by, 0), shown.length - 1);
    setActive(next);
    document.getElementById(`${listId}-${next}`)?.scrollIntoView({ block: "nearest" });
  };
  const pressed = (event: React.KeyboardEvent): void => {
    if (event.key === "ArrowDown") step(1);
    else if (event.key === "ArrowUp") step(-1);
    else if (event.key === "Enter") {
      // Whoever types fast presses Enter before the list has followed: what was typed counts.
      const one = wanted === typed ? shown[at] : matching(sorted, typed)[0];
      if (one !== undefined) choose(one.id, event.shiftKey);
    } else return;
    event.preventDefault();
  };
  const chosen = new Set(selected);
  return (
    <section className="layout-list" aria-label={own.title}>
      <TextInput
        role="combobox"
        aria-label={own.search}
        aria-expanded
        aria-controls={listId}
        aria-activedescendant={shown.length > 0 ? `${listId}-${at}` : undefined}
        placeholder={own.search}
        title={own.hint}
        size="sm"
        value={text}
        onChange={(event) => {
          setText(event.currentTarget.value);
          setActive(0);
        }}
        onKeyDown={pressed}
      />
      <div role="listbox" id={listId} aria-label={own.title} aria-multiselectable className="rows">
        {shown.map((target, i) => (
          <Row
            key={target.id}
            id={`${listId}-${i}`}
            target={target}
            label={pick(target.label, target.labelZh)}
            kind={words.layout.kinds[target.layer]}
            selected={chosen.has(target.id)}
            active={i === at}
            choose={choose}
          />
        ))}
      </div>
      {found.length > shown.length && <p className="dim">{own.more(found.length - shown.length)}</p>}
      {sorted.length === 0 && <p className="dim">{own.empty}</p>}
      {sorted.length > 0 && found.length === 0 && <p className="dim">{own.none(text)}</p>}
    </section>
  );
});

const Row = memo(function Row({
  id,
  target,
  label,
  kind,
  selected,
  active,
  choose,
}: {
  readonly id: string;
  readonly target: Target;
  readonly label: string;
  readonly kind: string;
  readonly selected: boolean;
  readonly active: boolean;
  readonly choose: (id: string, add: boolean) => void;
}) {
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the search box that has the focus hears the keys
    <div
      role="option"
      id={id}
      tabIndex={-1}
      aria-selected={selected}
      className={active ? "row active" : "row"}
      onClick={(event) => choose(target.id, event.shiftKey || event.ctrlKey || event.metaKey)}
    >
      <span className={`swatch ${target.layer}`} aria-hidden />
      <span className="what">
        <b>{label !== "" && label !== target.id ? label : target.id}</b>
        <span className="dim">
          {kind}
          {label !== "" && label !== target.id ? `, ${target.id}` : ""}
        </span>
      </span>
    </div>
  );
});
