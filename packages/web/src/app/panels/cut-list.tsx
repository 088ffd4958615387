import type { SheetCut } from "@pinwright/engine";
import { type KeyboardEvent, useRef } from "react";
import type { Entries } from "../book/desk-client.ts";
import { usePick, useWords } from "../words.tsx";

/** The cuts of a sheet in their order, each with its fence in large figures; pointing at one shows it in the picture. */
export function CutList({
  sheet,
  shown,
  point,
  choose,
  sizes,
}: {
  readonly sheet: SheetCut;
  /** Numbers of the cuts that are looked at. */
  readonly shown: ReadonlySet<number>;
  /** Looks at a cut for as long as the pointer is there; null: no more. */
  readonly point: (number: number | null) => void;
  readonly choose: (number: number | null) => void;
  readonly sizes: Entries<"panelSizes">;
}) {
  const words = useWords().panels;
  const pick = usePick();
  const list = useRef<HTMLOListElement>(null);
  const nameOf = (id: string): string => {
    const size = sizes.get(id);
    return size === undefined ? id : pick(size.label, size.labelZh) || id;
  };
  const go = (event: KeyboardEvent, index: number): void => {
    const by = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
    const next = sheet.cuts[index + by];
    if (by === 0 || next === undefined) return;
    event.preventDefault();
    choose(next.number);
    list.current?.querySelectorAll("button")[index + by]?.focus();
  };
  return (
    <ol className="cut-list" ref={list} onPointerLeave={() => point(null)}>
      {sheet.cuts.map((cut, index) => {
        const chosen = shown.has(cut.number);
        const fence = words.fenceAt(cut.fenceMm);
        // The fence stays where it is: that is worth seeing.
        const isSame = sheet.cuts[index - 1]?.setup === cut.setup;
        return (
          <li key={cut.number} className={chosen ? "chosen" : ""}>
            <button
              type="button"
              aria-pressed={chosen}
              onClick={() => choose(chosen && shown.size === 1 ? null : cut.number)}
              onPointerEnter={(event) => event.pointerType === "mouse" && point(cut.number)}
              onKeyDown={(event) => go(event, index)}
            >
              <span className="cut-number">
                <span className="visually-hidden">{words.cutWord}</span> {cut.number}
              </span>
              <span className={`cut-kind ${cut.kind}`} title={words.cutHelp[cut.kind]}>
                {words.cutKinds[cut.kind]}
              </span>
              <span className={isSame ? "cut-fence same" : "cut-fence"}>
                {fence}
                <small> mm</small>
              </span>
              <span className="cut-setup dim">{words.atSetup(cut.setup)}</span>
              <span className="cut-done">
                {cut.doneIds.length > 0 && words.done(cut.doneIds.map(nameOf).join(", "))}
              </span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}
