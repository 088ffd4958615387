import { IconPrinter } from "@tabler/icons-react";
import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { serviceAddress } from "../../service/address.ts";
import { useWords } from "../../words.tsx";
import { certificatePath, cratePath, transportPath } from "./address.ts";
import { SheetLanguageChoice, useSheetLanguage } from "./sheet-language.tsx";
import "./sheets.css";

/** Leads to the sheets of one unit: its certificate, and of a machine the crate checklist. */
export function UnitSheets({ unit, isMachine }: { readonly unit: string; readonly isMachine: boolean }) {
  const { benchSheets: own, serviceBookApp } = useWords();
  const { bookId } = useDesk();
  const [language, setLanguage] = useSheetLanguage();
  return (
    <p className="record-sheets">
      <IconPrinter size={18} aria-hidden /> {own.title}
      <a href={certificatePath(unit, language)} target="_blank" rel="noreferrer">
        {own.certificate}
      </a>
      {isMachine && (
        <a href={cratePath(unit, language)} target="_blank" rel="noreferrer">
          {own.crate}
        </a>
      )}
      {isMachine && <Link href={serviceAddress(bookId, "book", { unit })}>{serviceBookApp.unitLink}</Link>}
      <SheetLanguageChoice language={language} set={setLanguage} />
    </p>
  );
}

/** Leads to the list of one transport; null: of all that is on the way. */
export function TransportSheet({
  book,
  transport,
}: {
  readonly book: string;
  readonly transport: string | null;
}) {
  const { benchSheets: own } = useWords();
  const [language, setLanguage] = useSheetLanguage();
  return (
    <p className="record-sheets">
      <IconPrinter size={18} aria-hidden /> {own.title}
      <a href={transportPath(book, transport, language)} target="_blank" rel="noreferrer">
        {transport === null ? own.transport : `${own.transport} ${transport}`}
      </a>
      <SheetLanguageChoice language={language} set={setLanguage} />
    </p>
  );
}
