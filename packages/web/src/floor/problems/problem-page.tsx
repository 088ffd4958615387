import type { ProblemAbout } from "@pinwright/contract";
import { useState } from "react";
import { useSearchParams } from "wouter";
import { useDesk } from "../../app/book/desk.tsx";
import { useWords } from "../../app/words.tsx";
import { PhotoTaken, TakePhoto } from "../defects/photo.tsx";
import { useDevice } from "../device.tsx";
import { madeUp, sha256 } from "../outbox/outbox.ts";
import { useBench } from "../tasks/bench-context.tsx";

/** Something is wrong with the drawing or the part, not with this unit: what, about what, and a photo. */
export function ProblemPage() {
  const { floor, serviceProblems } = useWords();
  const own = serviceProblems.floor;
  const { bookId } = useDesk();
  const { unitIds, what, type, name, states, record, show } = useBench();
  const [search] = useSearchParams();
  const { store } = useDevice();
  const [about, setAbout] = useState<ProblemAbout | null>(null);
  const [text, setText] = useState("");
  const [photo, setPhoto] = useState<Blob | null>(null);
  const step = search.get("step");
  const whole: ProblemAbout =
    what === "machine" ? { kind: "machine", id: "machine" } : { kind: what, id: type };
  const [unit = ""] = unitIds;
  const run = states.get(unit)?.begun?.run;
  const keep = async (says: string): Promise<void> => {
    const picture = photo === null ? null : await sha256(photo);
    if (photo !== null && picture !== null) await store.keepPicture(picture, photo);
    const kept = await record([
      {
        ...{ kind: "problem", problem: madeUp("pb"), book: bookId, from: "build", says, seenOn: unit },
        about: [about ?? whole],
        ...(run === undefined ? {} : { run }),
        ...(picture === null ? {} : { picture }),
      },
    ]);
    if (kept) show("");
  };
  return about === null && step !== null ? (
    <>
      <div className="floor-body">
        <h1>{own.about}</h1>
        <div className="floor-tiles">
          <button type="button" onClick={() => setAbout({ kind: "step", id: step })}>
            {own.step}
          </button>
          <button type="button" onClick={() => setAbout(whole)}>
            {what === "machine" ? own.whole : name}
          </button>
        </div>
      </div>
      <footer className="floor-foot">
        <button type="button" className="floor-plain" onClick={() => show("")}>
          {floor.back}
        </button>
      </footer>
    </>
  ) : (
    <>
      <div className="floor-body">
        <h1>
          {own.says}{" "}
          <small className="dim">
            {(about ?? whole).kind === "step" ? own.step : what === "machine" ? own.whole : name}
          </small>
        </h1>
        <div className="floor-tiles">
          {own.ready.map((says) => (
            <button key={says} type="button" aria-pressed={says === text} onClick={() => setText(says)}>
              {says}
            </button>
          ))}
        </div>
        <label className="floor-field">
          {own.words}
          <textarea
            value={text}
            rows={2}
            maxLength={2000}
            onChange={(event) => setText(event.currentTarget.value)}
          />
        </label>
        {photo !== null && <PhotoTaken photo={photo} />}
      </div>
      <footer className="floor-foot">
        <button type="button" className="floor-plain" onClick={() => show("")}>
          {floor.back}
        </button>
        <TakePhoto taken={photo !== null} setPhoto={setPhoto} />
        <button
          type="button"
          className="floor-main"
          disabled={text.trim() === ""}
          onClick={() => void keep(text.trim())}
        >
          {own.record}
        </button>
      </footer>
    </>
  );
}
