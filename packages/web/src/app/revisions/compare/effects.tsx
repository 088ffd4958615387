import { effectsOn, unitRanges } from "@pinwright/engine";
import { sheetWords } from "@pinwright/words";
import { useEffect, useMemo, useState } from "react";
import { call } from "../../../api/call.ts";
import type { AskAnswer } from "../../../worker/protocol.ts";
import { useDesk } from "../../book/desk.tsx";
import { usePick, useSpeech, useWords } from "../../words.tsx";
import { DRAFT } from "../address.ts";

type Comparison = AskAnswer<"comparison">;
type Standing = Parameters<typeof effectsOn>[2];

const CHANGE = /^@(\d+)$/u;

/** Units of the open book, as far as a change can concern them. */
function useStanding(): Standing {
  const { bookId } = useDesk();
  const [units, setUnits] = useState<Standing>([]);
  useEffect(() => {
    let wanted = true;
    call("unitSummaries", { parts: {}, query: { book: bookId } }).then(
      (all) =>
        wanted &&
        setUnits(
          all.map(({ unit, what, type, revision, within, releasedAt }) => ({
            ...{ unit, what, type, revision },
            within: within?.unit ?? "",
            isReleased: releasedAt !== null,
          })),
        ),
      () => undefined,
    );
    return () => {
      wanted = false;
    };
  }, [bookId]);
  return units;
}

/** What a change means for what stands in the shop, for units, and for tools. */
export function Effects({ comparison, to }: { readonly comparison: Comparison; readonly to: string }) {
  const own = useWords().compareApp;
  const standing = useStanding();
  const affected = useMemo(
    () => effectsOn(comparison, to === DRAFT ? null : to, standing),
    [comparison, to, standing],
  );
  return (
    <>
      <Stock comparison={comparison} affected={affected} />
      <Units affected={affected} standing={standing} />
      <Tools tools={comparison.tools} />
      {standing.length === 0 && <p className="dim">{own.units.none}</p>}
    </>
  );
}

type Affected = ReturnType<typeof effectsOn>;

function Stock({ comparison, affected }: { readonly comparison: Comparison; readonly affected: Affected }) {
  const { words, language } = useSpeech();
  const own = words.compareApp.stock;
  const pick = usePick();
  const { does: says } = sheetWords(language).change.note;
  const looseOf = (harness: string): readonly string[] =>
    affected.find(({ what, type }) => what === "harness" && type === harness)?.loose ?? [];
  return (
    <section>
      <h3>{own.title}</h3>
      {comparison.harnesses.length === 0 ? (
        <p>{own.none}</p>
      ) : (
        <div className="plain-scroll">
          <table className="plain">
            <thead>
              <tr>
                <th scope="col">{own.harness}</th>
                <th scope="col">{own.does}</th>
                <th scope="col" className="end">
                  {own.loose}
                </th>
              </tr>
            </thead>
            <tbody>
              {comparison.harnesses.map(({ harness, number, labels, does, mostMm }) => (
                <tr key={harness}>
                  <th scope="row">
                    H{number} {pick(labels.en, labels.zh)}
                  </th>
                  <td>
                    {does === "longer-tails" ? says["longer-tails"](String(Math.ceil(mostMm))) : says[does]}
                  </td>
                  <td className="end" title={unitRanges(looseOf(harness)).join(", ")}>
                    {looseOf(harness).length}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

/** Units that keep what they were built to, by revision. */
function Units({ affected, standing }: { readonly affected: Affected; readonly standing: Standing }) {
  const own = useWords().compareApp.units;
  if (standing.length === 0) return null;
  const revisionOf = new Map(standing.map(({ unit, revision }) => [unit, revision]));
  const by = new Map<string, string[]>();
  for (const unit of affected.flatMap(({ keep }) => keep)) {
    const revision = revisionOf.get(unit) ?? "";
    by.set(revision, [...(by.get(revision) ?? []), unit]);
  }
  return (
    <section>
      <h3>{own.title}</h3>
      {by.size === 0 && <p>{own.noneKeep}</p>}
      <ul>
        {[...by].map(([revision, units]) => {
          const no = CHANGE.exec(revision)?.[1];
          return (
            <li key={revision}>
              {unitRanges(units).join(", ")}: {no === undefined ? own.keep(revision) : own.keepChange(no)}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function Tools({ tools }: { readonly tools: Comparison["tools"] }) {
  const { words, language } = useSpeech();
  const own = words.compareApp;
  const note = sheetWords(language).change.note;
  const kinds: Readonly<Record<string, (name: string) => string>> = note.tool;
  return (
    <section>
      <h3>{own.tools.title}</h3>
      {tools.length === 0 ? (
        <p>{own.tools.none}</p>
      ) : (
        <ul>
          {tools.map(({ kind, id, title, what }) => (
            <li key={`${kind} ${id}`}>
              {kinds[kind]?.(title) ?? title}: {note.state[what]}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
