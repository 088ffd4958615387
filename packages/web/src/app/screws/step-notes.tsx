import { useOne } from "../book/desk.tsx";
import { usePick, useWords } from "../words.tsx";

/** What to beware of in a step, as its card prints it. */
export function StepCautions({ id }: { readonly id: string }) {
  const words = useWords();
  const pick = usePick();
  const cautions = useOne("stepParts", { id })?.cautions ?? [];
  return cautions.map(({ en, zh }) => (
    <p key={en} className="caution">
      <b>{words.screws.caution}</b> {pick(en, zh)}
    </p>
  ));
}

/** In which moments the screws of a step are driven, where it is more than one. */
export function StepMoments({ id }: { readonly id: string }) {
  const { moments, momentNames } = useWords().screws;
  const sequences = useOne("stepParts", { id })?.moments ?? [];
  return sequences.map((sequence) => (
    <p key={sequence.join(" ")}>
      <span className="dim">{moments}</span> {sequence.map((moment) => momentNames[moment]).join(" → ")}
    </p>
  ));
}
