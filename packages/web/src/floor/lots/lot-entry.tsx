import { useState } from "react";
import { useWords } from "../../app/words.tsx";
import { CameraScan } from "../shell/camera.tsx";
import { lotInCode } from "../shell/scan.ts";
import { useScanner } from "../shell/use-scanner.ts";

/** Which lot a part is of: the last one with one tap, or scanned, or typed. */
export function LotEntry({
  name,
  partId,
  last,
  take,
  leave,
}: {
  readonly name: string;
  readonly partId: string;
  readonly last: string | null;
  readonly take: (lot: string) => void;
  readonly leave: () => void;
}) {
  const { floor, floorBench } = useWords();
  const own = floorBench.lots;
  const [text, setText] = useState("");
  const [says, setSays] = useState("");
  const heard = (code: string): void => {
    const { lot, part } = lotInCode(code);
    // The wrong bag is told before its lot is taken; a second scan of it takes it all the same.
    if (part !== null && part !== partId && text !== lot) {
      setText(lot);
      setSays(own.otherPart(part));
    } else take(lot);
  };
  useScanner(heard);
  return (
    <form
      className="floor-body floor-lot"
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim() !== "") take(text.trim());
      }}
    >
      <div className="floor-title">
        <h1>{own.which(name)}</h1>
        <CameraScan scanned={heard} />
      </div>
      {last !== null && (
        <button type="button" className="floor-main floor-wide" onClick={() => take(last)}>
          {own.same(last)}
        </button>
      )}
      <p>{own.how}</p>
      <p role="alert" className="error-text">
        {says}
      </p>
      <label className="floor-field">
        {own.type}
        <input
          value={text}
          maxLength={60}
          autoCapitalize="characters"
          autoComplete="off"
          onChange={(event) => setText(event.currentTarget.value)}
        />
      </label>
      <div className="floor-buttons">
        <button type="button" className="floor-plain" onClick={leave}>
          {floor.back}
        </button>
        <button type="submit" className="floor-main" disabled={text.trim() === ""}>
          {own.keep}
        </button>
      </div>
    </form>
  );
}
