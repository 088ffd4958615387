import { useState } from "react";
import { useView } from "../../app/book/desk.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import { LeadForm } from "../gate/lead-form.tsx";
import { useBench } from "../tasks/bench-context.tsx";

/** Parts that are listed; whoever wants another types more of its name. */
const MOST = 24;

/** Another part instead of one: what the book allows with one tap; anything else is a concession, which a lead gives. */
export function InsteadPage({
  partId,
  name,
  leave,
}: {
  readonly partId: string;
  readonly name: string;
  readonly leave: () => void;
}) {
  const { floor, floorBench } = useWords();
  const own = floorBench.alternates;
  const pick = usePick();
  const { unitIds, record } = useBench();
  const parts = useView("floorParts", null);
  const [text, setText] = useState("");
  const [conceded, setConceded] = useState<string | null>(null);
  const nameOf = (id: string): string => {
    const part = parts?.get(id);
    return part === undefined ? id : pick(part.label, part.labelZh) || id;
  };
  if (conceded !== null)
    return (
      <LeadForm
        title={own.give(nameOf(conceded), name)}
        reasons={own.reasons}
        bodiesOf={(why) =>
          unitIds.map((unit) => ({
            ...{ kind: "alternate" as const, unit, part: partId, instead: conceded },
            ...{ allowed: "concession" as const, why },
          }))
        }
        done={leave}
        leave={() => setConceded(null)}
      />
    );
  const allowed = parts?.get(partId)?.instead ?? [];
  const take = async (instead: string, why: string): Promise<void> => {
    const kept = await record(
      unitIds.map((unit) => ({
        ...{ kind: "alternate" as const, unit, part: partId, instead, allowed: "book" as const, why },
      })),
    );
    if (kept) leave();
  };
  const wanted = text.trim().toLowerCase();
  const found =
    wanted === ""
      ? []
      : [...(parts?.values() ?? [])].filter(
          ({ id, label, labelZh }) =>
            id !== partId && [id, label, labelZh].some((one) => one.toLowerCase().includes(wanted)),
        );
  return (
    <>
      <div className="floor-body floor-lot">
        <h1>{own.title(name)}</h1>
        <h2>{own.allowed}</h2>
        {allowed.length === 0 && <p>{own.none}</p>}
        <div className="floor-tiles">
          {allowed.map(({ id, why, whyZh }) => (
            <button key={id} type="button" onClick={() => void take(id, pick(why, whyZh) || own.bookWhy)}>
              {nameOf(id)}
              <small>{[id, pick(why, whyZh)].filter((one) => one !== "").join(" · ")}</small>
            </button>
          ))}
        </div>
        <h2>{own.concession}</h2>
        <label className="floor-field">
          {own.search}
          <input value={text} autoComplete="off" onChange={(event) => setText(event.currentTarget.value)} />
        </label>
        <div className="floor-tiles floor-small-tiles">
          {found.slice(0, MOST).map(({ id }) => (
            <button key={id} type="button" onClick={() => setConceded(id)}>
              {nameOf(id)}
              <small>{id}</small>
            </button>
          ))}
          {wanted !== "" && !parts?.has(text.trim()) && (
            <button type="button" onClick={() => setConceded(text.trim())}>
              {text.trim()}
            </button>
          )}
        </div>
      </div>
      <footer className="floor-foot">
        <button type="button" className="floor-plain" onClick={leave}>
          {floor.back}
        </button>
      </footer>
    </>
  );
}
