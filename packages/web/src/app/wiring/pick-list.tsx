import { TextInput } from "@mantine/core";
import { IconSearch } from "@tabler/icons-react";
import { type ReactNode, useEffect, useRef, useState } from "react";
import { Link } from "wouter";
import { useWords } from "../words.tsx";

/** One line that can be chosen. */
export interface PickLine {
  readonly id: string;
  readonly href: string;
  readonly title: string;
  readonly detail: ReactNode;
  /** What the filter looks into. */
  readonly text: string;
}

/** A list with a filter; the chosen line is marked and in sight. */
export function PickList({
  label,
  lines,
  currentId,
  tools,
}: {
  readonly label: string;
  readonly lines: readonly PickLine[];
  readonly currentId: string | null;
  readonly tools?: ReactNode;
}) {
  const words = useWords().lists;
  const [filter, setFilter] = useState("");
  const list = useRef<HTMLUListElement>(null);
  const asked = filter.toLowerCase().split(/\s+/).filter(Boolean);
  const shown = lines.filter((line) => {
    const text = line.text.toLowerCase();
    return asked.every((word) => text.includes(word));
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked for again whenever another line is chosen
  useEffect(() => {
    list.current?.querySelector('[aria-current="true"]')?.scrollIntoView({ block: "nearest" });
  }, [currentId]);
  return (
    <nav className="pick-list" aria-label={label}>
      <div className="pick-tools">
        <TextInput
          aria-label={words.filter}
          placeholder={words.filterHint}
          leftSection={<IconSearch size={16} />}
          value={filter}
          onChange={(event) => setFilter(event.currentTarget.value)}
          style={{ flex: 1, minWidth: 140 }}
        />
        {tools}
        <span className="dim" role="status">
          {words.shown(shown.length, lines.length)}
        </span>
      </div>
      <ul ref={list}>
        {shown.map((line) => (
          <li key={line.id}>
            <Link href={line.href} aria-current={line.id === currentId ? "true" : undefined}>
              <b>{line.title}</b>
              <span className="dim">{line.detail}</span>
            </Link>
          </li>
        ))}
      </ul>
      {shown.length === 0 && lines.length > 0 && <p className="dim">{words.none}</p>}
    </nav>
  );
}
