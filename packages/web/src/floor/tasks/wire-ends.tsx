import { sheetWords } from "@pinwright/words";
import { useSpeech } from "../../app/words.tsx";
import type { ViewEntry } from "../../worker/protocol.ts";

export type Wire = ViewEntry<"harnessWires">;
export type End = Wire["from"];

/** Ends of a wire as it is laid: from the holder where it starts. */
export function endsOf(
  wire: Wire,
  laid: { readonly from: string; readonly to: string } | undefined,
): { readonly from: End; readonly to: End } {
  return laid?.from === wire.to.id && laid.from !== wire.from.id
    ? { from: wire.to, to: wire.from }
    : { from: wire.from, to: wire.to };
}

/** How an end is made ready. */
export function Strip({ end }: { readonly end: End }) {
  const { words, language } = useSpeech();
  const own = words.floor.wire;
  const { work } = sheetWords(language).ends;
  return (
    <small>
      {own.strip(end.stripMm)} · {work[end.made]} · {end.crimpedFirst ? own.crimpFirst : own.crimpLater}
    </small>
  );
}
