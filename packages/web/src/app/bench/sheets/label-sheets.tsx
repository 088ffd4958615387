import { LABEL_HEIGHT_MM, LABEL_WIDTH_MM } from "@pinwright/contract";
import { IconTag } from "@tabler/icons-react";
import { useState } from "react";
import { useWords } from "../../words.tsx";
import { isPaper, type LabelPaper, labelsPath, MOST_UNITS, USUAL_PAPER } from "./address.ts";
import { SheetLanguageChoice, useSheetLanguage } from "./sheet-language.tsx";
import "./sheets.css";

const KEY = "pinwright.label-paper";
const KINDS = ["a4", "roll"] as const;

/** The paper that labels were printed on last on this device; where a sheet was begun is asked anew. */
function keptPaper(): LabelPaper {
  const [kind, widthMm = "", heightMm = ""] = (localStorage.getItem(KEY) ?? "").split(" ");
  const found = KINDS.find((one) => one === kind);
  const paper = { ...USUAL_PAPER, ...(found === undefined ? {} : { kind: found, widthMm, heightMm }) };
  return isPaper({ ...paper, kind: "roll" }) ? paper : USUAL_PAPER;
}

/** Leads to the labels of some units of a book, in the order given, on the paper that is there. */
export function LabelSheets({ book, units }: { readonly book: string; readonly units: readonly string[] }) {
  const { benchSheets: own } = useWords();
  const [language, setLanguage] = useSheetLanguage();
  const [paper, setPaper] = useState(keptPaper);
  const put = (to: Partial<LabelPaper>): void => {
    const next = { ...paper, ...to };
    setPaper(next);
    if (isPaper(next)) localStorage.setItem(KEY, [next.kind, next.widthMm, next.heightMm].join(" "));
  };
  const problem =
    units.length === 0
      ? own.nothing
      : units.length > MOST_UNITS
        ? own.tooMany(MOST_UNITS)
        : isPaper(paper)
          ? ""
          : paper.kind === "roll"
            ? own.wrongSize(
                `${LABEL_WIDTH_MM.least} × ${LABEL_HEIGHT_MM.least} ${own.mm}`,
                `${LABEL_WIDTH_MM.most} × ${LABEL_HEIGHT_MM.most} ${own.mm}`,
              )
            : own.startHint;
  return (
    <div className="record-sheets">
      <IconTag size={18} aria-hidden />
      {problem === "" ? (
        <a href={labelsPath(book, units, paper, language)} target="_blank" rel="noreferrer">
          {own.labels(units.length)}
        </a>
      ) : (
        <span role="status">{problem}</span>
      )}
      <select
        aria-label={own.paper}
        value={paper.kind}
        onChange={({ currentTarget: { value } }) => put({ kind: KINDS.find((one) => one === value) ?? "a4" })}
      >
        {KINDS.map((kind) => (
          <option key={kind} value={kind}>
            {own.papers[kind]}
          </option>
        ))}
      </select>
      {paper.kind === "a4" ? (
        <Figure
          label={own.start}
          unit=""
          value={paper.start}
          put={(start) => put({ start })}
          title={own.startHint}
        />
      ) : (
        <>
          <Figure label={own.width} unit={own.mm} value={paper.widthMm} put={(widthMm) => put({ widthMm })} />
          <Figure
            label={own.height}
            unit={own.mm}
            value={paper.heightMm}
            put={(heightMm) => put({ heightMm })}
          />
        </>
      )}
      <SheetLanguageChoice language={language} set={setLanguage} />
    </div>
  );
}

function Figure({
  label,
  unit,
  value,
  put,
  title,
}: {
  readonly label: string;
  readonly unit: string;
  readonly value: string;
  readonly put: (to: string) => void;
  readonly title?: string;
}) {
  return (
    <label title={title}>
      {label}
      <input
        inputMode="decimal"
        size={4}
        maxLength={6}
        value={value}
        onChange={({ currentTarget }) => put(currentTarget.value.replace(",", "."))}
      />
      {unit}
    </label>
  );
}
