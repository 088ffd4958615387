import { useState } from "react";
import { useWords } from "../../app/words.tsx";
import { useBench } from "./bench-context.tsx";

/** Something that is to be known of the units at the bench: tapped, or typed if it must be. */
export function NotePage() {
  const { floor } = useWords();
  const own = floor.note;
  const { unitIds, record, show } = useBench();
  const [text, setText] = useState("");
  const keep = async (says: string): Promise<void> => {
    if (await record(unitIds.map((unit) => ({ kind: "noted", unit, says })))) show("");
  };
  return (
    <>
      <div className="floor-body">
        <h1>{own.title}</h1>
        <div className="floor-tiles">
          {own.ready.map((says) => (
            <button key={says} type="button" onClick={() => void keep(says)}>
              {says}
            </button>
          ))}
        </div>
        <label className="floor-field">
          {own.text}
          <textarea
            value={text}
            rows={3}
            maxLength={2000}
            onChange={(event) => setText(event.currentTarget.value)}
          />
        </label>
      </div>
      <footer className="floor-foot">
        <button type="button" className="floor-plain" onClick={() => show("")}>
          {floor.back}
        </button>
        <button
          type="button"
          className="floor-main"
          disabled={text.trim() === ""}
          onClick={() => void keep(text.trim())}
        >
          {own.keep}
        </button>
      </footer>
    </>
  );
}
