import { sheetWords } from "@pinwright/words";
import { IconPrinter } from "@tabler/icons-react";
import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { useSpeech } from "../words.tsx";
import type { SheetKind } from "./sheet-kinds.ts";
import "./sheets.css";

/** Leads to the printing of the kinds of sheet that belong to what is shown. */
export function SheetLinks({
  title,
  kinds,
  machines,
}: {
  readonly title: string;
  readonly kinds: readonly SheetKind[];
  /** For how many machines they are made; absent: as usual. */
  readonly machines?: number;
}) {
  const { language } = useSpeech();
  const { bookId } = useDesk();
  const names = sheetWords(language).kinds;
  const address = (wanted: readonly SheetKind[]): string =>
    `/b/${bookId}/sheets?${new URLSearchParams({
      kinds: wanted.join(","),
      ...(machines === undefined ? {} : { machines: String(machines) }),
    })}`;
  return (
    <p className="sheet-links">
      <IconPrinter size={16} aria-hidden /> {title}
      {kinds.map((kind) => (
        <Link key={kind} href={address([kind])}>
          {names[kind]}
        </Link>
      ))}
    </p>
  );
}
