import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";

/** What belongs here, and where it is put in. */
export function NoPanels() {
  const words = useWords();
  const { bookId } = useDesk();
  return (
    <>
      <h2>{words.shell.sections.panels}</h2>
      <p>{words.panels.empty}</p>
      <p className="way-links">
        {(["panels", "panel_sizes", "stock_sheets"] as const).map((table) => (
          <Link key={table} href={`/b/${bookId}/tables/${table}`}>
            {words.tableNames.tables[table]}
          </Link>
        ))}
      </p>
    </>
  );
}
