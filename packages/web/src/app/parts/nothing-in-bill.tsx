import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";

/** What belongs into a bill, and where it is put in. */
export function NothingInBill() {
  const words = useWords();
  const { bookId } = useDesk();
  return (
    <>
      <h2>{words.parts.billTitle}</h2>
      <p>{words.parts.empty}</p>
      <p className="way-links">
        {(["parts", "bom", "device_types", "board_types", "mechanism_types"] as const).map((table) => (
          <Link key={table} href={`/b/${bookId}/tables/${table}`}>
            {words.tableNames.tables[table]}
          </Link>
        ))}
      </p>
    </>
  );
}
