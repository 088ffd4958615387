import { readSheetCode } from "@pinwright/contract";
import { useSearchParams } from "wouter";
import { PrintCard } from "../../app/print/print-card.tsx";
import { useWords } from "../../app/words.tsx";
import { FloorHead } from "../shell/head.tsx";

/** Where the floor shows whether a print holds. */
export const printAddress = (text: string): string => `/floor/print?${new URLSearchParams({ code: text })}`;

/** Whether a print that was scanned at the bench still holds. */
export function FloorPrintPage() {
  const { printPage } = useWords();
  const [params] = useSearchParams();
  const code = readSheetCode(params.get("code") ?? "");
  return (
    <main className="floor-page">
      <FloorHead back="/floor">
        <b>{printPage.title}</b>
      </FloorHead>
      <div className="floor-body">{code === null ? <p>{printPage.wrong}</p> : <PrintCard code={code} />}</div>
    </main>
  );
}
