import { NativeSelect } from "@mantine/core";
import { sheetWords } from "@pinwright/words";
import { useState } from "react";
import { useView } from "../book/desk.tsx";
import { SHEET_KINDS } from "../sheets/sheet-kinds.ts";
import { useSpeech } from "../words.tsx";
import { PaperView } from "./paper-view.tsx";
import { useSheet } from "./use-sheet.ts";

/** Sheets of a harness on the screen, page by page, as they would print now. */
export function SheetsTab({ harnessId }: { readonly harnessId: string }) {
  const { words, language } = useSpeech();
  const kinds = sheetWords(language).kinds;
  const lists = SHEET_KINDS.filter((kind) => kind !== "pinboard");
  const [kind, setKind] = useState(lists[0] ?? "from-to");
  const [at, setAt] = useState(0);
  const wires = useView("harnessWires", harnessId);
  const { sheet, stale } = useSheet(harnessId, kind, [wires]);
  const pages = sheet?.pages ?? [];
  const page = pages[Math.min(at, pages.length - 1)];
  const tools = (
    <>
      <NativeSelect
        aria-label={words.prints.kinds}
        value={kind}
        onChange={(event) => {
          setKind(lists.find((one) => one === event.currentTarget.value) ?? kind);
          setAt(0);
        }}
        data={lists.map((value) => ({ value, label: kinds[value] }))}
      />
      {pages.length > 1 && (
        <NativeSelect
          aria-label={sheetWords(language).titleBlock.sheet}
          value={String(Math.min(at, pages.length - 1))}
          onChange={(event) => setAt(Number(event.currentTarget.value))}
          data={pages.map((_, i) => ({
            value: String(i),
            label: `${sheetWords(language).titleBlock.sheet} ${i + 1} / ${pages.length}`,
          }))}
        />
      )}
      {stale && <span className="dim">{words.harnesses.pinboard.drawing}</span>}
    </>
  );
  if (page === undefined) return <p className="dim">{words.harnesses.pinboard.drawing}</p>;
  return (
    <PaperView
      label={sheet?.title ?? kinds[kind]}
      widthMm={page.widthMm}
      heightMm={page.heightMm}
      svg={page.svg}
      tools={tools}
    />
  );
}
