import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";

/** Ways into Wiring: lists of what is joined, and what flows there. */
export const WAYS = ["nets", "boards", "devices", "currents"] as const;
export type Way = (typeof WAYS)[number];

export function Ways({ current }: { readonly current: Way }) {
  const { wiring: words, shell } = useWords();
  const { bookId } = useDesk();
  return (
    <nav className="ways" aria-label={shell.sections.wiring}>
      {WAYS.map((one) => (
        <Link
          key={one}
          href={`/b/${bookId}/wiring/${one}`}
          aria-current={one === current ? "page" : undefined}
        >
          {words.ways[one]}
        </Link>
      ))}
    </nav>
  );
}
