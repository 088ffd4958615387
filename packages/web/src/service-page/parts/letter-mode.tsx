import type { Seen } from "@pinwright/engine";
import { useId, useState } from "react";
import { useFaults } from "../host.ts";
import { type ReadLetter, readLetter } from "../letter.ts";
import { GROUPS, type Group } from "../names.ts";

/** Takes what does not work over from a letter. */
export function LetterMode({ say }: { readonly say: (seen: Readonly<Record<string, Seen | null>>) => void }) {
  const { words, names } = useFaults();
  const [text, setText] = useState("");
  const [usual, setUsual] = useState<Group>("lamp");
  const [read, setRead] = useState<ReadLetter | null>(null);
  const id = useId();
  const take = (): void => {
    const found = readLetter(text, words.letterWords, names.functions, usual);
    setRead(found);
    say(found.seen);
  };
  return (
    <div className="ff-letter">
      <label htmlFor={id}>{words.letterHelp}</label>
      <textarea
        id={id}
        rows={4}
        value={text}
        placeholder={words.letterExample}
        onChange={(event) => setText(event.target.value)}
      />
      <label>
        {words.letterGroup}{" "}
        <select
          value={usual}
          onChange={(event) => setUsual(GROUPS.find((one) => one === event.target.value) ?? "lamp")}
        >
          {GROUPS.map((group) => (
            <option key={group} value={group}>
              {words.groups[group]}
            </option>
          ))}
        </select>
      </label>
      <button type="button" disabled={text.trim() === ""} onClick={take}>
        {words.letterTake}
      </button>
      <div role="status">
        {read !== null && <p>{words.letterTook(Object.keys(read.seen).length)}</p>}
        {read !== null && read.absent.length > 0 && (
          <p>
            {words.letterAbsent(
              read.absent.map(({ group, number }) => `${words.group[group]} ${number}`).join(", "),
            )}
          </p>
        )}
        {read?.unclear.map(({ group, number, names: all }) => (
          <p key={`${group} ${number}`}>
            {words.letterUnclear(`${words.group[group]} ${number}`, all.join("; "))}
          </p>
        ))}
        {read !== null && read.missed.length > 0 && <p>{words.letterMissed(read.missed.join("; "))}</p>}
      </div>
    </div>
  );
}
