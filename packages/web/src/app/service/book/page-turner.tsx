import { ActionIcon, NumberInput } from "@mantine/core";
import { IconChevronLeft, IconChevronRight } from "@tabler/icons-react";
import { useEffect, useState } from "react";
import { useWords } from "../../words.tsx";

/** Next, previous, and any page by its number. */
export function PageTurner({
  page,
  pages,
  onOpen,
}: {
  /** Counted from 1. */
  readonly page: number;
  readonly pages: number;
  readonly onOpen: (page: number) => void;
}) {
  const { serviceBookApp: own } = useWords();
  const [typed, setTyped] = useState<number | string>(page);
  useEffect(() => setTyped(page), [page]);
  const go = (): void => {
    const to = Number(typed);
    if (Number.isInteger(to) && to >= 1 && to <= pages) onOpen(to);
    else setTyped(page);
  };
  return (
    <nav className="book-turner" aria-label={own.goTo}>
      <ActionIcon
        variant="default"
        size="lg"
        aria-label={own.previous}
        title={own.previous}
        disabled={page <= 1}
        onClick={() => onOpen(page - 1)}
      >
        <IconChevronLeft size={18} />
      </ActionIcon>
      <NumberInput
        aria-label={own.goTo}
        hideControls
        min={1}
        max={pages}
        value={typed}
        onChange={setTyped}
        onBlur={go}
        onKeyDown={({ key }) => key === "Enter" && go()}
        w={72}
      />
      <span role="status">{own.pageOf(page, pages)}</span>
      <ActionIcon
        variant="default"
        size="lg"
        aria-label={own.next}
        title={own.next}
        disabled={page >= pages}
        onClick={() => onOpen(page + 1)}
      >
        <IconChevronRight size={18} />
      </ActionIcon>
    </nav>
  );
}
