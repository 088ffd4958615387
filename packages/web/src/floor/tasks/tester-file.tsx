import { useState } from "react";
import { useWords } from "../../app/words.tsx";
import { groupsOfText } from "./measured.ts";

/** Takes what a tester wrote: its file, or its text. */
export function TesterFile({
  placeIds,
  read,
}: {
  readonly placeIds: readonly string[];
  readonly read: (groups: readonly number[]) => void;
}) {
  const own = useWords().floor.continuity;
  const [text, setText] = useState("");
  const [unknown, setUnknown] = useState<readonly string[]>([]);
  const take = (content: string): void => {
    const found = groupsOfText(placeIds, content);
    setUnknown(found.unknown);
    if (found.unknown.length === 0 && content.trim() !== "") read(found.groups);
  };
  return (
    <details className="floor-file">
      <summary>{own.file}</summary>
      <p className="dim">{own.fileHint}</p>
      <label>
        {own.file}
        <input
          type="file"
          accept=".txt,.csv,text/plain"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file !== undefined)
              void file.text().then((content) => {
                setText(content);
                take(content);
              });
          }}
        />
      </label>
      <label>
        {own.paste}
        <textarea value={text} rows={5} onChange={(event) => setText(event.currentTarget.value)} />
      </label>
      <button type="button" className="floor-plain" onClick={() => take(text)}>
        {own.read}
      </button>
      {unknown.length > 0 && (
        <p role="alert" className="error-text">
          {own.unknownPlace(unknown.slice(0, 6).join(", "))}
        </p>
      )}
    </details>
  );
}
