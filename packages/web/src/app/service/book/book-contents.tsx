import type { ServiceBookGuide } from "@pinwright/contract";
import { useWords } from "../../words.tsx";

type Line = ServiceBookGuide["outline"][number];

interface Part {
  readonly line: Line;
  readonly parts: readonly Part[];
}

/** Lines under those of the next higher level before them. */
function nested(outline: readonly Line[]): readonly Part[] {
  const top: { line: Line; parts: Part[] }[] = [];
  const open: { line: Line; parts: Part[] }[] = [];
  for (const line of outline) {
    const part = { line, parts: [] };
    while ((open.at(-1)?.line.level ?? 0) >= line.level) open.pop();
    (open.at(-1)?.parts ?? top).push(part);
    open.push(part);
  }
  return top;
}

/** The contents of a book; chapters are shut but for the one that is read. */
export function BookContents({
  outline,
  page,
  onOpen,
}: {
  readonly outline: readonly Line[];
  /** Page that is shown, counted from 0. */
  readonly page: number;
  /** Page to open, counted from 1. */
  readonly onOpen: (page: number) => void;
}) {
  const { serviceBookApp: own } = useWords();
  const parts = nested(outline);
  const current = outline.findLast((line) => line.page <= page);
  return (
    <nav className="book-contents" aria-label={own.contents}>
      <h4>{own.contents}</h4>
      {parts.length === 0 ? (
        <p className="dim">{own.noContents}</p>
      ) : (
        <Parts {...{ parts, current, onOpen }} />
      )}
    </nav>
  );
}

const holds = (part: Part, line: Line | undefined): boolean =>
  part.line === line || part.parts.some((one) => holds(one, line));

function Parts({
  parts,
  current,
  onOpen,
}: {
  readonly parts: readonly Part[];
  readonly current: Line | undefined;
  readonly onOpen: (page: number) => void;
}) {
  return (
    <ol>
      {parts.map((part, i) => {
        const { line } = part;
        const button = (
          <button
            type="button"
            className="book-line"
            aria-current={line === current ? "location" : undefined}
            onClick={() => onOpen(line.page + 1)}
          >
            <span>{line.title}</span> <span className="dim">{line.page + 1}</span>
          </button>
        );
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a finished book never changes
          <li key={i}>
            {button}
            {part.parts.length > 0 && (holds(part, current) || part.line.level > 1) && (
              <Parts parts={part.parts} current={current} onOpen={onOpen} />
            )}
          </li>
        );
      })}
    </ol>
  );
}
